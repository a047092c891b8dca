import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const quotedItems = problemRule({
  code: "quoted-items",
  severity: "warning",
  hides: true,
  title: "Items in a quotation",
  why: "A line that begins with `>` is a quotation, and quotations are notes: items and activities in them are not read.",
  example: {
    wrong: inFood("", "\n> - ovo = egg\n> - uva = grape\n"),
    right: inFood("", "\n- ovo = egg\n- uva = grape\n"),
  },
});
