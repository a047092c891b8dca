import { levelTold } from "../../activities/levels";
import type { Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { makeRange } from "./make-range";

export const movedDeal: Rule<CheckContext> = {
  code: "moved-deal",
  severity: "information",
  title: "An edit that moved the pieces",
  why: "Mending a word keeps every piece in its place. Where the mended word fits a further edge, that arrangement would have a second solution, and the next one of the seed is taken; with `levels` also where another one is now the easiest or the hardest: pieces of the old print do not mix with the new.",
  example: {
    wrong: "The unit was exported, and an edit gave two words one answer: the arrangement had to change.",
    right: "The words differ again.",
  },
  check: ({ unit, activities, printed }) =>
    activities.flatMap((checked) => {
      const { plan, dealt } = checked;
      const { seed, levels } = plan.request?.options.value ?? {};
      const moved = dealt.deals.some((deal) =>
        printed.some(
          (old) =>
            old.own &&
            old.activity === plan.title &&
            old.level === levelTold(deal, levels) &&
            old.version === deal.version &&
            old.seed === seed &&
            old.attempt !== deal.attempt,
        ),
      );
      return moved
        ? [
            {
              range: makeRange(checked, unit),
              message: `Since the last export the words changed so that the arrangement of “${plan.title}” had to move to keep one solution${levels ? ", or its level" : ""}.`,
            },
          ]
        : [];
    }),
};
