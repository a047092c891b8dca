import { problemRule } from "./problem-rule";

export const tooManyCells = problemRule({
  code: "too-many-cells",
  severity: "error",
  title: "A table row with more cells than the table has columns",
  why: "Markdown drops what is over. A bar that belongs to the text of a cell is written `\\|`.",
  example: {
    wrong: "## Words\n\n| palavra | word |\n| --- | --- |\n| o pão | bread | loaf |",
    right: "## Words\n\n| palavra | word |\n| --- | --- |\n| o pão | bread / loaf |",
  },
});
