import type { Fix, Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { setOption } from "../../edits";
import { type Frame, innerCount, largestFrame } from "../frame";
import type { DealtTiles } from "../model";
import { writeFrame } from "../options";
import { list, place, type TilesContext } from "./context";
import { calmWith, provenWith } from "./trial";

export const tooFewPairs: Rule<TilesContext> = {
  code: "too-few-pairs",
  severity: "error",
  counts: true,
  title: "Fewer pairs than the tiles have inner edges",
  why: "R × C tiles have R(C − 1) + C(R − 1) inner edges, and each needs a pair: 12 for 3 × 3, 24 for 4 × 4. Take a smaller grid, add pairs, or let some inner edges stay blank.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ngrid: 3 x 3\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ngrid: 2 x 2\n```",
  },
  check: ({ dealt }) => {
    const { request, pairs, frame, deals } = dealt;
    if (deals.length > 0 || request.refused.some((key) => ["grid", "fill", "take"].includes(key))) return [];
    const range = place(dealt, "grid");
    const largest = largestFrame(pairs.length);
    const fixes = (): Steps<Fix[], unknown> => otherGrids(dealt, largest);
    const names = list(request.sections.map(({ name }) => name));
    if (!frame) {
      return [{ range, message: `Tiles need at least 4 pairs (2 × 2 tiles); ${names} has ${pairs.length}.`, fixes }];
    }
    const message = `${frame.rows} × ${frame.columns} tiles have ${innerCount(frame)} inner edges, one for each pair; ${names} has ${pairs.length}.`;
    return [{ range, message, fixes }];
  },
};

/**
 * The largest grid that the pairs fill, and blank edges in the one that was asked for, as far as these lead to one solution; what
 * leads to a warning comes last.
 */
function* otherGrids(dealt: DealtTiles, largest: Frame | undefined): Steps<Fix[], unknown> {
  const { request, options, pairs, frame } = dealt;
  const { block, unit } = request;
  const [fixes, loud]: [Fix[], Fix[]] = [[], []];
  if (largest && (yield* provenWith(dealt, { grid: writeFrame(largest) }))) {
    const title = `Make ${largest.rows} × ${largest.columns} tiles`;
    const fix = { title, edits: [setOption(block, unit.text, "grid", writeFrame(largest))] };
    if (yield* calmWith(dealt, { grid: writeFrame(largest) })) fixes.push({ ...fix, preferred: true });
    else loud.push(fix);
  }
  if (frame && pairs.length > 0 && options.fill === "words" && (yield* provenWith(dealt, { fill: "blank" }))) {
    const blank = innerCount(frame) - pairs.length;
    const title = `Leave ${blank} inner ${blank === 1 ? "edge" : "edges"} blank`;
    const fix = { title, edits: [setOption(block, unit.text, "fill", "blank")] };
    ((yield* calmWith(dealt, { fill: "blank" })) ? fixes : loud).push(fix);
  }
  return [...fixes, ...loud];
}
