import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const notAnItem = problemRule({
  code: "not-an-item",
  severity: "warning",
  hides: true,
  title: "A line that is nearly an item",
  why: "An item begins with a hyphen and a space, an event with a number, a full stop and a space. Other signs, letters instead of numbers, no sign, or no space behind it make it part of a paragraph, which is not read, or of the item above, with which it is printed. So does a sentence of its own right below an item, and a word right below the card of a pile. Rows pasted from a spreadsheet, lists in HTML, and words with what they mean below them, behind a colon, are no items either.",
  example: { wrong: inFood("", "\n• ovo = egg\n"), right: inFood("- ovo = egg") },
});
