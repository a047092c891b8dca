import { dropLines } from "../../activities/edits";
import type { Claim } from "../../activities/statements";
import { withItem } from "../../activities/without-item";
import type { Report, Rule } from "../../base/finding";
import type { Steps } from "../../base/steps";
import { heard } from "../../match/heard";
import type { Statement } from "../../unit/unit";
import type { CheckContext } from "../context";
import { once } from "./once-a-place";
import { staysSound } from "./spare";
import { frame, others } from "./statements-example";
import { uncorrected, writtenClaims } from "./written-claims";

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
        uncorrected(claims).flatMap(({ correction, item }): Report[] =>
          correction
            ? [
                {
                  range: correction.source,
                  activities,
                  message: `The correction says the same as the statement: “${correction.text}”.`,
                  fixes: function* () {
                    const marking = [{ title: "Mark the statement true", edits: [{ range: item.mark, text: "[x]" }] }];
                    const taking = dropLines(context.unit.text, correction.source);
                    return [
                      ...((yield* staysFair(context, claims, item)) ? marking : []),
                      { title: "Take the correction out", edits: [taking] },
                    ];
                  },
                },
              ]
            : [],
        ),
      ),
    ),
};

/**
 * In steps: whether a statement may be marked true as far as it is known: no other one is heard as the same, and all activities that
 * deal it are dealt as before, with as fair a share of true ones.
 */
function* staysFair(context: CheckContext, claims: readonly Claim[], item: Statement): Steps<boolean, unknown> {
  const sound = (each: Claim): string => heard(each.key);
  const own = claims.find((each) => each.item === item);
  if (!own || claims.some((other) => other.item !== item && sound(other) === sound(own))) return false;
  const { correction: _, ...rest } = item;
  return yield* staysSound(context, item, (request) => withItem(request, item, { ...rest, truth: true }));
}
