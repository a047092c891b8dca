import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const struckText = problemRule({
  code: "struck-text",
  severity: "warning",
  title: "Struck out text",
  why: "`~~` strikes text out on a screen. On pieces it is printed like any other, so that the learners read what was meant to be gone.",
  example: { wrong: inFood("- ~~o~~ ovo = egg"), right: inFood("- ovo = egg") },
});
