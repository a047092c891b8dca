import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const openComment = problemRule({
  code: "open-comment",
  severity: "warning",
  title: "A comment in an item that is none, or has no end",
  why: "A comment begins with `<!--` and ends with `-->`. Without these signs, or with such as a program makes of them (`‹!— … —›`), it is text and is printed.",
  example: { wrong: inFood("- ovo = egg <!-- by: K7"), right: inFood("- ovo = egg <!-- by: K7 -->") },
});
