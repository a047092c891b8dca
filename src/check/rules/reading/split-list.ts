import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const splitList = problemRule({
  code: "split-list",
  severity: "hint",
  title: "A list that another sign parts in two",
  why: "Items that begin with `-`, `*` and `+` are different lists to Markdown, also without a blank line between them. Cutwork reads all of them; other programs may set them apart.",
  example: { wrong: inFood("* ovo = egg"), right: inFood("- ovo = egg") },
});
