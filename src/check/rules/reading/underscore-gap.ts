import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const underscoreGap = problemRule({
  code: "underscore-gap",
  severity: "warning",
  title: "A gap drawn in another way",
  why: "A gap to write in is `[...]`, which is printed as a line. Markdown takes low lines for emphasis, and many dots or hyphens, or others in the brackets, are printed as they stand.",
  example: { wrong: inFood("- Eu ___ fome. = I am hungry."), right: inFood("- Eu [...] fome. = I am hungry.") },
});
