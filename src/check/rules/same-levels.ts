import { removeOption, setOption } from "../../activities/edits";
import { optionPlace } from "../../activities/report";
import type { Fix, Report, Rule } from "../../base/finding";
import type { CheckContext, CheckedActivity } from "../context";

export const sameLevels: Rule<CheckContext> = {
  code: "same-levels",
  severity: "warning",
  title: "Levels that do not differ",
  why: "A level changes something on the pieces: gentle strips tell two places, hard boards and loops have words without a partner, hard statements have false twins. Here nothing can be changed so, and both levels would be equally hard. Give the unit what the level needs, or take `levels` out. Of tiles the difficulty is computed, and of many arrangements an easy one and a difficult one are taken; where blank edges lie inside, words on the outside may help more than they hinder, so that hard is easier all the same: that is told too, also of a hard version and a gentle one with another number.",
  example: {
    wrong:
      "## The morning\n\n1. O Tomé abre a oficina:\n   - mede a roda\n   - pinta o quadro\n2. O Tomé abre a oficina:\n\n```activity\nmake: strips\nlevels: [gentle, hard]\n```",
    right:
      "## The morning\n\n1. O Tomé abre a oficina:\n   - mede a roda\n   - pinta o quadro\n2. O Tomé fecha a porta.\n\n```activity\nmake: strips\nlevels: [gentle, hard]\n```",
  },
  check: ({ activities, unit }) =>
    activities.flatMap(({ plan, dealt }): Report[] => {
      const { block } = plan;
      const { sameLevels: same, upsetLevels: upset } = dealt;
      if ((same === undefined && upset === undefined) || dealt.deals.length === 0) return [];
      const without = removeOption(block, unit.text, "levels");
      return [
        {
          range: optionPlace(block, "levels"),
          message: same === undefined ? `${upset}.` : `Levels change nothing here: ${same}.`,
          fixes: [
            ...(same === undefined ? oneVersion(plan, unit.text) : []),
            ...(without ? [{ title: "Take “levels” out", edits: [without] }] : []),
          ],
        },
      ];
    }),
};

/** A single version, where the levels of that are in order. */
function oneVersion({ kind, request, block }: CheckedActivity["plan"], text: string): Fix[] {
  if (!kind || !request || request.options.value.versions === 1) return [];
  const { options } = request;
  const { deals, upsetLevels } = kind.deal({
    ...request,
    options: { ...options, value: { ...options.value, versions: 1 } },
  });
  if (deals.length === 0 || upsetLevels !== undefined) return [];
  return [{ title: "Make one version", edits: [setOption(block, text, "versions", "1")] }];
}
