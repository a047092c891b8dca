import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const notATable = problemRule({
  code: "not-a-table",
  severity: "warning",
  hides: true,
  title: "Lines that are nearly a table",
  why: "Under the heads of a table stands a row of hyphens with as many cells, as in `| --- | --- |`. Without it the lines are text, which is not read. A blank line before the first row parts it from an item above, a blank line between rows ends the table, and a text right below the last row becomes a row. White space alone parts no cells. A table of forms has an empty top left cell.",
  example: {
    wrong: inFood("", "\n| palavra | word |\n| --- |\n| ovo | egg |\n"),
    right: inFood("", "\n| palavra | word |\n| --- | --- |\n| ovo | egg |\n"),
  },
});
