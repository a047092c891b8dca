import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const printedCounter = problemRule({
  code: "printed-counter",
  severity: "warning",
  title: "A bullet or a counter that is printed",
  why: "What other programs put before the items of a list, `•`, `a)` or `1.`, belongs to the text of an item when it stands behind the hyphen, and is printed on the piece. Pieces lie in another order than the list. Where all items of a list count, that is one finding; whether it is taken out is asked.",
  example: {
    wrong: inFood("- • ovo = egg"),
    right: inFood("- ovo = egg"),
  },
});
