import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const underlinedItem = problemRule({
  code: "underlined-item",
  severity: "warning",
  hides: true,
  title: "A line of signs under an item",
  why: "A line of equals signs or hyphens right under an item makes a heading of it, or becomes part of it. For a line between parts of your notes leave a blank line above it.",
  example: { wrong: inFood("- ovo = egg\n  ==="), right: inFood("- ovo = egg") },
});
