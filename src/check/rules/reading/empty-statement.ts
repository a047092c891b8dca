import { problemRule } from "./problem-rule";

export const emptyStatement = problemRule({
  code: "empty-statement",
  severity: "error",
  title: "A statement that states nothing",
  why: "Behind `[x]` or `[ ]` stands what is true or false. An empty statement is not used.",
  example: {
    wrong: "## The day\n\n- [x]\n- [ ] Ela canta.",
    right: "## The day\n\n- [x] Ela dança.\n- [ ] Ela canta.",
  },
});
