import MarkdownIt from "markdown-it";
import type { Run } from "../base/run";
import type { SourceText } from "./source-text";
import type { Answer, Picture } from "./unit";

/** CommonMark with tables; HTML is on so that comments are known, and nothing of it is ever printed. */
export const markdown = new MarkdownIt("default", { html: true, linkify: false, typographer: false });

/** The same without what would need the whole document (`env` carries the link references of the unit). */
export type Env = Record<string, unknown>;

/**
 * Marks what a separator cannot stand in: escapes, code, links, images, HTML and comments. markdown-it's own inline rules
 * say where each of them ends.
 */
export function opaque(text: string, env: Env): readonly boolean[] {
  const mask = new Array<boolean>(text.length).fill(false);
  const state = new markdown.inline.State(text, markdown, env, []);
  while (state.pos < state.posMax) {
    const start = state.pos;
    markdown.inline.skipToken(state);
    const length = state.pos - start;
    if (length > 1 && "\\`[!<&".includes(text.charAt(start))) mask.fill(true, start, state.pos);
  }
  return mask;
}

/** Offsets of separators of one sort, each with the white space around it: [start, end) is what is not part of a side. */
export interface Separator {
  readonly start: number;
  readonly end: number;
}

/**
 * ` = ` or ` / ` and their full-width forms, with white space (also no-break and ideographic) on both sides; the ends of the
 * item count as white space, so that an empty side is seen. Searched in [from, to).
 */
export function spacedSeparators(
  text: string,
  mask: readonly boolean[],
  sign: "=" | "/",
  from = 0,
  to = text.length,
): Separator[] {
  const signs = sign === "=" ? "=＝" : "/／";
  const found: Separator[] = [];
  for (let i = from; i < to; i++) {
    if (mask[i] || !signs.includes(text.charAt(i))) continue;
    if (i > 0 && !/\s/u.test(text.charAt(i - 1))) continue;
    if (i + 1 < text.length && !/\s/u.test(text.charAt(i + 1))) continue;
    let start = i;
    let end = i + 1;
    while (start > from && /\s/u.test(text.charAt(start - 1))) start--;
    while (end < to && /\s/u.test(text.charAt(end))) end++;
    found.push({ start, end });
  }
  return found;
}

/** Bars, anywhere outside opaque text; the white space around one belongs to it. */
export function bars(
  text: string,
  mask: readonly boolean[],
  from: number,
  to: number,
): (Separator & { spaced: boolean })[] {
  const found: (Separator & { spaced: boolean })[] = [];
  for (let i = from; i < to; i++) {
    if (mask[i] || !"|｜".includes(text.charAt(i))) continue;
    let start = i;
    let end = i + 1;
    while (start > from && /\s/u.test(text.charAt(start - 1))) start--;
    while (end < to && /\s/u.test(text.charAt(end))) end++;
    found.push({ start, end, spaced: end - start > 1 });
  }
  return found;
}

interface Parsed {
  readonly runs: Run[];
  readonly picture?: { readonly path: string; readonly alt: string };
}

/** What some inline Markdown prints: styled runs and the first picture. Comments and HTML print nothing. */
export function parseRuns(source: string, env: Env): Parsed {
  const [inline] = markdown.parseInline(source, env);
  const runs: Run[] = [];
  let bold = 0;
  let italic = 0;
  let picture: Parsed["picture"];
  const add = (text: string): void => {
    const last = runs.at(-1);
    const style = { ...(bold ? { bold: true } : {}), ...(italic ? { italic: true } : {}) };
    if (last && !!last.bold === !!bold && !!last.italic === !!italic) {
      runs[runs.length - 1] = { ...last, text: last.text + text };
    } else if (text !== "") runs.push({ text, ...style });
  };
  for (const token of inline?.children ?? []) {
    if (token.type === "strong_open") bold++;
    else if (token.type === "strong_close") bold--;
    else if (token.type === "em_open") italic++;
    else if (token.type === "em_close") italic--;
    else if (token.type === "softbreak" || token.type === "hardbreak") add(" ");
    else if (token.type === "image")
      picture ??= { path: decode(String(token.attrGet("src") ?? "")), alt: token.content };
    else if (token.type === "text" || token.type === "code_inline" || token.type === "text_special") add(token.content);
  }
  return { runs: collapse(runs), ...(picture ? { picture } : {}) };
}

function decode(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

/** White space collapsed and trimmed across runs. No-break spaces stay: the writer set them. */
function collapse(runs: readonly Run[]): Run[] {
  const out: Run[] = [];
  let open = false;
  for (const run of runs) {
    let text = run.text.replace(/[ \t\r\n\f]+/g, " ");
    if (!open) text = text.trimStart();
    if (text === "") continue;
    open = !text.endsWith(" ");
    out.push({ ...run, text });
  }
  const last = out.at(-1);
  if (last?.text.endsWith(" ")) {
    const text = last.text.trimEnd();
    if (text === "") out.pop();
    else out[out.length - 1] = { ...last, text };
  }
  return out;
}

/** Reads one answer from [start, end) of an item; with `cutAtBars`, bars say where it is cut and are not printed. */
export function readAnswer(
  item: SourceText,
  start: number,
  end: number,
  context: { readonly mask: readonly boolean[]; readonly env: Env; readonly cutAtBars: boolean },
): Answer {
  const runs: Run[] = [];
  const cuts: number[] = [];
  let picture: Parsed["picture"];
  let from = start;
  let length = 0;
  const part = (to: number, glue: string): void => {
    const parsed = parseRuns(item.text.slice(from, to), context.env);
    picture ??= parsed.picture;
    if (length > 0 && parsed.runs.length > 0) {
      if (glue !== "") runs.push({ text: glue });
      length += glue.length;
      cuts.push(length);
    }
    runs.push(...parsed.runs);
    length += parsed.runs.reduce((sum, run) => sum + run.text.length, 0);
  };
  let glue = "";
  for (const bar of context.cutAtBars ? bars(item.text, context.mask, start, end) : []) {
    part(bar.start, glue);
    glue = bar.spaced ? " " : "";
    from = bar.end;
  }
  part(end, glue);
  const joined = joinRuns(runs);
  const text = joined.map((run) => run.text).join("");
  const place = item.range(start, end);
  const shown: Picture | undefined = picture ? { ...picture, range: place } : undefined;
  return {
    range: place,
    runs: joined,
    text: text === "" && shown ? shown.alt : text,
    cuts,
    ...(shown ? { picture: shown } : {}),
  };
}

function joinRuns(runs: readonly Run[]): Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (last && !!last.bold === !!run.bold && !!last.italic === !!run.italic) {
      out[out.length - 1] = { ...last, text: last.text + run.text };
    } else out.push(run);
  }
  return out;
}
