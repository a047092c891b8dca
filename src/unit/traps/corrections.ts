import type { LineIndex } from "../../base/range";
import { stops } from "../../base/stops";
import type { RawItem } from "../items";
import { insert, type Problems, write } from "../problems";
import type { Marked } from "./marks";
import { column } from "./nesting";

/*
 * Corrections of false statements that are none, since they do not stand behind a bullet under the statement.
 */

const arrow = /\s+(?:[-–—=]{1,2}>|[→⇒➔➜⟶])\s+/u;

/** Signs that stand before what is said, too: only before a sentence that says nearly the same. */
const dashed = new RegExp(String.raw`(?<=[${stops}]\s*)\s+[|｜\p{Pd}−]\s+(?=.*[${stops}]\P{L}*$)`, "u");
const signed = /^[=＝\p{Pd}−|｜]\s+(?=\S)/u;

/** Behind the end of a sentence, before a whole one. */
const stopped = new RegExp(
  String.raw`(?<=[${stops}]\s*)(?:\s+[=＝/／]\s+|\s*[(（](?=.*[${stops}]\s*[)）]$))(?=.*[${stops}]\s*[)）]?$)`,
  "u",
);

/** `Ela sai. Correction: ela entra.` */
const named = new RegExp(
  String.raw`(?<=[${stops}]\s*)\s+(?:correc?ção|corre[ct]?to|certo|correct(?:ion|ed)?|richtig(?: ist)?|korrektur|verbessert|corrección|correcto|правильно|вірно|виправлення)\s*[:：]\s*(?=\S)`,
  "iu",
);

/** A few words in brackets behind the end of a sentence, without a number as of a page: `A boia é azul. (vermelha)`. */
const bracketed = new RegExp(
  String.raw`(?<=[${stops}]\s*)\s*[(（](?=[^)）]*(?:\p{Lo}|\p{L}{3}))(?=(?:[\p{L}\p{M}'’-]+\s?){1,4}[)）]$)`,
  "u",
);

const ended = new RegExp(String.raw`[${stops}]\P{L}*$`, "u");

const bracketedSentence = new RegExp(`^[(（](.*[${stops}])[)）]$`, "u");

const wholeSentence = new RegExp(String.raw`^\P{L}*[\p{Lu}\p{Lo}].*[${stops}]\P{L}*$`, "u");

const falseMark = /^\[ \]\s/;

