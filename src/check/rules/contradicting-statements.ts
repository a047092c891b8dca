import type { Report, Rule } from "../../base/finding";
import { isPair } from "../../unit/unit";
import type { CheckContext } from "../context";
import { once } from "./once-a-place";
import { takingOut } from "./spare";
import { frame, others } from "./statements-example";
import { contradicted, writtenClaims } from "./written-claims";

export const contradictingStatements: Rule<CheckContext> = {
  code: "contradicting-statements",
  severity: "error",
  title: "A statement that is both true and false",
  why: "The same text is marked true in one place and false in another, or a false statement says what another one's correction says, or what a pair says that is sorted with it. Whatever a learner answers, one of the two keys is against it. Where different classes or versions get the two, it is a warning only. Change one of them, or take it out.",
  example: {
    wrong: frame(`- [x] Ela bebe chá.\n- [ ] Ela bebe chá.\n${others}`),
    right: frame(`- [x] Ela bebe chá.\n- [ ] Ela bebe café.\n${others}`),
  },
  check: (context) =>
    once(
      worstLast(
        writtenClaims(context).flatMap(({ activities, ...written }) =>
          contradicted(written).map(({ claim, against, together }): Report => {
            const marked = against.key === claim.key;
            const marks = marked
              ? "another statement with this text is marked true"
              : "a correction says that it is so";
            const how = isPair(claim.item) ? "shown as false here, with a wrong partner" : "marked false here";
            const place = (!marked && against.correction?.source) || against.source;
            return {
              range: claim.source,
              activities,
              message: `“${claim.text}” is ${how}, but ${isPair(against.item) ? "a pair says so" : marks}.${together ? "" : " No list or set has both, so nobody meets the contradiction; one of the two is wrong all the same."}`,
              ...(together ? {} : { severity: "warning" as const }),
              related: [
                {
                  range: place,
                  message: isPair(against.item) ? "The pair" : marked ? "Marked true" : "The correction",
                },
              ],
              fixes: takingOut(context, claim.item, { title: "Take this one out" }),
            };
          }),
        ),
      ),
    ),
};

/** What several activities find at one place is told as it is told last. */
function worstLast(reports: readonly Report[]): Report[] {
  return [...reports].sort((a, b) => Number(a.severity === undefined) - Number(b.severity === undefined));
}
