import type { Run } from "../base/run";
import { bars, type Env, joinRuns, parseRuns, type Span, spacedSeparators } from "./inline";
import type { SourceText } from "./source-text";
import type { Answer, Phrase, Picture, Side } from "./unit";

/** The text of an item, scanned. */
export interface Scanned {
  readonly source: SourceText;
  readonly mask: readonly boolean[];
  readonly env: Env;
}

export function plain(runs: readonly Run[]): string {
  return runs.map(({ text }) => text).join("");
}

/** A stretch of an item as it prints. */
export function readPhrase({ source, env }: Scanned, { start, end }: Span): Phrase {
  const { runs, picture } = parseRuns(source.text.slice(start, end), env);
  return phraseOf(trimmed(source, start, end), runs, picture && { ...picture, range: pictureAt(source, start, end) });
}

function phraseOf(range: Phrase["range"], runs: readonly Run[], picture: Picture | undefined): Phrase {
  const text = plain(runs);
  return picture ? { range, runs, text: text || nameOf(picture), picture } : { range, runs, text };
}

/** What a bare picture is called in words: what it shows, or its path where nothing says that. */
function nameOf({ alt, path }: Picture): string {
  return alt || path;
}

/** A picture with its path in round brackets; in its description and its path, brackets that are closed again. */
const inlinePicture =
  /!\[(?:\\.|\[(?:\\.|[^[\]\\])*\]|[^[\]\\])*\]\((?:\\.|<[^<>]*>|\((?:\\.|[^()\\])*\)|[^()<>\\])*\)/u;

/** The range of the picture in a stretch; all of the stretch where it is written in another way. */
function pictureAt(source: SourceText, start: number, end: number): Phrase["range"] {
  const match = inlinePicture.exec(source.text.slice(start, end));
  if (!match) return trimmed(source, start, end);
  return source.range(start + match.index, start + match.index + match[0].length);
}

/** The range of a stretch without the white space at its ends. */
function trimmed(source: SourceText, start: number, end: number): Phrase["range"] {
  const text = source.text.slice(start, end);
  const from = start + (text.length - text.trimStart().length);
  return source.range(from, Math.max(from, start + text.trimEnd().length));
}

/** One answer; with `cutAtBars`, bars part it and are not printed. */
export function readAnswer(scanned: Scanned, { start, end }: Span, cutAtBars: boolean): Answer {
  const { source, mask, env } = scanned;
  const runs: Run[] = [];
  const parts: Phrase[] = [];
  let picture: Picture | undefined;
  let from = start;
  let glue = "";
  const stops = cutAtBars ? bars(source.text, mask, start, end) : [];
  for (const stop of [...stops, { start: end, end, spaced: false }]) {
    const parsed = parseRuns(source.text.slice(from, stop.start), env);
    const range = trimmed(source, from, stop.start);
    const own = parsed.picture && { ...parsed.picture, range: pictureAt(source, from, stop.start) };
    picture ??= own;
    // A bare picture is a part only where bars make it one.
    if (parsed.runs.length > 0 || (own && stops.length > 0)) parts.push(phraseOf(range, parsed.runs, own));
    if (parsed.runs.length > 0) {
      if (glue !== "" && runs.length > 0) runs.push({ text: glue });
      runs.push(...parsed.runs);
    }
    glue = stop.spaced ? " " : "";
    from = stop.end;
  }
  const [only, ...more] = parts;
  const joined = only && more.length === 0 ? only.runs : joinRuns(runs);
  const text = plain(joined);
  return {
    range: trimmed(source, start, end),
    runs: joined,
    text: text === "" && picture ? nameOf(picture) : text,
    parts,
    ...(picture ? { picture } : {}),
  };
}

/** A side of a pair: answers parted by ` / `. */
export function readSide(scanned: Scanned, { start, end }: Span, cutAtBars: boolean): Side {
  const answers: Answer[] = [];
  let from = start;
  for (const slash of spacedSeparators(scanned.source.text, scanned.mask, "/", start, end)) {
    answers.push(readAnswer(scanned, { start: from, end: Math.max(from, slash.start) }, cutAtBars));
    from = slash.end;
  }
  const last = readAnswer(scanned, { start: from, end }, cutAtBars);
  const [head, ...rest] = [...answers, last];
  return { range: scanned.source.range(start, end), answers: [head ?? last, ...rest] };
}