/** `- [ ] Ela sai. -> Ela entra.`, `- [ ] Ela sai. / Ela entra.`, `- [ ] Ela sai. (Ela entra.)`, `- [ ] Ela sai. (entra)`, `- [ ] O rio sobe. – O rio desce.` */
export function correctionInLine(
  { text: source, block, nested }: RawItem,
  { lines, marked }: { readonly lines: LineIndex; readonly marked: Marked },
  open: (span: { start: number; end: number }) => boolean,
  problems: Problems,
): void {
  const text = source.text.trimEnd();
  if (!falseMark.test(text) || text.includes("\n") || nested.length > 0) return;
  const sure = arrow.exec(text);
  const likely = dashed.exec(text);
  const isLikely = likely && isAbout(text.slice(4, likely.index), text.slice(likely.index + likely[0].length));
  const short = marked.remarked ? null : bracketed.exec(text);
  const sign = sure ?? named.exec(text) ?? stopped.exec(text) ?? short ?? (isLikely ? likely : undefined);
  if (!sign || sign.index < 4) return;
  const span = { start: sign.index, end: sign.index + sign[0].length };
  if (span.end >= text.length || !open(span) || arrow.test(text.slice(span.end))) return;
  const under = " ".repeat(column(lines.text.slice(block.start, source.source(0))));
  const put = write("", source.range(span.start, span.end), `${lines.newline}${under}- `).edits;
  const close = /[(（]/u.test(sign[0]) ? [{ range: source.range(text.length - 1, text.length), text: "" }] : [];
  problems.trap(
    "lost-correction",
    source.range(span.start + sign[0].search(/\S/u), span.start + sign[0].trimEnd().length),
    `What stands behind this ${sure ? "arrow" : "sign"} is printed with the statement: its correction stands behind a bullet under it.`,
    { title: "Put it under the statement", edits: [...put, ...close], ...(sure ? {} : { unsure: true as const }) },
  );
}

/** `- Ela entra.` right below `- [ ] Ela sai.`: a sentence that says the same with other words. */
export function correctionBeside(above: RawItem, item: RawItem, lines: LineIndex, problems: Problems): void {
  if (!falseMark.test(above.text.text) || above.nested.length > 0 || item.nested.length > 0) return;
  // One that stands further in is told as not far enough in.
  const sign = (raw: RawItem): number =>
    column(/^[ \t]*/.exec(lines.text.slice(raw.block.start, raw.text.source(0)))?.[0] ?? "");
  if (sign(above) !== sign(item)) return;
  if (above.block.end !== item.block.start || !isSentence(item.text.text)) return;
  if (!isAbout(above.text.text.replace(falseMark, ""), item.text.text)) return;
  const line = lines.line(lines.lineAt(item.text.source(0)));
  const under = " ".repeat(column(lines.text.slice(above.block.start, above.text.source(0))));
  const start = item.text.source(0);
  problems.trap(
    "lost-correction",
    item.text.whole,
    "This is a note: the correction of the statement above it stands behind a bullet under that one.",
    { ...write("Put it under the statement", { start: line.start, end: start }, `${under}- `), unsure: true },
  );
}

/** What says that a correction follows: a word with a colon, or an arrow. */
const announced =
  /^(?:(?:[-–—=]{1,2}>|[→⇒➔➜⟶])\s*|(?:correc?ção|[rc]|corre[ct]?to|certo|falso|errado|correct(?:ion|ed)?|right|wrong|false|true|richtig(?: ist)?|falsch|korrektur|verbessert|corrección|correcto|correction|vrai|faux|правильно|вірно|виправлення|неправда)\s*[:：]\s*)(?=\S)/iu;

/** A line of a false statement's text behind the first: where it begins, in the file too, and what it says. */
interface Line {
  readonly start: number;
  readonly at: number;
  readonly text: string;
  /** It stands less far in than the text above. */
  readonly lazy: boolean;
}

/**
 * `→ Ela entra.`, `Certo: ela entra.`, `(Ela entra.)`, `– Ela entra.` or `Ela entra.` in a line below `- [ ] Ela sai.` that has no bullet. A sentence with
 * other words may be the second one of the statement, in a line of its own. Whether it is a correction.
 */
export function correctionLine(
  item: RawItem,
  lines: LineIndex,
  { start, at, text, lazy }: Line,
  problems: Problems,
): boolean {
  const above = item.text.text.slice(0, start).trimEnd();
  if (!falseMark.test(above) || item.nested.length > 0) return false;
  const behind = signed.exec(text)?.[0] ?? "";
  const isSigned = behind !== "" && isAbout(above.replace(falseMark, ""), text.slice(behind.length));
  if (!isSigned && !ended.test(above)) return false;
  const word = announced.exec(text)?.[0] ?? "";
  // A letter may well be that of who answers.
  const isInitial = /^\p{L}\s*[:：]/u.test(word) && !isAbout(above.replace(falseMark, ""), text.slice(word.length));
  const lead = isSigned ? behind : isInitial ? "" : word;
  const inside = bracketedSentence.exec(text)?.[1];
  const said = inside ?? text;
  const rest = item.text.text.slice(start + text.length).trim();
  if (lead === "" && !(isSentence(said) && isAbout(above.replace(falseMark, ""), said))) return false;
  const line = lines.line(lines.lineAt(at));
  const under = " ".repeat(column(lines.text.slice(item.block.start, item.text.source(0))));
  const cut = lead.length + (inside === undefined ? 0 : 1);
  problems.trap(
    "lost-correction",
    { start: at, end: at + text.length },
    "This line is printed with the statement above it: its correction stands behind a bullet under it.",
    {
      title: "Make a bullet of it",
      edits: [
        { range: { start: line.start, end: at + cut }, text: `${under}- ` },
        ...(inside === undefined ? [] : [{ range: { start: at + text.length - 1, end: at + text.length }, text: "" }]),
      ],
      ...((lead === "" && !lazy) || isSigned || rest !== "" ? { unsure: true as const } : {}),
    },
    ...(lazy ? [insert("Put a blank line before it", line.start, lines.newline)] : []),
  );
  return true;
}

const isSentence = (text: string): boolean => !text.includes("\n") && wholeSentence.test(text);

/** Whether two sentences begin with the same word and have half of their words in common; numbers are what a correction changes. */
export function isAbout(statement: string, other: string): boolean {
  const words = (text: string): readonly string[] => text.toLowerCase().match(/\p{L}[\p{L}\p{M}\p{N}]*/gu) ?? [];
  const [a, b] = [words(statement), words(other)];
  if (a[0] === undefined || a[0] !== b[0]) return false;
  const shared = b.filter((word) => a.includes(word)).length;
  return shared * 2 >= b.length && Math.abs(a.length - b.length) <= 2;
}
