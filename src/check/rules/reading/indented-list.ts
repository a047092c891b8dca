import { inFood, pairs, tiles } from "./food-example";
import { problemRule } from "./problem-rule";

export const indentedList = problemRule({
  code: "indented-list",
  severity: "warning",
  hides: true,
  title: "A list that is code, since it is indented",
  why: "Four spaces or a tab before a list, five behind a bullet, or four more than the text of an item above, make code of it. Nothing in it is read.",
  example: { wrong: `## Food\n\nNotes\n\n    - ovo = egg\n\n${pairs}${tiles}`, right: inFood("- ovo = egg") },
});
