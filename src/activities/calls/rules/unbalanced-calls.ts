import { balanceRule } from "../../balance-rule";
import { six } from "./example";

const allTrue =
  "## The morning\n\n- [x] Ela chega cedo.\n- [x] Ela bebe chá.\n- [x] Ela sai às dez.\n- [x] Ela volta tarde.\n- [x] Ela dorme.\n- [x] Ela ri.\n\n";

export const unbalancedCalls = balanceRule({
  code: "unbalanced-calls",
  example: {
    wrong: `${allTrue}\`\`\`activity\nmake: calls\n\`\`\``,
    right: `${six}\`\`\`activity\nmake: calls\n\`\`\``,
  },
});
