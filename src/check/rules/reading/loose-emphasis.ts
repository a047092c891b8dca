import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const looseEmphasis = problemRule({
  code: "loose-emphasis",
  severity: "warning",
  title: "Signs of emphasis with white space inside",
  why: "Between the asterisks or low lines of bold and italic and the words themselves stands no white space. Where some does, the signs are printed; so are two equals signs on both sides of a word, and low lines within one: `com*emos*` has its end in italics.",
  example: { wrong: inFood("- ** ovo ** = egg"), right: inFood("- **ovo** = egg") },
});
