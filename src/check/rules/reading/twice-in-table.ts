import { problemRule } from "./problem-rule";

export const twiceInTable = problemRule({
  code: "twice-in-table",
  severity: "warning",
  title: "A column or person twice in a table",
  why: "Each column and each person of a forms table has a name of its own. Where one stands twice, a card would say the same for two forms, so that the second is not read.",
  example: {
    wrong:
      "## Verbs\n\n|     | medir | medir |\n| --- | --- | --- |\n| eu | meço | peço |\n| tu | medes | pedes |\n\n```activity\nmake: tiles\n```",
    right:
      "## Verbs\n\n|     | medir | pedir |\n| --- | --- | --- |\n| eu | meço | peço |\n| tu | medes | pedes |\n\n```activity\nmake: tiles\n```",
  },
});
