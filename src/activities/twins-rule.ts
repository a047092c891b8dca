import type { Report, Rule } from "../base/finding";
import type { ClaimContext, Facts } from "./dealt-claims";
import { setOption } from "./edits";
import { onlySome, optionPlace } from "./report";

/** Fewer twins than asked for. */
export function twinsRule(facts: Facts): Rule<ClaimContext> {
  return {
    ...facts,
    severity: "warning",
    title: "Fewer false twins than asked for",
    why: 'A twin is a true statement with another form of a verb, so it needs a tied form: `[meço](#medir)`, or `[meço](#medir "eu")` where the form stands twice in its column. The column must have a form that is spelled differently, and what comes out must not be true as well.',
    check: ({ dealt }): Report[] => {
      const { options, missingTwins, claims, request } = dealt;
      if (missingTwins <= 0 || typeof options.twins !== "number") return [];
      const made = claims.filter(({ twin }) => twin).length;
      const { block, unit } = request;
      return [
        {
          range: optionPlace(block, "twins"),
          message: `${onlySome(made, options.twins, "twin")} can be made: no more of the true statements have a tied form with a wrong one beside it.`,
          fixes: [
            { title: `Ask for ${made}`, edits: [setOption(block, unit.text, "twins", String(made))], preferred: true },
          ],
        },
      ];
    },
  };
}
