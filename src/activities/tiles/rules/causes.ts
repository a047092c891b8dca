import type { Fix } from "../../../base/finding";
import { upTo } from "../../../base/seed";
import { setOption } from "../../edits";
import { counted } from "../../report";
import { innerCount, isFrameOf } from "../frame";
import type { DealtTiles, TilesDeal } from "../model";
import { provenWith } from "./trial";

/*
 * Why tiles can be laid in more than one way although no two words are to blame, in words and with what helps.
 */

/** A layout in another frame, where learners are not told rows and columns; undefined where that is not the cause. */
export function otherFrame({ options }: DealtTiles, { frame, proof }: TilesDeal): string | undefined {
  const { second } = proof;
  if (!second || isFrameOf(second, frame, options.turn)) return undefined;
  return `${second.rows} × ${second.columns}`;
}

/** What is blank, as sentences with a space before; empty where nothing is. */
export function blanksIn({ used }: DealtTiles, { frame, solved }: TilesDeal): string {
  const inner = innerCount(frame);
  const blank = inner - used.length;
  if (blank === 0) return "";
  const bare = solved.filter((face) => face.every((edge) => edge === undefined)).length;
  const tiles =
    bare === 0
      ? ""
      : `, and ${bare} of ${counted(solved.length, "tile")} ${bare === 1 ? "has" : "have"} no word at all`;
  return ` ${blank} of ${inner} inner edges are blank${tiles}, so too little says where a tile belongs. Put in more pairs or take a smaller grid.`;
}

/** The largest smaller grid with which the same pairs have one solution; undefined where there is none. */
function smallerGrid(dealt: DealtTiles, { frame }: TilesDeal): string | undefined {
  const sides = upTo(Math.max(frame.rows, frame.columns) + 1).slice(2);
  return sides
    .flatMap((rows) => sides.filter((columns) => columns >= rows).map((columns) => ({ rows, columns })))
    .filter((each) => innerCount(each) < innerCount(frame) && innerCount(each) >= dealt.pairs.length)
    .sort((a, b) => innerCount(b) - innerCount(a))
    .map(({ rows, columns }) => `${rows} x ${columns}`)
    .slice(0, 6)
    .find((grid) => provenWith(dealt, { grid }));
}

/** The grid that the pairs fill, and rows and columns told: those of the two that lead to one solution. */
export function causeFixes(dealt: DealtTiles, deal: TilesDeal): Fix[] {
  const { block, unit } = dealt.request;
  const fixes: Fix[] = [];
  const untold = otherFrame(dealt, deal) !== undefined || deal.proof.status === "unsettled";
  if (untold && dealt.options.frame === "untold" && provenWith(dealt, { frame: "told" })) {
    const edits = [setOption(block, unit.text, "frame", "told")];
    fixes.push({ title: "Tell learners rows and columns", edits, preferred: true });
  }
  if (block.options.entries.some(({ key }) => key === "grid") && provenWith(dealt, { grid: "auto" })) {
    const edits = [setOption(block, unit.text, "grid", "auto")];
    fixes.push({ title: "Take the largest grid that the pairs fill", edits, preferred: fixes.length === 0 });
  } else {
    const smaller = smallerGrid(dealt, deal);
    if (smaller !== undefined) {
      const edits = [setOption(block, unit.text, "grid", smaller)];
      fixes.push({ title: `Take a grid of ${smaller}`, edits, preferred: fixes.length === 0 });
    }
  }
  return fixes;
}
