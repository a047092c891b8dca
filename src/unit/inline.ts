import MarkdownIt from "markdown-it";
import type Token from "markdown-it/lib/token.mjs";
import { Recent } from "../base/recent";
import type { Run } from "../base/run";
import type { Steps } from "../base/steps";

/** CommonMark with tables; HTML is on so that comments are known, and nothing of it is ever printed. */
export const markdown = new MarkdownIt("default", { html: true, linkify: false, typographer: false });

/** The same without what stands inside of blocks, which is looked at item by item. */
const outline = new MarkdownIt("default", { html: true, linkify: false, typographer: false });
outline.core.ruler.enableOnly(["normalize"]);

/** Ends the parsing of blocks before each that does not stand inside another; `next` says at which line to go on. */
const stop = { first: 0, next: 0 };
outline.block.ruler.before("table", "stop", (state, line, end) => {
  if (state.level > 0 || line === stop.first) return false;
  stop.next = line;
  state.line = end;
  return true;
});

/**
 * The blocks of a document, with a pause after each; the link references that it defines go into `env`. A block that begins at a
 * line that is the end is the last one.
 */
export function* parsingBlocks(
  text: string,
  env: Env,
  isEnd: (line: number) => boolean = () => false,
): Steps<Token[], undefined> {
  const core = new outline.core.State(text, outline, env);
  outline.core.process(core);
  yield;
  const state = new outline.block.State(core.src, outline, env, core.tokens);
  let line = state.skipEmptyLines(0);
  while (line < state.lineMax) {
    stop.first = line;
    stop.next = state.lineMax;
    outline.block.tokenize(state, line, state.lineMax);
    if (isEnd(line)) break;
    line = stop.next;
    yield;
  }
  return core.tokens;
}

/** What inline parsing needs of the whole document: its link references. */
export type Env = Record<string, unknown>;

/** A stretch of an item's text, in its own offsets. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** What a separator cannot stand in: escapes, entities, code, links, images, HTML and comments. */
export interface Scan {
  /** By offset; what lies beyond its end is none. */
  readonly mask: readonly boolean[];
  /** Links `[…](…)`, in order. */
  readonly links: readonly Span[];
  readonly comments: readonly Span[];
}

/**
 * What was made of texts of late: from one keystroke to the next hardly any text of a unit changes. Apart from the text itself,
 * its meaning hangs on the document's link references only, and they say which texts are kept together.
 */
export class TextMemory<Value> {
  private readonly plain = new Recent<Value>(10_000);
  private readonly referring = new Recent<Recent<Value>>(2);
  private readonly byEnv = new WeakMap<Env, Recent<Value>>();

  get(text: string, env: Env, make: () => Value): Value {
    return this.of(env).get(text, make);
  }

  /** What is kept of a text, if anything is. */
  find(text: string, env: Env): Value | undefined {
    return this.of(env).find(text);
  }

  private of(env: Env): Recent<Value> {
    const references = env["references"];
    if (references === undefined) return this.plain;
    const known = this.byEnv.get(env);
    if (known) return known;
    const kept = this.referring.get(JSON.stringify(references), () => new Recent(10_000));
    this.byEnv.set(env, kept);
    return kept;
  }
}

const scans = new TextMemory<Scan>();
const prints = new TextMemory<Printed>();

/** What is found where there is nothing opaque. */
const clear: Scan = { mask: [], links: [], comments: [] };

/** Finds opaque text. markdown-it's own inline rules say where each stretch ends. */
export function scan(text: string, env: Env): Scan {
  return signs.test(text) ? scans.get(text, env, () => scanAnew(text, env)) : clear;
}

/** Signs at which some rule of inline Markdown begins, and those that are read as others; a text without any is what it prints. */
const signs = /[\\`~*_[\]!<&\n\r\0]/;

function scanAnew(text: string, env: Env): Scan {
  const mask = new Array<boolean>(text.length).fill(false);
  const links: Span[] = [];
  const comments: Span[] = [];
  const state = new markdown.inline.State(text, markdown, env, []);
  while (state.pos < state.posMax) {
    const start = state.pos;
    markdown.inline.skipToken(state);
    const span = { start, end: state.pos };
    const first = text.charAt(start);
    if (span.end - start < 2 || !"\\`[!<&".includes(first)) continue;
    mask.fill(true, start, span.end);
    if (first === "[") links.push(span);
    if (text.startsWith("<!--", start)) comments.push(span);
  }
  return { mask, links, comments };
}

