import type { TilesDeal } from "./model";

/* Texts on the sheets of tiles, in English; other languages join here. */

export const barLabel = "Print at 100 %: this bar is 100 mm long.";

export function stateOf(deal: TilesDeal, levels: number, versions: number): string[] {
  return [...(levels > 1 ? [deal.level] : []), ...(versions > 1 ? [`version ${deal.version}`] : [])];
}

export function setLabel(copy: number | undefined): string {
  return copy === undefined ? "master for copying" : `set ${copy + 1}`;
}

export function folio(page: number, pages: number): string {
  return pages > 1 ? `sheet ${page + 1} of ${pages}` : "one sheet";
}

export const texts = {
  key: "Key",
  second: "A second way to lay them",
  pairs: "Pairs",
  unworded: "The grid is too fine for its words: the list below names the two tiles that carry each pair.",
  decoys: "On the outer edges, without a partner",
  blankOuter: "Outer edges are blank.",
  proven: "One solution, proven; the whole may be turned.",
  provenFixed: "One solution, proven.",
  several: "More than one solution.",
  unsettled: "Whether there is one solution is not settled.",
} as const;

export function proofText({ proof }: TilesDeal, turn: "free" | "fixed"): string {
  if (proof.status === "one") return turn === "free" ? texts.proven : texts.provenFixed;
  return proof.status === "unsettled" ? texts.unsettled : texts.several;
}
