import type { Fix, TextEdit } from "../../../base/finding";
import type { Pair, Side } from "../../../unit/unit";

/** `Onde / guardas / a chave?` with bars for the slashes. */
export function cutAtSlashes(side: Side): Fix[] {
  return [{ title: "Cut it at the slashes", edits: barsIn(side) }];
}

/** The same of several pairs, where all have three answers or more: those of one sentence are rarer than bars that became slashes. */
export function cutsOf(pairs: readonly Pair[], title: string): Fix[] {
  const isCut = ({ left: { answers } }: Pair): boolean =>
    answers.length > 2 && answers.every(({ text, picture }) => text !== "" && !picture);
  if (pairs.length === 0 || !pairs.every(isCut)) return [];
  return [{ title, edits: pairs.flatMap(({ left }) => barsIn(left)) }];
}

function barsIn({ answers }: Side): TextEdit[] {
  return answers.slice(1).map(({ range }, i) => ({
    range: { start: answers[i]?.range.end ?? range.start, end: range.start },
    text: " | ",
  }));
}
