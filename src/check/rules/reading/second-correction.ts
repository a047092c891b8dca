import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const secondCorrection = problemRule({
  code: "second-correction",
  severity: "warning",
  title: "A second correction",
  why: "The first bullet under a statement is its correction. A further one is not read.",
  example: {
    wrong: inFood("- [ ] O pão é azul.\n  - O pão é branco.\n  - Nem sempre."),
    right: inFood("- [ ] O pão é azul.\n  - O pão é branco."),
  },
});
