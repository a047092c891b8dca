import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex, Range } from "../base/range";
import type { Scan, Span } from "./inline";
import { drop, type Problems, write } from "./problems";
import { SourceText } from "./source-text";
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
  /** The comment that named the writer. */
  let above: Span | undefined;
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
      if (by && above) secondWriter(source, [above, span], `${by.code}, ${meaning.by}`, problems);
      above = span;
      by = { code: meaning.by, range: source.range(start, start + meaning.by.length) };
    } else if (meaning.reason === "") {
      problems.add("allow-without-reason", range, whyMissing(meaning.allow));
    } else silences.push({ code: meaning.allow, reason: meaning.reason, range });
  }
  return { end, silences, ...(by ? { by } : {}) };
}

/** `<!-- by: K7 --> <!-- by: K9 -->`: of two comments the last one counts. */
function secondWriter(
  source: SourceText,
  [first, second]: readonly [Span, Span],
  both: string,
  problems: Problems,
): void {
  const before = /\s*$/.exec(source.text.slice(0, first.start))?.[0].length ?? 0;
  problems.trap(
    "nearly-a-remark",
    source.range(second.start, second.end),
    "The writer is named twice, and only the last comment counts: several have one comment with their codes.",
    {
      title: `Write “<!-- by: ${both} -->”`,
      edits: [
        { range: source.range(first.start - before, first.end), text: "" },
        { range: source.range(second.start, second.end), text: `<!-- by: ${both} -->` },
      ],
      unsure: true,
    },
  );
}

const whyMissing = (code: string): string => `Say why “${code}” is meant: <!-- allow ${code}: reason -->.`;

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

const nearlyBy = /^<!--+\s*by\s*(?:[:=：]\s*(\S(?:.*[^\s-])?)|\s(\S{0,3}\d\S{0,3}))\s*--+>$/iu;
const nearlyAllow =
  /^<!--+\s*(?:al{1,3}o{1,2}w{1,2}|allwo|alolw|allo)(?:s|ed)?\s*[:=：]?\s*([a-z]+(?:-[a-z]+)+(?:\s*[,;]\s*[a-z]+(?:-[a-z]+)+)*)\s*(?:[-–—:=：,;]+\s*)?([\s\S]*?)\s*--+>$/iu;

/** `<!-- ignore look-alike: reason -->`, `<!-- look-alike: reason -->`: as other programs say it. A rule looks whether there is such a code. */
const otherAllow =
  /^<!--+\s*(?:(?:ignore|disable|permit|silence|suppress|skip|mute|accept)[sd]?\s*[:=：]?\s+)?([a-z]+(?:-[a-z]+)+)\s*[:：]\s*(\S[\s\S]*?)\s*--+>$/iu;

interface Wanted {
  readonly wanted: readonly string[];
  /** The writer who is named. */
  readonly written: string | undefined;
  readonly reason: string;
}

/** What a comment that means nothing was to be, perhaps. A heading names no writer. `others`: what other programs say counts too. */
function wantedOf(comment: string, heading: boolean, others: boolean): Wanted {
  const by = heading ? null : nearlyBy.exec(comment);
  const allow = nearlyAllow.exec(comment) ?? (others ? otherAllow.exec(comment) : null);
  const [, codes = "", reason = ""] = allow ?? [];
  const written = by?.[1] ?? by?.[2];
  const wanted =
    written !== undefined
      ? [`<!-- by: ${written} -->`]
      : codes === ""
        ? []
        : codes.split(/\s*[,;]\s*/).map((code) => `<!-- allow ${code.toLowerCase()}: ${reason} -->`);
  return { wanted, written, reason };
}

/** `<!-- by K7 -->`, `<!-- Allow CODE - reason -->`, `<!-- allow CODE, CODE: reason -->`: nearly one of the two forms, and so without any meaning. */
export function nearlyMeaning(comment: string, range: Range, problems: Problems, heading = false): void {
  const { wanted, written, reason } = wantedOf(comment, heading, true);
  if (wanted.length === 0 || !wanted.every((each) => commentMeaning(each))) return;
  const put = wanted.join(" ");
  problems.trap(
    "nearly-a-remark",
    range,
    `This comment means nothing as it is written: it is ${written === undefined ? "<!-- allow CODE: reason -->" : "<!-- by: CODE -->"}.`,
    // Nobody but the writer knows a reason that is missing.
    ...(written === undefined && reason === "" ? [] : [write(`Write “${put}”`, range, put)]),
  );
}

/** The item or heading that was read last: where its own text ends. */
export interface Above {
  readonly end: number;
  readonly heading: boolean;
}

/** The comment that an HTML block begins with, if it is one that means something, and what it was to be where it is nearly such. */
function commentOf({ content, map }: Token, lines: LineIndex) {
  if (!/^\s*<!--/.test(content) || !map) return undefined;
  const start = lines.text.indexOf("<!--", lines.start(map[0]));
  const end = lines.text.indexOf("-->", start) + 3;
  const written = lines.text.slice(start, end);
  if (end <= start) return undefined;
  const [mended, more] = commentMeaning(written) ? [written] : wantedOf(written, false, false).wanted;
  const text = mended === undefined || more !== undefined ? written : mended;
  const meaning = commentMeaning(text);
  return meaning && { range: { start, end }, text, meaning };
}

