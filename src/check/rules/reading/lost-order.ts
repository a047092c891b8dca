import { problemRule } from "./problem-rule";

export const lostOrder = problemRule({
  code: "lost-order",
  severity: "warning",
  title: "An accepted order without bars",
  why: "A bullet under a sentence with bars is another order of its parts where it has bars too, and an example sentence where it has none. One that is made of nothing but the parts of the sentence, in another order, is hardly an example.",
  example: {
    wrong:
      "## Ordering\n\n- Hoje | compramos | fruta. = Today we buy fruit.\n  - Compramos fruta hoje.\n\n```activity\nmake: rebuild\n```",
    right:
      "## Ordering\n\n- Hoje | compramos | fruta. = Today we buy fruit.\n  - Compramos | fruta | hoje.\n\n```activity\nmake: rebuild\n```",
  },
});
