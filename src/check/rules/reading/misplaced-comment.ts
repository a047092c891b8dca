import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const misplacedComment = problemRule({
  code: "misplaced-comment",
  severity: "warning",
  title: "A comment that stands where it is lost",
  why: "`<!-- allow CODE: reason -->` and `<!-- by: CODE -->` count at the end of an item's line. At its beginning Markdown makes a comment of the whole item; between items it parts the list; in the left cell of a table's row, or behind its last bar, it says nothing.",
  example: { wrong: inFood("- <!-- by: K7 --> ovo = egg"), right: inFood("- ovo = egg <!-- by: K7 -->") },
});
