import type { Rule } from "../../../base/finding";
import { counted, optionPlace } from "../../report";
import type { StripsContext } from "./context";

export const stripsAnyOrder: Rule<StripsContext> = {
  code: "strips-any-order",
  severity: "error",
  title: "Events of which every order is right",
  why: "There is nothing to find out where all events may stand in any order, or all have one text. Number the events that follow each other, and keep bullets for those that may change places.",
  example: {
    wrong: "## The morning\n\n1. Ela bebe.\n2. Ela bebe.\n3. Ela bebe.\n\n```activity\nmake: strips\n```",
    right: "## The morning\n\n1. A Inês entra.\n2. Ela bebe.\n3. Ela paga.\n\n```activity\nmake: strips\n```",
  },
  check: ({ dealt }) => {
    const { deals, request } = dealt;
    const events = deals.find(({ inOrder }) => inOrder)?.events;
    if (!events) return [];
    const why = new Set(events.map(({ key }) => key)).size === 1 ? "all have one text" : "all are free";
    return [
      {
        range: optionPlace(request.block, "take", "from"),
        message: `Every order of these ${counted(events.length, "event")} is right: ${why}.`,
        related: events.slice(0, 4).map(({ source }) => ({ range: source, message: "One of them" })),
      },
    ];
  },
};
