import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { optionPlace, quotedList } from "../../report";
import { type DealtSort, pileNames, type SortCard } from "../model";
import type { SortContext } from "./context";
import { activity } from "./example";

const letters = "## Letters\n\n### a\n- ato\n- sal\n\n### o\n- som\n- tom\n\n### l\n- lua\n- sal";

export const matBetween: Rule<SortContext> = {
  code: "mat-between",
  severity: "warning",
  title: "Fields with no place between them",
  why: "A card of several piles lies on the line between their fields. Three fields in a row have no line between the first and the last, and none that belongs to all three, so nobody can see where such a card is meant to lie. Circles have a place for each.",
  example: {
    wrong: `${letters}${activity("overlap: true\nmats: fields\n")}`,
    right: `${letters}${activity("overlap: true\nmats: circles\n")}`,
  },
  check: ({ dealt }) => {
    const { options, piles, request, deals } = dealt;
    const apart = cardBetween(dealt);
    if (deals.length === 0 || !options.overlap || !apart) return [];
    const { block, unit } = request;
    const where = apart.piles.length === 2 ? "do not lie side by side" : "have no line that belongs to all of them";
    return [
      {
        range: optionPlace(block, "mats"),
        message: `“${apart.text}” belongs to ${quotedList(pileNames({ piles }, apart))}, whose fields ${where}.`,
        related: [{ range: apart.source, message: "This card" }],
        fixes: [
          { title: "Print circles", edits: [setOption(block, unit.text, "mats", "circles")], preferred: true },
          { title: "Print no mats", edits: [setOption(block, unit.text, "mats", "none")] },
        ],
      },
    ];
  },
};

/** A card of several piles that no place on fields shows; undefined where all have one, or where piles have no fields. */
export function cardBetween({ options, piles, cards }: DealtSort): SortCard | undefined {
  // Cards of more than three piles are told by their own finding.
  return options.mats === "fields" && piles.length === 3 ? cards.find((card) => !haveLine(card)) : undefined;
}

/** Whether a card's fields, if it has several, are two that lie side by side. */
function haveLine({ piles: [a = 0, b, ...more] }: SortCard): boolean {
  return b === undefined || (more.length === 0 && b - a === 1);
}
