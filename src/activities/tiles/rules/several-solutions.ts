import type { Rule } from "../../../base/finding";
import { blanksIn, causeFixes, otherFrame } from "./causes";
import { clashes } from "./clashes";
import { place, type TilesContext } from "./context";
import { anotherSeed } from "./trial";

export const severalSolutions: Rule<TilesContext> = {
  code: "several-solutions",
  severity: "error",
  title: "Tiles that can be laid in more than one way",
  why: "No two words are to blame, but the tiles as a whole allow a second layout, because many inner edges are blank, or because the same tiles also fill a rectangle with other rows and columns and `frame: untold` does not say which is meant. The preview shows both. Another seed, a smaller grid, or more pairs may help.",
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
    const other = otherFrame(dealt, hit);
    const message = other
      ? `These tiles can also be laid as ${other}, since learners are not told rows and columns; the preview shows both.`
      : `These tiles can be laid in ${hit.proof.capped ? "more than one way" : `${hit.proof.count} ways`}; the preview shows two of them side by side.`;
    return [
      {
        range: place(dealt),
        message: `${message}${blanksIn(dealt, hit)}`,
        fixes: function* () {
          return [...(yield* anotherSeed(dealt)), ...(yield* causeFixes(dealt, hit))];
        },
      },
    ];
  },
};
