import type { Fix } from "../../../base/finding";
import type { Pair } from "../../../unit/unit";

/** `Onde / guardas / a chave?`: three answers of one sentence are rarer than bars that became slashes. A fix where all pairs are such. */
export function cutsOf(pairs: readonly Pair[], title: string): Fix[] {
  const isCut = ({ left: { answers } }: Pair): boolean =>
    answers.length > 2 && answers.every(({ text, picture }) => text !== "" && !picture);
  if (pairs.length === 0 || !pairs.every(isCut)) return [];
  const edits = pairs.flatMap(({ left: { answers } }) =>
    answers.slice(1).map(({ range }, i) => ({
      range: { start: answers[i]?.range.end ?? range.start, end: range.start },
      text: " | ",
    })),
  );
  return [{ title, edits }];
}
