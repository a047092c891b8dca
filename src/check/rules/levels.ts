import { removeOption } from "../../activities/edits";
import { optionPlace } from "../../activities/report";
import type { Report, Rule } from "../../base/finding";
import type { CheckContext } from "../context";

export const sameLevels: Rule<CheckContext> = {
  code: "same-levels",
  severity: "warning",
  title: "Levels that do not differ",
  why: "A level changes something on the pieces: gentle strips tell two places, hard boards and loops have words without a partner, hard statements have false twins. Here nothing can be changed so, and both levels would be equally hard. Give the unit what the level needs, or take `levels` out.",
  example: {
    wrong:
      "## The morning\n\n1. O Tomé abre a oficina:\n   - mede a roda\n   - pinta o quadro\n2. O Tomé abre a oficina:\n\n```activity\nmake: strips\nlevels: [gentle, hard]\n```",
    right:
      "## The morning\n\n1. O Tomé abre a oficina:\n   - mede a roda\n   - pinta o quadro\n2. O Tomé fecha a porta.\n\n```activity\nmake: strips\nlevels: [gentle, hard]\n```",
  },
  check: ({ activities, unit }) =>
    activities.flatMap(({ plan: { block }, dealt }): Report[] => {
      if (dealt.sameLevels === undefined || dealt.deals.length === 0) return [];
      const without = removeOption(block, unit.text, "levels");
      return [
        {
          range: optionPlace(block, "levels"),
          message: `Levels change nothing here: ${dealt.sameLevels}.`,
          fixes: without ? [{ title: "Take “levels” out", edits: [without] }] : [],
        },
      ];
    }),
};

/** Options that say nothing beside another one. */
const overruled: readonly {
  readonly make: string;
  readonly key: string;
  readonly by: string;
  /** Only with this value. */
  readonly value?: string;
  readonly why: string;
}[] = [
  { make: "rebuild", key: "capitals", by: "levels", why: "gentle keeps capitals and hard hides them" },
  { make: "rebuild", key: "stops", by: "levels", why: "gentle keeps the marks at the ends and hard hides them" },
  { make: "tiles", key: "outer", by: "levels", why: "gentle leaves the outer edges blank and hard has decoys there" },
  { make: "board", key: "versions", by: "boards", value: "different", why: "each set has a board of its own" },
];

export const overruledOption: Rule<CheckContext> = {
  code: "overruled-option",
  severity: "warning",
  title: "An option that another one overrules",
  why: "Two options say the same thing, and one of them goes first: levels say themselves what gentle and hard pieces show, and different boards are as many as there are sets. What the other option says is not done. Take one of them out.",
  example: {
    wrong:
      "## Ordering\n\n- Preciso de uma bomba. = I need a pump.\n\n```activity\nmake: rebuild\nlevels: [gentle, hard]\ncapitals: hide\n```",
    right:
      "## Ordering\n\n- Preciso de uma bomba. = I need a pump.\n\n```activity\nmake: rebuild\nlevels: [gentle, hard]\n```",
  },
  check: ({ plan, unit }) =>
    plan.activities.flatMap(({ block, kind }): Report[] => {
      const { entries } = block.options;
      return overruled.flatMap(({ make, key, by, value, why }): Report[] => {
        const other = entries.find((entry) => entry.key === by);
        const rules = kind?.name === make && other && (value === undefined || other.value === value);
        const own = entries.find((entry) => entry.key === key);
        if (!rules || !own) return [];
        const without = removeOption(block, unit.text, key);
        return [
          {
            range: optionPlace(block, key),
            message: `“${key}” changes nothing beside “${by}”: ${why}.`,
            related: [{ range: optionPlace(block, by), message: "This goes first" }],
            fixes: without ? [{ title: `Take “${key}” out`, edits: [without], preferred: true }] : [],
          },
        ];
      });
    }),
};
