import { pieceMark } from "../../base/mark";
import { cutPiecesOf, cutsOf } from "../../page/cards";
import type { Block, Cell } from "../../page/document";
import { copyNumbers } from "../pieces-file";
import type { PrintedActivity } from "../printable";
import { dealName } from "./guide";

/** Light enough to read print on, and sold everywhere (common practice, no source). */
const colours = ["White", "Yellow", "Blue", "Green", "Pink"] as const;
/** Drawn by hand where a colour comes again. */
const signs = ["", "dot", "line", "cross", "ring"] as const;

/**
 * A colour of card for each set, and a sign where colours come again: a line for the deals that have the same sets. The characters in the pieces' marks
 * are what counts, also on grey copies. Empty where no activity has several sets. Boards and other whole sheets are not among them: no piece of
 * one can get among those of another.
 */
export function setColours(printed: readonly PrintedActivity[]): Block[] {
  const several = printed.filter((activity) => activity.sets > 1 && hasStrayPieces(activity));
  if (several.length === 0) return [];
  // Deals with the same sets share a line.
  const names = new Map<string, string[]>();
  for (const { name, cells } of several.flatMap(deals)) {
    const key = cells.join("\n");
    names.set(key, [...(names.get(key) ?? []), name]);
  }
  const rows = [...names].map(([key, own]): Cell[] => [own.join("; "), ...key.split("\n")]);
  // Copies of a master bear no number.
  if (rows.length === 0) return [];
  return [
    { type: "heading", level: 2, text: "Telling sets apart" },
    {
      type: "paragraph",
      text: "The mark on every piece has the deal code, then two characters for the set: they stand below with its number, and they are what counts. If coloured card is at hand, stray pieces show at once on these colours; a sign goes on the backs by pen.",
    },
    {
      type: "table",
      columns: [{ head: "Activity" }, ...colours.map((head) => ({ head }))],
      rows,
      size: 7.5,
    },
  ];
}

function hasStrayPieces({ card, sets }: PrintedActivity): boolean {
  const fronts = card.filter((sheet) => !sheet.back && cutsOf(sheet) > 0);
  return fronts.reduce((sum, sheet) => sum + cutPiecesOf(sheet), 0) > sets;
}

function deals({ printable: { title, dealt } }: PrintedActivity): { name: string; cells: string[] }[] {
  let place = 0;
  return dealt.deals.flatMap((deal) => {
    if (deal.copies === "by copier") return [];
    const cells: string[][] = colours.map(() => []);
    for (const copy of copyNumbers(deal.copies)) {
      const [, characters = ""] = pieceMark(deal.code, copy, 0).split("-");
      const sign = signs[Math.floor(place / colours.length) % signs.length] ?? "";
      cells[place % colours.length]?.push([`${(copy ?? 0) + 1} ${characters}`, sign].filter(Boolean).join(" "));
      place++;
    }
    const name = [title, dealName(deal, dealt.deals)].filter(Boolean).join(", ");
    return [{ name, cells: cells.map((each) => each.join(", ")) }];
  });
}
