import { problemRule } from "./problem-rule";

const table = (row: string): string =>
  `## Forms\n\n|     | medir | pesar |\n| --- | ----- | ----- |\n${row}\n\n\`\`\`activity\nmake: tiles\n\`\`\``;

export const gapInCell = problemRule({
  code: "gap-in-cell",
  severity: "warning",
  title: "A wide gap where a bar belongs, in a table of forms",
  why: "Only a bar parts the cells of a row. Without it two forms stand in one cell, those behind them under the wrong heads, and the last cell is empty.",
  example: { wrong: table("| eu  | meço    peso  |"), right: table("| eu  | meço  | peso  |") },
});
