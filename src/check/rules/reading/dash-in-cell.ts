import { problemRule } from "./problem-rule";

const table = (cell: string): string =>
  `## Forms\n\n|     | medir | pesar |\n| --- | ----- | ----- |\n| eu  | meço  | peso  |\n| tu  | medes | ${cell} |\n\n\`\`\`activity\nmake: tiles\n\`\`\``;

export const dashInCell = problemRule({
  code: "dash-in-cell",
  severity: "warning",
  title: "A dash or a gap instead of a form, in a table of forms",
  why: "Each cell that is not empty is a form: a dash would be printed on pieces and stand in false sentences. Where there is no form, or none is to be used, the cell stays empty.",
  example: { wrong: table("—    "), right: table("     ") },
});
