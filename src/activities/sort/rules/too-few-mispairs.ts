import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { onlySome, optionPlace } from "../../report";
import type { SortContext } from "./context";
import { activity } from "./example";

export const tooFewMispairs: Rule<SortContext> = {
  code: "too-few-mispairs",
  severity: "warning",
  title: "Fewer false cards than asked for",
  why: "A false card shows a pair with the other side of another pair. That must be surely wrong: no answer of the pair, nor of a word that has an answer in common with it. Each wrong side is used once, so there are at most as many false cards as pairs.",
  example: {
    wrong: `## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice${activity("mispair: 6\n")}`,
    right: `## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice${activity("mispair: 2\n")}`,
  },
  check: ({ dealt }) => {
    const { missingMispairs, options, request, deals } = dealt;
    if (deals.length === 0 || missingMispairs <= 0 || options.mispair === undefined) return [];
    const made = options.mispair - missingMispairs;
    // As many as can be made would leave none that are true, where all pairs can be shown with a wrong partner.
    const fair = Math.min(made, Math.floor(new Set(dealt.shown.map(({ item }) => item)).size / 2));
    return [
      {
        range: optionPlace(request.block, "mispair"),
        message: `${onlySome(made, options.mispair, "false card")} can be made of these pairs.`,
        fixes: [
          {
            title: fair < made ? `Ask for ${fair}, so that about half are true` : `Ask for ${fair}`,
            edits: [setOption(request.block, request.unit.text, "mispair", String(fair))],
            preferred: true,
          },
        ],
      },
    ];
  },
};
