import { inFood, pairs, tiles } from "./food-example";
import { problemRule } from "./problem-rule";

export const indentedList = problemRule({
  code: "indented-list",
  severity: "warning",
  title: "A list that is code, since it is indented",
  why: "Four spaces or a tab before a list, or five behind a bullet, make code of it. Nothing in it is read.",
  example: { wrong: `## Food\n\nNotes\n\n    - ovo = egg\n\n${pairs}${tiles}`, right: inFood("- ovo = egg") },
});
