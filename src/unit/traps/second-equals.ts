import type { Span } from "../inline";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import { isBareEquals } from "./empty-side";

/**
 * `dos = two = 2`: of the equals signs of a pair, whose text ends at `last`, the first parts it and the others are printed. Two pairs in
 * one line are told elsewhere, and so is a sign that is all of the left side; on the right, as in `equals = =`, it is the answer.
 */
export function secondEquals(
  source: SourceText,
  [first, ...further]: readonly [Span, ...Span[]],
  last: number,
  problems: Problems,
): void {
  const { text } = source;
  const signs = further.map(({ start, end }) => start + text.slice(start, end).search(/[=＝]/u));
  const [sign] = signs;
  const [answer, more] = further;
  if (sign === undefined || !answer || text.slice(first.end, last).trim().length === 1 || isBareEquals(text, first))
    return;
  const doubled = /^[\s=＝]*$/u.test(text.slice(first.end, signs.at(-1)));
  // Two sums or explanations in one line are no pair, unless something takes pairs.
  const several = /[,;，；、]/u.test(text.slice(first.end, sign));
  // What stands in lines below may be items of their own.
  const inOneLine = !text.includes("\n");
  const asText = { title: "Mark it as text", edits: signs.map((at) => ({ range: source.range(at, at), text: "\\" })) };
  problems.tell(
    several ? "pairs" : undefined,
    "second-equals",
    source.range(sign, sign + 1),
    "Only the first “ = ” parts the two sides; this one is read as text.",
    ...(doubled && inOneLine
      ? [write("Take it out", source.range(first.end, further.at(-1)?.end ?? first.end), "")]
      : []),
    // It may as well be a further answer, and then it would be printed for good.
    { ...asText, unsure: true },
    ...(inOneLine && !more && !doubled && !several
      ? [write("Write “ / ”", source.range(answer.start, answer.end), " / ")]
      : []),
  );
}
