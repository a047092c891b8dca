import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { clashes } from "./clashes";
import { place, type TilesContext } from "./context";
import { anotherSeed, provenWith } from "./trial";

export const severalSolutions: Rule<TilesContext> = {
  code: "several-solutions",
  severity: "error",
  title: "Tiles that can be laid in more than one way",
  why: "No two words are to blame, but the tiles as a whole allow a second layout, as with many blank inner edges. The preview shows both. Another seed, a smaller grid, or more pairs may help.",
  example: {
    wrong: "## Drinks\n\n- chá = tea\n- leite = milk\n\n```activity\nmake: tiles\ngrid: 3 x 3\nfill: blank\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ngrid: 2 x 2\n```",
  },
  check: ({ dealt }) => {
    const { request } = dealt;
    const hit = dealt.deals.find(
      (deal) => deal.proof.status === "several" && clashes(deal, request.relation).length === 0,
    );
    if (!hit) return [];
    const { block, unit } = request;
    return [
      {
        range: place(dealt),
        message: `These tiles can be laid in ${hit.proof.capped ? "more than one way" : `${hit.proof.count} ways`}; the preview shows two of them side by side.`,
        fixes: [
          ...anotherSeed(dealt),
          ...(provenWith(dealt, { grid: "auto" }) && block.options.entries.some(({ key }) => key === "grid")
            ? [
                {
                  title: "Take the largest grid that the pairs fill",
                  edits: [setOption(block, unit.text, "grid", "auto")],
                  preferred: true,
                },
              ]
            : []),
        ],
      },
    ];
  },
};
