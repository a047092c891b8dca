import type { Rule } from "../../../base/finding";
import { blanksIn, causeFixes } from "./causes";
import { place, type TilesContext } from "./context";
import { anotherSeed } from "./trial";

export const unsettledProof: Rule<TilesContext> = {
  code: "unsettled-proof",
  severity: "warning",
  title: "Not settled whether there is one solution",
  why: "The search stopped at its budget without a second solution and without a proof that there is none. This happens where a few words return very often, or where many inner edges are blank. Another seed, fewer repeated answers, a smaller grid or more pairs help.",
  example: {
    wrong: "A section in which the same two answers stand for twenty words.",
    right: "Words with answers of their own.",
  },
  check: ({ dealt }) => {
    const open = dealt.deals.find(({ proof }) => proof.status === "unsettled");
    if (!open) return [];
    return [
      {
        range: place(dealt),
        message: `It could not be settled whether these tiles have one solution (${open.proof.nodes} steps were tried).${blanksIn(dealt, open)}`,
        fixes: function* () {
          return [...(yield* anotherSeed(dealt)), ...(yield* causeFixes(dealt, open))];
        },
      },
    ];
  },
};
