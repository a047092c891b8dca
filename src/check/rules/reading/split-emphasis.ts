import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const splitEmphasis = problemRule({
  code: "split-emphasis",
  severity: "warning",
  title: "Bold or italic across a separator",
  why: "The sides of a pair, its answers and its parts are read each by itself. Asterisks that open in one and close in another are printed as they stand.",
  example: { wrong: inFood("- **ovo = egg**"), right: inFood("- **ovo** = **egg**") },
});
