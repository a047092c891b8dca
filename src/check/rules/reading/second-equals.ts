import { problemRule } from "./problem-rule";

export const secondEquals = problemRule({
  code: "second-equals",
  severity: "warning",
  title: "A second equals sign in a pair",
  why: "The first ` = ` parts an item into its two sides. A further one is read as text and printed. If it is meant as text, write `\\=`; if it was to be a further answer, write ` / `.",
  example: { wrong: "## Counting\n\n- dos = two = 2", right: "## Counting\n\n- dos = two / 2" },
});
