import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const notNested = problemRule({
  code: "not-nested",
  severity: "warning",
  title: "Bullets that are not far enough in",
  why: "What belongs to an item stands under the beginning of its text: two spaces in under `- `, three under `9. `, four under `10. `. Between two events also bullets at the margin are meant so. With fewer spaces it is an item of its own, so that the example, the correction or what happens in any order is lost.",
  example: { wrong: inFood("- ovo = egg\n - Um ovo cozido."), right: inFood("- ovo = egg\n  - Um ovo cozido.") },
});
