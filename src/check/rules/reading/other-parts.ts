import { problemRule } from "./problem-rule";

export const otherParts = problemRule({
  code: "other-parts",
  severity: "error",
  title: "An accepted order with other parts",
  why: "A bullet with bars under a sentence with bars is another order of the same parts. Capitals and punctuation at the edges of a part may differ; nothing else may. Without bars it is an example sentence.",
  example: {
    wrong:
      "## Ordering\n\n- Queria | um disco, | por favor. = I'd like a record, please.\n  - Por favor, | quero | um disco.",
    right:
      "## Ordering\n\n- Queria | um disco, | por favor. = I'd like a record, please.\n  - Por favor, | queria | um disco.",
  },
});
