import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const footnote = problemRule({
  code: "footnote",
  severity: "warning",
  title: "A footnote on a piece",
  why: "A piece of paper has no foot to put a note on: the mark is printed as it stands.",
  example: {
    wrong: inFood("- ovo[^1] = egg", "\n[^1]: Also in omelettes.\n"),
    right: inFood("- ovo = egg", "\nAlso in omelettes.\n"),
  },
});
