import { twinsRule } from "../../twins-rule";
import { fair } from "./statements-example";

export const tooFewSortTwins = twinsRule({
  code: "too-few-sort-twins",
  example: {
    wrong: `${fair}\`\`\`activity\nmake: sort\ntwins: 2\n\`\`\``,
    right: `${fair}\`\`\`activity\nmake: sort\ntwins: none\n\`\`\``,
  },
});
