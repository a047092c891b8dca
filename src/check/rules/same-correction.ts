import { dropLines } from "../../activities/edits";
import type { Report, Rule } from "../../base/finding";
import { fold } from "../../match/fold";
import type { CheckContext } from "../context";
import { once } from "./once-a-place";
import { frame, others } from "./statements-example";
import { writtenClaims } from "./written-claims";

export const sameCorrection: Rule<CheckContext> = {
  code: "same-correction",
  severity: "warning",
  title: "A correction that says the same as its statement",
  why: "The bullet under a false statement says what is right instead; here it says the same, so the key corrects nothing. Either the statement is true, or the correction was not changed.",
  example: {
    wrong: frame(`- [ ] Ela bebe chá.\n  - Ela bebe chá.\n- [x] Ela come.\n${others}`),
    right: frame(`- [ ] Ela bebe chá.\n  - Ela bebe café.\n- [x] Ela come.\n${others}`),
  },
  check: (context) =>
    once(
      writtenClaims(context).flatMap(({ claims, activities }) =>
        claims.flatMap((claim): Report[] => {
          const { correction, item } = claim;
          if (!correction || fold(correction.text) !== claim.key) return [];
          // Another one that calls the same false would contradict it.
          const alone = claims.every((other) => other === claim || other.key !== claim.key || other.truth);
          return [
            {
              range: correction.source,
              activities,
              message: `The correction says the same as the statement: “${correction.text}”.`,
              fixes: [
                ...(alone ? [{ title: "Mark the statement true", edits: [{ range: item.mark, text: "[x]" }] }] : []),
                { title: "Take the correction out", edits: [dropLines(context.unit.text, correction.source)] },
              ],
            },
          ];
        }),
      ),
    ),
};
