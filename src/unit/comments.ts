import type { Range } from "../base/range";
import type { Scan, Span } from "./inline";
import { type Problems, write } from "./problems";
import type { SourceText } from "./source-text";
import type { Item, Silence } from "./unit";

/** What the comments at the end of an item say, and where its own text ends before them. */
export interface Remarks {
  readonly end: number;
  readonly by?: NonNullable<Item["by"]>;
  readonly silences: readonly Omit<Silence, "scope">[];
}

/**
 * Reads the comments at the end of an item's text (`<!-- by: K7 -->`, `<!-- allow CODE: reason -->`). Any other comment means
 * nothing; one of the two forms that stands before text is a problem, since it is easily lost there.
 */
export function readRemarks(source: SourceText, { comments }: Scan, problems: Problems): Remarks {
  const { text } = source;
  let end = text.trimEnd().length;
  let by: Remarks["by"];
  const silences: Omit<Silence, "scope">[] = [];
  const last: Span[] = [];
  for (const span of [...comments].reverse()) {
    if (span.end !== end || span.start === 0) break;
    last.push(span);
    end = text.slice(0, span.start).trimEnd().length;
  }
  for (const span of comments) {
    const range = source.range(span.start, span.end);
    const meaning = commentMeaning(text.slice(span.start, span.end));
    if (!meaning) {
      nearlyMeaning(text.slice(span.start, span.end), range, problems);
      continue;
    }
    if (!last.includes(span)) {
      problems.trap(
        "misplaced-comment",
        range,
        "A comment counts at the end of the item only; here it says nothing.",
        moveToEnd(source, span, end),
      );
    } else if ("by" in meaning) {
      const start = text.indexOf(meaning.by, span.start);
      by = { code: meaning.by, range: source.range(start, start + meaning.by.length) };
    } else if (meaning.reason === "") {
      problems.add(
        "allow-without-reason",
        range,
        `Say why “${meaning.allow}” is meant: <!-- allow ${meaning.allow}: reason -->.`,
      );
    } else silences.push({ code: meaning.allow, reason: meaning.reason, range });
  }
  return { end, silences, ...(by ? { by } : {}) };
}

function moveToEnd(source: SourceText, { start, end }: Span, textEnd: number) {
  const { text } = source;
  const comment = text.slice(start, end);
  let [from, after] = [start, end];
  // One white space stays between words, and none before a sign that the comment stood right before.
  if (start === 0 || /\s/.test(text.charAt(start - 1))) while (/[ \t]/.test(text.charAt(after))) after++;
  if (after === end && /[\p{Pe}\p{Pf}.,;:!?…]/u.test(text.charAt(end)))
    while (/[ \t]/.test(text.charAt(from - 1))) from--;
  const place = source.source(textEnd);
  const edits = [
    { range: source.range(from, after), text: "" },
    { range: { start: place, end: place }, text: ` ${comment}` },
  ];
  return { title: "Move it to the end of the item", edits };
}

/** What a comment means, if anything. */
export function commentMeaning(
  comment: string,
): { readonly by: string } | { readonly allow: string; readonly reason: string } | undefined {
  const by = /^<!--\s*by:\s*(\S(?:.*\S)?)\s*-->$/u.exec(comment);
  if (by?.[1]) return { by: by[1] };
  const allow = /^<!--\s*allow\s+([a-z][a-z-]*)\s*(?::\s*([\s\S]*?))?\s*-->$/u.exec(comment);
  return allow?.[1] ? { allow: allow[1], reason: allow[2] ?? "" } : undefined;
}

/** `<!-- by K7 -->`, `<!-- Allow CODE - reason -->`: nearly one of the two forms, and so without any meaning. */
export function nearlyMeaning(comment: string, range: Range, problems: Problems): void {
  const by = /^<!--\s*by\s*(?:[:=：]\s*(\S(?:.*\S)?)|\s(\S{0,3}\d\S{0,3}))\s*-->$/iu.exec(comment);
  const allow = /^<!--\s*allow\s*[:=：]?\s*([a-z]+(?:-[a-z]+)+)\s*(?:[-–—:=：,;]+\s*)?([\s\S]*?)\s*-->$/iu.exec(
    comment,
  );
  const written = by?.[1] ?? by?.[2];
  const wanted =
    written !== undefined
      ? `<!-- by: ${written} -->`
      : allow?.[1]
        ? `<!-- allow ${allow[1].toLowerCase()}: ${allow[2] ?? ""} -->`
        : undefined;
  if (wanted === undefined || !commentMeaning(wanted)) return;
  problems.trap(
    "nearly-a-remark",
    range,
    `This comment means nothing as it is written: it is ${written === undefined ? "<!-- allow CODE: reason -->" : "<!-- by: CODE -->"}.`,
    // Nobody but the writer knows a reason that is missing.
    ...(allow && allow[2] === "" ? [] : [write(`Write “${wanted}”`, range, wanted)]),
  );
}

/** Takes a comment that stands in lines of its own to the end of the item above it. */
export function lostComment(text: string, range: Range, itemEnd: number | undefined, problems: Problems): void {
  const comment = text.slice(range.start, range.end).trim();
  if (!commentMeaning(comment)) return;
  const message = "A comment counts at the end of an item's line only; between items Markdown parts the list here.";
  if (itemEnd === undefined) {
    problems.trap("misplaced-comment", range, message, write("Take it out", range, ""));
    return;
  }
  const edits = [
    { range, text: "" },
    { range: { start: itemEnd, end: itemEnd }, text: ` ${comment}` },
  ];
  problems.trap("misplaced-comment", range, message, { title: "Move it to the end of the item above", edits });
}