const equalsCodes = [0x3d, 0xff1d] as const;
const slashCodes = [0x2f, 0xff0f] as const;

/**
 * ` = ` or ` / ` and their full-width forms, with white space (also no-break and ideographic) on both sides; the ends of the
 * item count as white space, so that an empty side is seen. Searched in [from, to); a span is the sign with that white space.
 */
export function spacedSeparators(
  text: string,
  mask: readonly boolean[],
  sign: "=" | "/",
  from = 0,
  to = text.length,
): Span[] {
  const [narrow, wide] = sign === "=" ? equalsCodes : slashCodes;
  const found: Span[] = [];
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i);
    if ((code !== narrow && code !== wide) || mask[i]) continue;
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

/** Bars, anywhere outside opaque text; the white space around one belongs to it and `spaced` says that there is some. */
export function bars(
  text: string,
  mask: readonly boolean[],
  from = 0,
  to = text.length,
): (Span & { spaced: boolean })[] {
  const found: (Span & { spaced: boolean })[] = [];
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i);
    if ((code !== 0x7c && code !== 0xff5c) || mask[i]) continue;
    let start = i;
    let end = i + 1;
    while (start > from && /\s/u.test(text.charAt(start - 1))) start--;
    while (end < to && /\s/u.test(text.charAt(end))) end++;
    found.push({ start, end, spaced: end - start > 1 });
  }
  return found;
}

export interface Printed {
  readonly runs: readonly Run[];
  readonly picture?: { readonly path: string; readonly alt: string };
}

/** What some inline Markdown prints: styled runs and the first picture. Comments and HTML print nothing. */
export function parseRuns(source: string, env: Env): Printed {
  if (!signs.test(source)) {
    const text = source.replace(spaces, " ").trim();
    return { runs: text === "" ? [] : [{ text }] };
  }
  return prints.get(source, env, () => parseRunsAnew(source, env));
}

function parseRunsAnew(source: string, env: Env): Printed {
  const [inline] = markdown.parseInline(source, env);
  const runs: Run[] = [];
  let bold = 0;
  let italic = 0;
  let picture: Printed["picture"];
  const add = (text: string): void => {
    if (text !== "") runs.push({ text, ...(bold ? { bold: true } : {}), ...(italic ? { italic: true } : {}) });
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
  return { runs: collapse(joinRuns(runs)), ...(picture ? { picture } : {}) };
}

/** The target and title of a link written as `[…](…)`. */
export function parseLink(source: string, env: Env): { href: string; title: string; text: string } | undefined {
  const [inline] = markdown.parseInline(source, env);
  const open = inline?.children?.find(({ type }) => type === "link_open");
  if (!open) return undefined;
  const text = (inline?.children ?? []).filter(({ type }) => type === "text").map(({ content }) => content);
  return {
    href: decode(String(open.attrGet("href") ?? "")),
    title: String(open.attrGet("title") ?? ""),
    text: text.join(""),
  };
}

function decode(path: string): string {
  try {
    return decodeURIComponent(path);
  } catch {
    return path;
  }
}

/** Neighbours in one style become one run. */
export function joinRuns(runs: readonly Run[]): Run[] {
  const out: Run[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (last && !!last.bold === !!run.bold && !!last.italic === !!run.italic) {
      out[out.length - 1] = { ...last, text: last.text + run.text };
    } else out.push(run);
  }
  return out;
}

const spaces = /[ \t\r\n\f]+/g;

/** White space collapsed and trimmed across runs. No-break spaces stay: the writer set them. */
function collapse(runs: readonly Run[]): Run[] {
  const out: Run[] = [];
  let open = false;
  for (const run of runs) {
    let text = run.text.replace(spaces, " ");
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
