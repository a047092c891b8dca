import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const listInList = problemRule({
  code: "list-in-list",
  severity: "warning",
  hides: true,
  title: "An item that Markdown takes for a list, a heading or a quotation",
  why: "A number with a full stop at the beginning of an item begins a list inside the list, as in `- 3. Oktober`; `#` begins a heading, `>` a quotation. The item is then not read. A backslash before the sign makes it text; of two bullets, one is taken out.",
  example: { wrong: inFood("- 3. Gang = third course"), right: inFood("- 3\\. Gang = third course") },
});
