import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const nearlyATie = problemRule({
  code: "nearly-a-tie",
  severity: "warning",
  title: "A tie that ties nothing",
  why: "`[peço](#pedir)` ties a word to a column of a forms table. White space between the brackets makes text of it; a name with white space stands in angle brackets, as in `(<#to drink>)`, and a person in quotation marks. Without the number sign it is a link, of which only the words are printed; with square or curly brackets behind the word, none round it, or one that is missing it is text.",
  example: {
    wrong: inFood("- [peço] (#pedir) = I order"),
    right: inFood("- [peço](#pedir) = I order"),
  },
});
