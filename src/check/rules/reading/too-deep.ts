import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const tooDeep = problemRule({
  code: "too-deep",
  severity: "warning",
  hides: true,
  title: "Bullets two levels below an item",
  why: "A bullet under an item is read: as an example, a correction, or what happens in any order. A bullet under such a bullet is not. Indent it as far as the one above it, or not at all if it is an item of its own.",
  example: {
    wrong: inFood("- ovo = egg\n  - Um ovo.\n    - Dois ovos."),
    right: inFood("- ovo = egg\n  - Um ovo.\n  - Dois ovos."),
  },
});
