import { twinsRule } from "../../twins-rule";
import { six } from "./example";

export const tooFewCallsTwins = twinsRule({
  code: "too-few-calls-twins",
  example: {
    wrong: `${six}\`\`\`activity\nmake: calls\ntwins: 2\n\`\`\``,
    right: `${six}\`\`\`activity\nmake: calls\ntwins: none\n\`\`\``,
  },
});
