import type { Report, Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { once } from "./once-a-place";
import { isWrittenTwice } from "./same-words";
import { takingOut } from "./spare";
import { frame, others } from "./statements-example";
import { repeated, writtenClaims } from "./written-claims";

export const repeatedStatement: Rule<CheckContext> = {
  code: "repeated-statement",
  severity: "warning",
  title: "A statement that stands twice",
  why: "Learners meet it a second time and know the answer, where one list or one set of cards has both: what different classes or versions get is not compared. What is called is the same where it sounds the same, whatever its capitals and commas. Take one of the two out, or change it.",
  example: {
    wrong: frame(`- [x] Ela bebe chá.\n- [x] Ela bebe chá.\n${others}`),
    right: frame(`- [x] Ela bebe chá.\n- [x] Ela come pão.\n${others}`),
  },
  check: (context) =>
    once(
      writtenClaims(context).flatMap(({ activities, ...written }) =>
        repeated(written).map(
          ({ claim, first }): Report => ({
            range: claim.source,
            activities,
            message:
              claim.key === first.key
                ? `“${claim.text}” stands here a second time.`
                : `“${claim.text}” sounds like “${first.text}”, which is called as well.`,
            related: [{ range: first.source, message: "Here it stands first" }],
            fixes: takingOut(context, claim.item, {
              title: "Take this one out",
              preferred: isWrittenTwice(context.unit, first.item, claim.item),
            }),
          }),
        ),
      ),
    ),
};
