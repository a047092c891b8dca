import type { Rule } from "../../../base/finding";
import { balanceRule, twinsRule } from "../../claim-rules";
import type { SortContext } from "./context";
import { unbalancedHands } from "./hands";
import {
  cardInNoPile,
  cardInTwoPiles,
  matCircles,
  repeatedCard,
  sortPiles,
  tooFewCards,
  tooFewMispairs,
} from "./piles";
import { sortTooSmall } from "./text";

const fair =
  "## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n  - Ela bebe chá.\n- [x] Ela sai às dez.\n- [ ] Ela volta cedo.\n  - Ela volta tarde.\n\n";

const unbalancedSort = balanceRule({
  code: "unbalanced-sort",
  example: {
    wrong:
      "## The morning\n\n- [x] Ela chega cedo.\n- [x] Ela bebe chá.\n- [x] Ela sai às dez.\n- [x] Ela volta tarde.\n\n```activity\nmake: sort\n```",
    right: `${fair}\`\`\`activity\nmake: sort\n\`\`\``,
  },
});

const fewSortTwins = twinsRule({
  code: "too-few-sort-twins",
  example: {
    wrong: `${fair}\`\`\`activity\nmake: sort\ntwins: 2\n\`\`\``,
    right: `${fair}\`\`\`activity\nmake: sort\ntwins: none\n\`\`\``,
  },
});

export const rules: readonly Rule<SortContext>[] = [
  sortPiles,
  tooFewCards,
  cardInNoPile,
  cardInTwoPiles,
  repeatedCard,
  unbalancedHands,
  unbalancedSort,
  tooFewMispairs,
  fewSortTwins,
  matCircles,
  sortTooSmall,
];
