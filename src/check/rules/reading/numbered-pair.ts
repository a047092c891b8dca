import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const numberedPair = problemRule({
  code: "numbered-pair",
  severity: "warning",
  hides: true,
  title: "A pair behind a number",
  why: "Numbered items are the events of a story, in their order; ` = ` means nothing in them, nor does a dash. Pairs stand behind hyphens.",
  example: { wrong: inFood("", "\n1. ovo = egg\n"), right: inFood("- ovo = egg") },
});
