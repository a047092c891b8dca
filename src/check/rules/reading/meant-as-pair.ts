import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const meantAsPair = problemRule({
  code: "meant-as-pair",
  severity: "warning",
  hides: true,
  title: "An item that is nearly a pair",
  why: "The sides of a pair are parted by ` = `, with a space on both sides. A dash, a colon, a tab, a bar or an equals sign without a space on each side parts nothing; the item is read as a note. The same is said of a slash, a semicolon and several spaces where the other items are pairs or all have the same sign, and of a comma and brackets where all items have them and none is a pair.",
  example: { wrong: inFood("- ovo – egg"), right: inFood("- ovo = egg") },
});
