import { pieceMark } from "../../base/mark";
import type { Matching, Worded } from "../../match/look-alikes";
import { differences } from "../../prove/tiles";
import { type DealtTiles, intended, type TilesDeal } from "./model";
import { judge, toPuzzle } from "./puzzle";

/** Search nodes for one question about a deal. */
const budget = 20_000;

/** All words on a deal's edges; a decoy that the options name may be meant for a word of either language. */
export function edgeTexts({ options, request: { explains } }: DealtTiles, { solved, decoys }: TilesDeal): Worded[] {
  const texts: Worded[] = [];
  for (const face of solved) for (const edge of face) if (edge && !edge.picture) texts.push(edge);
  const named = typeof options.decoys === "object" ? decoys.edges : [];
  return [...texts, ...named.map(({ key, text }) => ({ key, text, lang: explains }))];
}

/** Codes of the tiles that lie elsewhere in a second assembly under this matching; empty where it allows none, undefined where that is not settled. */
export function confusedTiles({ options }: DealtTiles, deal: TilesDeal, matching: Matching): string[] | undefined {
  const { status, second } = judge(deal.frame, deal.solved, matching, options, budget).proof;
  // The layout that is meant stays one: without any, the question was not answered.
  if (status === "unsettled" || status === "none") return undefined;
  if (status !== "several" || !second) return [];
  const puzzle = toPuzzle(deal.frame, deal.solved, matching, options);
  const differs = differences(puzzle, intended(deal.frame), second);
  return deal.tiles.flatMap((_, piece) => {
    const at = second.cells.findIndex(({ tile }) => tile === deal.tiles[piece]?.cell);
    return differs[at] ? [pieceMark(deal.code, undefined, piece).split("-")[1] ?? ""] : [];
  });
}
