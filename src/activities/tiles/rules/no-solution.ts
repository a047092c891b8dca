import type { Rule } from "../../../base/finding";
import { place, type TilesContext } from "./context";

export const noSolution: Rule<TilesContext> = {
  code: "no-solution",
  severity: "error",
  title: "Tiles that cannot be laid",
  why: "The prover found that no layout makes all touching edges fit, not even the one that was meant. This points to a fault in the program: please report it with the unit.",
  example: { wrong: "No unit is known that gives this.", right: "Every unit." },
  check: ({ dealt }) =>
    dealt.deals.some(({ proof }) => proof.status === "none")
      ? [{ range: place(dealt), message: "No layout of these tiles makes all touching edges fit." }]
      : [],
};