/** Takes a comment that stands in lines of its own to the end of the item or heading above it, or of the item below. */
export function lostComment(
  lines: LineIndex,
  tokens: readonly Token[],
  at: number,
  above: Above | undefined,
  problems: Problems,
): void {
  const token = tokens[at];
  const comment = token && commentOf(token, lines);
  if (!comment) return;
  const { range, text, meaning } = comment;
  const message = "A comment counts at the end of an item's line only; between items Markdown parts the list here.";
  const move = (where: string, place: number) => ({
    title: `Move it to the end of the ${where}`,
    edits: [
      { range, text: "" },
      { range: { start: place, end: place }, text: ` ${text}` },
    ],
  });
  // A heading names no writer.
  const wrote = "by" in meaning && (above?.heading ?? true);
  const below = wrote ? endOfFirst(lines, tokens, at + 1) : undefined;
  const fix =
    below !== undefined
      ? move("item below", below)
      : above && !wrote
        ? move(`${above.heading ? "heading" : "item"} above`, above.end)
        : drop("Take it out", range);
  problems.trap("misplaced-comment", range, message, fix);
}

/** Where the text of the first item ends in the list that begins here, if one does. */
function endOfFirst(lines: LineIndex, tokens: readonly Token[], at: number): number | undefined {
  const [list, item, , inline] = tokens.slice(at, at + 4);
  if (!list?.type.endsWith("_list_open") || item?.type !== "list_item_open" || !inline?.map) return undefined;
  return inline.type === "inline" ? SourceText.inLines(lines, inline.map[0], inline.content).whole.end : undefined;
}

/** `  <!-- by: K7 -->` in a line of its own under an item, where Markdown takes it from the item's text. */
export function commentUnder(lines: LineIndex, tokens: readonly Token[], at: number, problems: Problems): void {
  const token = tokens[at];
  const comment = token && tokens[at - 1]?.type !== "list_item_open" ? commentOf(token, lines) : undefined;
  if (!token || !comment) return;
  const { range, text } = comment;
  // Under a bullet all belongs to it; under an event each bullet is read for itself.
  const events = tokens.findLast(({ type, level }, i) => i < at && level === 0 && type.endsWith("_list_open"));
  const own = events?.type === "ordered_list_open" ? token.level : 2;
  const item = tokens.findLastIndex(({ type, level }, i) => i < at && type === "list_item_open" && level < own);
  const inline = tokens.slice(item, at).findLast(({ type, level }) => type === "inline" && level === own + 1);
  const end = inline?.map ? SourceText.inLines(lines, inline.map[0], inline.content).whole.end : undefined;
  const line = lines.line(lines.lineAt(range.start)).start;
  const edits =
    end === undefined
      ? []
      : lines.text.slice(end, range.start).trim() === ""
        ? [{ range: { start: end, end: range.end }, text: ` ${text}` }]
        : [
            { range: { start: line, end: range.end }, text: "" },
            { range: { start: end, end }, text: ` ${text}` },
          ];
  problems.trap(
    "misplaced-comment",
    range,
    "A comment counts in the item's last line only, behind its text; in a line of its own it says nothing.",
    ...(edits.length === 0 ? [] : [{ title: "Move it to the end of the item", edits }]),
  );
}

/**
 * `  - Uma roda. <!-- by: K7 -->` under a pair or a statement, where only the item's own text names a writer or silences; `signed`
 * where it names one already.
 */
export function nestedComment(
  source: SourceText,
  { comments }: Scan,
  end: number,
  signed: boolean,
  problems: Problems,
): void {
  const { text } = source;
  for (const { start, end: stop } of comments) {
    const comment = text.slice(start, stop);
    const meaning = commentMeaning(comment);
    if (!meaning) continue;
    const from = text.slice(0, start).trimEnd().length;
    problems.trap(
      "misplaced-comment",
      source.range(start, stop),
      "A comment counts behind the item's own text; at a bullet under it, it says nothing.",
      {
        title: "Move it to the end of the item",
        edits: [
          { range: source.range(from, stop), text: "" },
          { range: { start: end, end }, text: ` ${comment}` },
        ],
        // An item has one writer.
        ...(signed && "by" in meaning ? { unsure: true as const } : {}),
      },
    );
  }
}

/** What a comment at the end of a heading silences: findings in its line. */
export function headingSilence(source: SourceText, scope: Range, problems: Problems): Silence | undefined {
  const comment = /<!--.*?-->\s*$/.exec(source.text);
  if (!comment) return undefined;
  const meaning = commentMeaning(comment[0].trim());
  const range = source.range(comment.index, comment.index + comment[0].trimEnd().length);
  if (!meaning) nearlyMeaning(comment[0].trim(), range, problems, true);
  if (!meaning || !("allow" in meaning)) return undefined;
  const { allow: code, reason } = meaning;
  if (reason !== "") return { code, reason, range, scope };
  problems.add("allow-without-reason", range, whyMissing(code));
  return undefined;
}
