import { balanceRule } from "../../balance-rule";
import { fair } from "./statements-example";

export const unbalancedSort = balanceRule({
  code: "unbalanced-sort",
  example: {
    wrong:
      "## The morning\n\n- [x] Ela chega cedo.\n- [x] Ela bebe chá.\n- [x] Ela sai às dez.\n- [x] Ela volta tarde.\n\n```activity\nmake: sort\n```",
    right: `${fair}\`\`\`activity\nmake: sort\n\`\`\``,
  },
});
