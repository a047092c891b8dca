import type { LineIndex, Range } from "../../base/range";
import { sentenceEnd } from "../../base/stops";
import { type Env, scan, spacedSeparators } from "../inline";
import type { Problems } from "../problems";
import type { SourceText } from "../source-text";
import { customOf } from "./mark-words";

/*
 * Sentences with what judges them on the other side, in the way of a spreadsheet: `- O pão voa. = falso`, or a column of such words.
 */

interface Judged {
  readonly sentence: string;
  readonly mark: string;
}

/** So few may be words that are learned. */
const fewest = 3;

/** Three words or more and a stop: what is shorter may be an answer that is learned, `Está bem. = richtig`. */
const isSentence = (text: string): boolean =>
  sentenceEnd.test(text) && /\S\s+\S+\s+\S|[\p{sc=Han}\p{sc=Hira}\p{sc=Kana}\p{sc=Thai}].{3}/u.test(text);

const bareMark = (mark: string): string => mark.trim().replace(/[.!]$/, "").toLowerCase();

/** What each mark says, where all texts are sentences, all marks judge, and both are said. */
function truthsOf(rows: readonly Judged[]): readonly boolean[] | undefined {
  if (rows.length < fewest || !rows.every(({ mark }) => mark.trim().length < 13)) return undefined;
  if (!rows.every(({ sentence }) => isSentence(sentence.trim()))) return undefined;
  const marks = rows.map(({ mark }) => bareMark(mark));
  const custom = customOf(marks, []);
  const truths = marks.flatMap((mark) => custom.of(mark) ?? []);
  return custom.both && truths.length === rows.length ? truths : undefined;
}

const message =
  "This is read as the other side of a pair: a statement begins with “[x] ” when it is true and “[ ] ” when it is false.";

const box = (truth: boolean | undefined): string => (truth ? "[x] " : "[ ] ");

/** All pairs of a list are such: told at the first. */
export function judgedPairs(pairs: readonly { readonly text: SourceText }[], env: Env, problems: Problems): void {
  if (pairs.length < fewest) return;
  const found = pairs.flatMap(({ text: source }) => {
    const { mask, comments } = scan(source.text, env);
    const end = comments[0]?.start ?? source.text.length;
    const [sign] = spacedSeparators(source.text, mask, "=", 0, end);
    const to = source.text.slice(0, end).trimEnd().length;
    return sign
      ? [{ source, sign, to, sentence: source.text.slice(0, sign.start), mark: source.text.slice(sign.end, to) }]
      : [];
  });
  const truths = found.length === pairs.length ? truthsOf(found) : undefined;
  const [first] = found;
  if (!truths || !first) return;
  problems.trap("meant-as-statement", first.source.range(first.sign.end, first.to), message, {
    title: "Make statements of the pairs",
    edits: found.flatMap(({ source, sign, to }, i) => [
      { range: source.range(0, 0), text: box(truths[i]) },
      { range: source.range(sign.start, to), text: "" },
    ]),
    unsure: true,
  });
}

/** All rows of a table of pairs are such: told at the head of the column. */
export function judgedRows(
  lines: LineIndex,
  [, head]: readonly SourceText[],
  rows: readonly (readonly SourceText[])[],
  range: Range,
  problems: Problems,
): void {
  const written = rows.map(([said, mark]) => ({ sentence: said?.text ?? "", mark: mark?.text ?? "" }));
  const truths = truthsOf(written);
  if (!truths || !head) return;
  const raw = rows.map(([said]) => lines.text.slice(said?.whole.start, said?.whole.end));
  const text = raw.map((said, i) => `- ${box(truths[i])}${said}`).join(lines.newline);
  problems.trap("meant-as-statement", head.whole, message, {
    title: "Make statements of the rows",
    edits: [{ range, text }],
    unsure: true,
  });
}
