import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { onlySome } from "../../report";
import { shortOfDecoys } from "../deal";
import { place, type TilesContext } from "./context";
import { calmWith } from "./trial";

export const tooFewDecoys: Rule<TilesContext> = {
  code: "too-few-decoys",
  severity: "warning",
  title: "Fewer decoys than asked for",
  why: "A decoy is a word on an outer edge that has no partner on any tile. They come from pairs that the tiles do not use, here or in other sections of the unit, or from a list after `decoys:`. Edges without one stay blank.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ndecoys: 2\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ndecoys: [arroz, mel]\n```",
  },
  check: ({ dealt }) => {
    const short = shortOfDecoys(dealt.deals, dealt.options);
    if (!short) return [];
    const { edges, wanted } = short.decoys;
    const { block, unit } = dealt.request;
    return [
      {
        range: place(dealt, "decoys", "outer", "levels"),
        message: `${onlySome(edges.length, wanted, "outer edge")} ${edges.length < 2 ? "gets" : "get"} a word without a partner: the unit has no more unused words that fit nothing.`,
        fixes: function* () {
          const edits = [setOption(block, unit.text, "decoys", String(edges.length))];
          if (edges.length === 0) return [{ title: "Leave the outer edges blank", edits }];
          // The tiles stay as they are, unless levels are looked for among more arrangements.
          const calm = !dealt.options.levels || (yield* calmWith(dealt, { decoys: edges.length }));
          return [{ title: `Ask for ${edges.length}`, edits, preferred: calm }];
        },
      },
    ];
  },
};
