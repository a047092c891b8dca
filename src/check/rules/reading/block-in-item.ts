import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const blockInItem = problemRule({
  code: "block-in-item",
  severity: "warning",
  hides: true,
  title: "A block behind a bullet",
  why: "Behind a bullet stands the text of an item. A table, three backticks, HTML or the target of a link (`[name]: …`) that begins there is read as something else, and the item is lost.",
  example: {
    wrong: inFood("\n- | palavra | word |\n  | --- | --- |\n  | ovo | egg |\n"),
    right: inFood("\n| palavra | word |\n| --- | --- |\n| ovo | egg |\n"),
  },
});
