import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const nearlyARemark = problemRule({
  code: "nearly-a-remark",
  severity: "warning",
  title: "A comment that is nearly one with a meaning",
  why: "Two comments mean something: `<!-- by: K7 -->` names a writer, `<!-- allow CODE: reason -->` silences a finding. Written in another way they are notes like any other comment, and the writer is not printed, the finding not silenced.",
  example: { wrong: inFood("- ovo = egg <!-- by K7 -->"), right: inFood("- ovo = egg <!-- by: K7 -->") },
});
