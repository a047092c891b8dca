import type { Fix, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { innerCount, largestFrame } from "../frame";
import { writeFrame } from "../options";
import { list, place, type TilesContext } from "./context";

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
    const { request, options, pairs, frame, deals } = dealt;
    if (deals.length > 0 || request.refused.some((key) => ["grid", "fill", "take"].includes(key))) return [];
    const { block, unit } = request;
    const range = place(dealt, "grid");
    const largest = largestFrame(pairs.length);
    const fixes: Fix[] = [];
    if (largest) {
      const title = `Make ${largest.rows} × ${largest.columns} tiles`;
      fixes.push({ title, edits: [setOption(block, unit.text, "grid", writeFrame(largest))], preferred: true });
    }
    if (frame && pairs.length > 0 && options.fill === "words") {
      const blank = innerCount(frame) - pairs.length;
      fixes.push({ title: `Leave ${blank} inner edges blank`, edits: [setOption(block, unit.text, "fill", "blank")] });
    }
    const names = list(request.sections.map(({ name }) => name));
    if (!frame) {
      return [{ range, message: `Tiles need at least 4 pairs (2 × 2 tiles); ${names} has ${pairs.length}.`, fixes }];
    }
    const message = `${frame.rows} × ${frame.columns} tiles have ${innerCount(frame)} inner edges, one for each pair; ${names} has ${pairs.length}.`;
    return [{ range, message, fixes }];
  },
};
