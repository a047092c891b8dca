import type { Fix, Report, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { counted, optionPlace, quotedList } from "../../report";
import { fewestEvents } from "../deal";
import type { StripsContext } from "./context";

export const tooFewEvents: Rule<StripsContext> = {
  code: "too-few-events",
  severity: "error",
  title: "Too few events to put in order",
  why: "Strips need at least three events: two can be in order by chance. Events are numbered items, `1.` `2.` `3.`, with bullets under an event for what may come in any order. For events that the learners write, leave the section without any and ask for `blanks: 8`.",
  example: {
    wrong: "## The morning\n\n1. A Inês entra.\n2. Ela paga.\n\n```activity\nmake: strips\n```",
    right: "## The morning\n\n1. A Inês entra.\n2. Ela mede um sumo.\n3. Ela paga.\n\n```activity\nmake: strips\n```",
  },
  check: ({ dealt }) => {
    const { request, events, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, unit, sections } = request;
    const found = sections.reduce((sum, each) => sum + each.events.reduce((n, { free }) => n + 1 + free.length, 0), 0);
    // The choice alone is to blame where the sections have enough.
    const taken = options.take !== undefined && found >= fewestEvents;
    const fixes: Fix[] = [];
    if (taken) fixes.push({ title: `Take ${found}`, edits: [setOption(block, unit.text, "take", String(found))] });
    const others = unit.sections.filter((each) => each.events.length >= fewestEvents && !sections.includes(each));
    if (!taken && events.length === 0) {
      for (const { name } of others.slice(0, 3)) {
        fixes.push({
          title: `Take the events of “${name}”`,
          edits: [setOption(block, unit.text, "from", JSON.stringify(name))],
        });
      }
    }
    const names = quotedList(sections.map(({ name }) => name));
    const message = taken
      ? `Strips need at least ${fewestEvents} events; \`take\` leaves ${events.length} of ${found}.`
      : `Strips need at least ${fewestEvents} events (numbered items); ${names} has ${found === 0 ? "none" : found}.`;
    return [{ range: optionPlace(block, ...(taken ? ["take"] : ["from"])), message, fixes }];
  },
};

export const repeatedEvent: Rule<StripsContext> = {
  code: "repeated-event",
  severity: "warning",
  title: "Two events with the same text",
  why: "Strips with the same text can be exchanged: which of them comes first cannot be seen, so each may lie in the other's place. The key says so. Where the two stand for different moments, say what tells them apart.",
  example: {
    wrong:
      "## The morning\n\n1. A Inês entra.\n2. Ela bebe.\n3. Ela come.\n4. Ela bebe.\n\n```activity\nmake: strips\n```",
    right:
      "## The morning\n\n1. A Inês entra.\n2. Ela bebe.\n3. Ela come.\n4. Ela bebe outra vez.\n\n```activity\nmake: strips\n```",
  },
  check: ({ dealt }) => {
    const { events, deals, request } = dealt;
    // Where no order is wrong, that is what there is to say.
    if (deals.length === 0 || deals.some(({ inOrder }) => inOrder)) return [];
    return events.flatMap((event, i): Report[] => {
      const first = events.slice(0, i).find(({ key }) => key === event.key);
      if (!first) return [];
      const own = events.length > fewestEvents && isFree(request.sections, event.item);
      return [
        {
          range: event.source,
          message: `“${event.text}” stands twice in the story: the two strips can be exchanged.`,
          related: [{ range: first.source, message: "The same text" }],
          fixes: own ? [{ title: `Take this one out`, edits: [{ range: event.item.block, text: "" }] }] : [],
        },
      ];
    });
  },
};

/** Whether nothing hangs under an event, so that it can go alone. */
function isFree(sections: StripsContext["dealt"]["request"]["sections"], item: object): boolean {
  return !sections.some(({ events }) => events.some((event) => event === item && event.free.length > 0));
}

export const anyOrder: Rule<StripsContext> = {
  code: "strips-any-order",
  severity: "error",
  title: "Events of which every order is right",
  why: "There is nothing to find out where all events may stand in any order, or all have one text. Number the events that follow each other, and keep bullets for those that may change places.",
  example: {
    wrong: "## The morning\n\n1. Ela bebe.\n2. Ela bebe.\n3. Ela bebe.\n\n```activity\nmake: strips\n```",
    right: "## The morning\n\n1. A Inês entra.\n2. Ela bebe.\n3. Ela paga.\n\n```activity\nmake: strips\n```",
  },
  check: ({ dealt }) => {
    const { events, deals, request } = dealt;
    if (!deals.some(({ inOrder }) => inOrder)) return [];
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
