import type { Rule } from "../../../base/finding";
import { codes } from "../../codes";
import type { CheckContext } from "../../context";
import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

const nearly = problemRule({
  code: "nearly-a-remark",
  severity: "warning",
  title: "A comment that is nearly one with a meaning",
  why: "Two comments mean something: `<!-- by: K7 -->` names a writer, `<!-- allow CODE: reason -->` silences a finding. Written in another way they are notes like any other comment, and the writer is not printed, the finding not silenced.",
  example: { wrong: inFood("- ovo = egg <!-- by K7 -->"), right: inFood("- ovo = egg <!-- by: K7 -->") },
});

/** Where the word “allow” is not even misspelt, a comment without the code of a finding is a note. */
export const nearlyARemark: Rule<CheckContext> = {
  ...nearly,
  check: (context) =>
    nearly.check(context).filter(({ range }) => {
      const comment = context.unit.text.slice(range.start, range.end);
      const [, code] =
        /^<!--+\s*(?!al\w*\s*[:=：]?\s|by\b)(?:\w+\s*[:=：]?\s+)?([a-z]+(?:-[a-z]+)+)\s*[:：]/iu.exec(comment) ?? [];
      return code === undefined || codes().includes(code.toLowerCase());
    }),
};
