import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const notAnItem = problemRule({
  code: "not-an-item",
  severity: "warning",
  title: "A line that is nearly an item",
  why: "An item begins with a hyphen and a space. Other signs, and a hyphen without a space, make it part of a paragraph, which is not read.",
  example: { wrong: inFood("", "\n• ovo = egg\n"), right: inFood("- ovo = egg") },
});
