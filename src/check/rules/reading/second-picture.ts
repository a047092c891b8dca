import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const secondPicture = problemRule({
  code: "second-picture",
  severity: "error",
  title: "A second picture in one answer",
  why: "A card has place for one picture, the first. Let pictures be answers of their own, parted by ` / `, or items of their own.",
  example: {
    wrong: inFood("- ovo ![a](img/a.png) ![b](img/b.png) = egg"),
    right: inFood("- ovo ![a](img/a.png) = egg"),
  },
});
