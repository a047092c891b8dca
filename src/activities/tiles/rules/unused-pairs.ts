import type { Fix, Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { setOption, setOptions } from "../../edits";
import { innerCount, largestFrame } from "../frame";
import type { DealtTiles } from "../model";
import { writeFrame } from "../options";
import { list, place, type TilesContext } from "./context";
import { calmWith } from "./trial";

export const unusedPairs: Rule<TilesContext> = {
  code: "unused-pairs",
  severity: "information",
  title: "Pairs that are on no tile",
  why: "The grid has fewer inner edges than there are pairs. The seed chooses which pairs are used. A larger grid may use more of them, with some inner edges blank where the pairs do not fill it.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n- café = coffee\n\n```activity\nmake: tiles\n```",
    right: "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\n```",
  },
  check: ({ dealt }) => {
    const { request, pairs, used, frame, deals } = dealt;
    const unused = pairs.filter((pair) => !used.includes(pair));
    const decoys = new Set(deals.flatMap((deal) => deal.decoys.edges.map(({ source }) => source)));
    const idle = unused.filter(
      (pair) => ![pair.left, pair.right].some(({ answers }) => answers.some(({ range }) => decoys.has(range))),
    );
    const refused = request.refused.some((key) => ["grid", "fill", "take"].includes(key));
    if (!frame || deals.length === 0 || idle.length === 0 || refused) return [];
    const some = idle.slice(0, 3).map((pair) => pair.left.answers[0].text);
    const names =
      idle.length > 3 ? `${some.map((text) => `“${text}”`).join(", ")} and ${idle.length - 3} more` : list(some);
    return [
      {
        range: place(dealt, "grid"),
        message: `${idle.length} of ${pairs.length} pairs ${idle.length === 1 ? "is" : "are"} not used: ${frame.rows} × ${frame.columns} tiles have ${innerCount(frame)} inner edges (without ${names}).`,
        related: idle.slice(0, 3).map(({ range }) => ({ range, message: "Not on a tile" })),
        fixes: () => largerGrids(dealt),
      },
    ];
  },
};

/**
 * Larger grids that use more of the pairs, and lead to one solution and no new warning: the largest without blank edges, and the next
 * one with some. None is taken unasked: a smaller one than could be made was asked for.
 */
function* largerGrids(dealt: DealtTiles): Steps<Fix[], unknown> {
  const { request, pairs, frame } = dealt;
  const { block, unit } = request;
  const fixes: Fix[] = [];
  const largest = largestFrame(pairs.length);
  const larger = largest && frame && innerCount(largest) > innerCount(frame);
  if (larger && (yield* calmWith(dealt, { grid: writeFrame(largest) }))) {
    const title = `Make ${largest.rows} × ${largest.columns} tiles`;
    fixes.push({ title, edits: [setOption(block, unit.text, "grid", writeFrame(largest))] });
  }
  const next = nextFrame(pairs.length);
  if (next && (yield* calmWith(dealt, { grid: writeFrame(next), fill: "blank" }))) {
    const blank = innerCount(next) - pairs.length;
    fixes.push({
      title: `Make ${next.rows} × ${next.columns} tiles with ${blank} blank inner ${blank === 1 ? "edge" : "edges"}`,
      edits: setOptions(block, unit.text, { grid: writeFrame(next), fill: "blank" }),
    });
  }
  return fixes;
}

/** The smallest frame with more inner edges than pairs that has all of them, nearly square, with few blanks. */
function nextFrame(pairs: number): { rows: number; columns: number } | undefined {
  for (let room = pairs; room <= pairs + 8; room++) {
    const frame = largestFrame(room);
    if (frame && innerCount(frame) >= pairs && innerCount(frame) === room && frame.columns - frame.rows <= 1)
      return room > pairs ? frame : undefined;
  }
  return undefined;
}
