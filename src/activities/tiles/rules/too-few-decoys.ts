import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { onlySome } from "../../report";
import { place, type TilesContext } from "./context";

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
    const short = dealt.deals.find(
      ({ decoys }) => typeof dealt.options.decoys !== "object" && decoys.edges.length < decoys.wanted,
    );
    if (!short) return [];
    const { edges, wanted } = short.decoys;
    const { block, unit } = dealt.request;
    return [
      {
        range: place(dealt, "decoys", "outer", "levels"),
        message: `${onlySome(edges.length, wanted, "outer edge")} ${edges.length < 2 ? "gets" : "get"} a word without a partner: the unit has no more unused words that fit nothing.`,
        fixes: [
          edges.length > 0
            ? {
                title: `Ask for ${edges.length}`,
                edits: [setOption(block, unit.text, "decoys", String(edges.length))],
                preferred: true,
              }
            : { title: "Leave the outer edges blank", edits: [setOption(block, unit.text, "decoys", "0")] },
        ],
      },
    ];
  },
};
