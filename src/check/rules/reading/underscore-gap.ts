import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const underscoreGap = problemRule({
  code: "underscore-gap",
  severity: "warning",
  title: "A gap drawn with low lines",
  why: "Markdown takes low lines for emphasis. A gap to write in is `[...]`, which is printed as a line.",
  example: { wrong: inFood("- Eu ___ fome. = I am hungry."), right: inFood("- Eu [...] fome. = I am hungry.") },
});
