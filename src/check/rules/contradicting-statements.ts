import type { ShownPair } from "../../activities/dealt-claims";
import type { Claim } from "../../activities/statements";
import type { Report, Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { once } from "./once-a-place";
import { takingOut } from "./spare";
import { frame, others } from "./statements-example";
import { contradicted, writtenClaims } from "./written-claims";

export const contradictingStatements: Rule<CheckContext> = {
  code: "contradicting-statements",
  severity: "error",
  title: "A statement that is both true and false",
  why: "The same text is marked true in one place and false in another, or a false statement says what another one's correction says, or what a pair says that is sorted with it. Whatever a learner answers, one of the two keys is against it. Change one of them, or take it out.",
  example: {
    wrong: frame(`- [x] Ela bebe chá.\n- [ ] Ela bebe chá.\n${others}`),
    right: frame(`- [x] Ela bebe chá.\n- [ ] Ela bebe café.\n${others}`),
  },
  check: (context) =>
    once(
      writtenClaims(context).flatMap(({ claims, shown, activities }) => {
        const isPair = (one: Claim | ShownPair): boolean => shown.some((each) => each === one);
        return contradicted({ claims, shown }).map(({ claim, against }): Report => {
          const marked = against.key === claim.key;
          const marks = marked ? "another statement with this text is marked true" : "a correction says that it is so";
          const how = isPair(claim) ? "shown as false here, with a wrong partner" : "marked false here";
          const place = (!marked && against.correction?.source) || against.source;
          return {
            range: claim.source,
            activities,
            message: `“${claim.text}” is ${how}, but ${isPair(against) ? "a pair says so" : marks}.`,
            related: [
              {
                range: place,
                message: isPair(against) ? "The pair" : marked ? "Marked true" : "The correction",
              },
            ],
            fixes: takingOut(context, claim.item, { title: "Take this one out" }),
          };
        });
      }),
    ),
};
