import { hasClaims } from "../../activities/dealt-claims";
import type { Report, Rule } from "../../base/finding";
import type { CheckContext } from "../context";
import { giveawaysOf } from "./giveaways";
import { once } from "./once-a-place";
import { frame } from "./statements-example";

export const giveawayWord: Rule<CheckContext> = {
  code: "giveaway-word",
  severity: "hint",
  title: "Words that give the answer away",
  why: "“All”, “only”, “never”, “always” stand mostly in false statements, “usually” and “generally” in true ones, and learners know it: use such words in both kinds or in none (Penn State item-writing guide; Illinois CITL; the lists for other languages are our own). Nothing is said of a word that stands in one statement only.",
  example: {
    wrong: `---\nteaches: en\n---\n\n${frame("- [ ] She always drinks tea.\n- [ ] She never sleeps.\n- [ ] They all sing.\n- [x] She reads.\n- [x] She eats.\n- [x] She left.")}`,
    right: `---\nteaches: en\n---\n\n${frame("- [ ] She always drinks tea.\n- [x] She never sleeps.\n- [ ] They all sing.\n- [x] She reads.\n- [ ] She eats.\n- [x] She left.")}`,
  },
  check: (context) =>
    once(
      context.activities.flatMap(({ dealt }) =>
        hasClaims(dealt)
          ? giveawaysOf(
              dealt.claims.filter(({ twin }) => twin === undefined),
              dealt.request.teaches,
            ).map(
              ({ words, truth, claims }): Report => ({
                range: claims[0]?.source ?? { start: 0, end: 0 },
                message: `${words.map((word) => `“${word}”`).join(", ")}: such words stand only in ${truth ? "true" : "false"} statements here (${claims.length}), so they give the answer away.`,
                related: claims.slice(1, 6).map(({ source }) => ({ range: source, message: "And here" })),
              }),
            )
          : [],
      ),
    ),
};
