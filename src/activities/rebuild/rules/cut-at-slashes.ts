import type { Fix } from "../../../base/finding";
import type { Side } from "../../../unit/unit";

/** `Onde / guardas / a chave?` with bars for the slashes. */
export function cutAtSlashes({ answers }: Side): Fix[] {
  const edits = answers.slice(1).map(({ range }, i) => ({
    range: { start: answers[i]?.range.end ?? range.start, end: range.start },
    text: " | ",
  }));
  return [{ title: "Cut it at the slashes", edits }];
}
