import type { Rule } from "../../base/finding";
import type { Unit } from "../../unit/unit";
import { type CheckContext, dealsStatements } from "../context";

/** Fewer statements than this say nothing about balance. */
const enough = 4;

/** A task list in a file that says nothing of a unit is a task list. */
function isUnit({ front, activities }: Unit): boolean {
  return front.entries.length > 0 || activities.length > 0;
}

export const unbalancedStatements: Rule<CheckContext> = {
  code: "unbalanced-statements",
  severity: "warning",
  title: "Far more true statements than false ones, or the other way round",
  why: "Learners who guess lean towards “true” (Cronbach 1942, J. Educ. Psych. 33). With 30 to 70 % true statements guessing gains little; about as many true as false is best (Penn State item-writing guide; the limits are our own). Sections with fewer than four statements are not judged, nor those that an activity deals: there it counts what is dealt.",
  example: {
    wrong:
      "---\nteaches: pt\n---\n\n## The morning\n\n- [x] Ela chega cedo.\n- [x] Ela bebe chá.\n- [x] Ela sai às dez.\n- [x] Ela volta tarde.",
    right:
      "---\nteaches: pt\n---\n\n## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n  - Ela bebe chá.\n- [x] Ela sai às dez.\n- [ ] Ela volta cedo.\n  - Ela volta tarde.",
  },
  check: (context) => {
    const { unit } = context;
    return (isUnit(unit) ? unit.sections : []).flatMap((section) => {
      const { statements } = section;
      const right = statements.filter(({ truth }) => truth).length;
      const share = right / statements.length;
      if (dealsStatements(context, section) || statements.length < enough || (share >= 0.3 && share <= 0.7)) return [];
      const many = share > 0.7;
      const odd = statements.filter(({ truth }) => truth !== many);
      return [
        {
          range: section.heading,
          message: `${right} of ${statements.length} statements are true (${Math.round(share * 100)} %). ${many ? "Make some of them false" : "Make some of them true"}: between 30 and 70 % true, guessing gains little.`,
          related: odd
            .slice(0, 5)
            .map(({ range, truth }) => ({ range, message: `${truth ? "True" : "False"}, one of few` })),
        },
      ];
    });
  },
};
