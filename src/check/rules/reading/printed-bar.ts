import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const printedBar = problemRule({
  code: "printed-bar",
  severity: "warning",
  title: "A bar that is printed",
  why: "Bars (`|`) cut the left side of a pair into parts. On the right side they are printed as they stand, and so are signs that only look like a bar: `¦`, `‖`. So are those in a bullet under a left side without bars, which is an example and no accepted order. Accepted answers are parted by ` / `; a backslash before a bar keeps it as text.",
  example: { wrong: inFood("- ovo = egg | eggs"), right: inFood("- ovo = egg / eggs") },
});
