import type { Fix } from "../../../base/finding";
import { upTo } from "../../../base/seed";
import type { Steps } from "../../../base/steps";
import { setOption } from "../../edits";
import { counted } from "../../report";
import { innerCount, isFrameOf } from "../frame";
import { isLooseByBlanks } from "../loose";
import type { DealtTiles, TilesDeal } from "../model";
import { anotherSeed, provenWith } from "./trial";

/*
 * Why tiles can be laid in more than one way although no two words are to blame, in words and with what helps.
 */

/** A layout in another frame, where learners are not told rows and columns; undefined where that is not the cause. */
export function otherFrame({ options }: DealtTiles, { frame, proof }: TilesDeal): string | undefined {
  const { second } = proof;
  if (!second || isFrameOf(second, frame, options.turn)) return undefined;
  return `${second.rows} × ${second.columns}`;
}

/** What is blank, as sentences with a space before; empty where nothing is, and where it is not what lets tiles be laid otherwise. */
export function blanksIn(dealt: DealtTiles, deal: TilesDeal): string {
  const { used } = dealt;
  const { frame, solved, proof } = deal;
  const inner = innerCount(frame);
  const blank = inner - used.length;
  if (blank === 0 || (proof.status === "several" && !isLooseByBlanks(dealt, deal))) return "";
  const bare = solved.filter((face) => face.every((edge) => edge === undefined)).length;
  const tiles =
    bare === 0
      ? ""
      : `, and ${bare} of ${counted(solved.length, "tile")} ${bare === 1 ? "has" : "have"} no word at all`;
  return ` ${blank} of ${inner} inner edges ${blank === 1 ? "is" : "are"} blank${tiles}, so too little says where a tile belongs. Put in more pairs or take a smaller grid.`;
}

/**
 * The largest smaller grid with which the same pairs have one solution, or, where pairs clash, with which some of them are left
 * out; undefined where there is none among the next six.
 */
function* smallerGrid(dealt: DealtTiles, { frame }: TilesDeal, all: boolean): Steps<string | undefined, unknown> {
  const sides = upTo(Math.max(frame.rows, frame.columns) + 1).slice(2);
  const grids = sides
    .flatMap((rows) => sides.filter((columns) => columns >= rows).map((columns) => ({ rows, columns })))
    .filter((each) => innerCount(each) < innerCount(frame) && (!all || innerCount(each) >= dealt.pairs.length))
    .sort((a, b) => innerCount(b) - innerCount(a))
    .map(({ rows, columns }) => `${rows} x ${columns}`)
    .slice(0, 6);
  for (const grid of grids) if (yield* provenWith(dealt, { grid })) return grid;
  return undefined;
}

/** Other options that lead to one solution, of which no two change the same: rows and columns told, then the next grid that fits. */
export function* causeFixes(dealt: DealtTiles, deal: TilesDeal): Steps<Fix[], unknown> {
  const fixes = [...(yield* toldFix(dealt, deal)), ...(yield* gridFix(dealt, deal))];
  return fixes.map((fix, i) => ({ ...fix, preferred: i === 0 }));
}

/** Rows and columns told, where that leads to one solution. */
export function* toldFix(dealt: DealtTiles, deal: TilesDeal): Steps<Fix[], unknown> {
  const { block, unit } = dealt.request;
  const untold = otherFrame(dealt, deal) !== undefined || deal.proof.status === "unsettled";
  if (!untold || dealt.options.frame !== "untold" || !(yield* provenWith(dealt, { frame: "told" }))) return [];
  return [{ title: "Tell learners rows and columns", edits: [setOption(block, unit.text, "frame", "told")] }];
}

/** The grid that the pairs fill, else a smaller one, where that leads to one solution. */
export function* gridFix(dealt: DealtTiles, deal: TilesDeal): Steps<Fix[], unknown> {
  const { block, unit } = dealt.request;
  if (block.options.entries.some(({ key }) => key === "grid") && (yield* provenWith(dealt, { grid: "auto" }))) {
    const edits = [setOption(block, unit.text, "grid", "auto")];
    return [{ title: "Take the largest grid that the pairs fill", edits }];
  }
  const change = (grid: string) => [setOption(block, unit.text, "grid", grid)];
  const smaller = yield* smallerGrid(dealt, deal, true);
  if (smaller !== undefined) return [{ title: `Take a grid of ${smaller}`, edits: change(smaller) }];
  // Pairs that clash are left out first.
  const fewer = yield* smallerGrid(dealt, deal, false);
  if (fewer === undefined) return [];
  return [{ title: `Take a grid of ${fewer}, without the pairs that clash`, edits: change(fewer) }];
}

/** Other options that lead to one solution, the smallest change first. */
export function* optionFixes(dealt: DealtTiles): Steps<Fix[], unknown> {
  const open = dealt.deals.find(({ proof }) => proof.status !== "one");
  if (!open) return [];
  return [...(yield* toldFix(dealt, open)), ...(yield* anotherSeed(dealt)), ...(yield* gridFix(dealt, open))];
}
