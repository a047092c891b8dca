import type Token from "markdown-it/lib/token.mjs";
import { LineIndex, type Range } from "../base/range";
import { type Env, markdown, parseRuns } from "./inline";
import { type RawItem, readItem } from "./items";
import { SourceText } from "./source-text";
import type { ActivityBlock, Mapping, Pair, Problem, Section, Statement, Unit } from "./unit";
import { readMapping } from "./yaml";

/** Reads a unit. Never throws: what cannot be read is in `problems`. */
export function readUnit(text: string): Unit {
  return new Reader(text).read();
}

interface OpenSection {
  readonly name: string;
  readonly heading: Range;
  readonly start: number;
  readonly pairs: Pair[];
  readonly statements: Statement[];
}

class Reader {
  private readonly lines: LineIndex;
  private readonly problems: Problem[] = [];
  private readonly env: Env = {};
  private readonly sections: Section[] = [];
  private readonly activities: ActivityBlock[] = [];
  private open: OpenSection | undefined;

  constructor(private readonly text: string) {
    this.lines = new LineIndex(text);
  }

  read(): Unit {
    const { front, bodyLine } = this.readFront();
    // Lines of the front matter stay, empty, so that markdown-it's line numbers are the file's.
    const body = "\n".repeat(bodyLine) + this.text.slice(this.lines.start(bodyLine)).replace(/^\uFEFF/, " ");
    this.walk(markdown.parse(body, this.env));
    this.closeSection(this.text.length);
    const { text, lines, sections, activities, problems } = this;
    return { text, lines, front, sections, activities, problems };
  }

  private readFront(): { front: Mapping; bodyLine: number } {
    const fence = (line: number): string => {
      const { start, end } = this.lines.line(line);
      return this.text
        .slice(start, end)
        .replace(/^\uFEFF/, "")
        .trimEnd();
    };
    const none = { front: { range: { start: 0, end: 0 }, entries: [] }, bodyLine: 0 };
    if (fence(0) !== "---") return none;
    for (let line = 1; line < this.lines.count; line++) {
      if (fence(line) !== "---" && fence(line) !== "...") continue;
      const range = { start: this.lines.start(1), end: this.lines.start(line) };
      const content = this.text.slice(range.start, range.end).replace(/\r\n?/g, "\n").replace(/\n$/, "");
      const source = SourceText.inLines(this.lines, 1, content);
      return { front: readMapping(source, range, "front matter", this.problems), bodyLine: line + 1 };
    }
    this.problems.push({
      code: "unreadable-yaml",
      range: this.lines.line(0),
      message: "The front matter that begins here never ends; close it with a line of three hyphens.",
    });
    return none;
  }

  private walk(tokens: readonly Token[]): void {
    for (let i = 0; i < tokens.length; i++) {
      const token = tokens[i] as Token;
      if (token.type === "heading_open" && token.level === 0 && token.tag === "h2") this.openSection(tokens, i);
      else if (token.type === "bullet_list_open" && token.level === 0) i = this.readList(tokens, i);
      else if (token.type === "fence" && token.level === 0 && /^activity(\s|$)/.test(token.info.trim()))
        this.readActivity(token);
    }
  }

  private openSection(tokens: readonly Token[], at: number): void {
    const heading = tokens[at];
    const inline = tokens[at + 1];
    const [line, after] = heading?.map ?? [0, 1];
    this.closeSection(this.lines.start(line));
    const content = inline?.content ?? "";
    const place = SourceText.inLines(this.lines, line, content).range(0, content.length);
    const name = parseRuns(content, this.env)
      .runs.map((run) => run.text)
      .join("");
    this.open = {
      name,
      heading: content === "" ? this.lines.line(line) : place,
      start: this.lines.start(Math.min(line, after)),
      pairs: [],
      statements: [],
    };
  }

  private closeSection(end: number): void {
    if (!this.open) return;
    const { start, ...section } = this.open;
    this.sections.push({ ...section, range: { start, end } });
    this.open = undefined;
  }

  /** Reads the items of a top-level bullet list; returns the index of its closing token. */
  private readList(tokens: readonly Token[], at: number): number {
    let i = at + 1;
    for (; i < tokens.length; i++) {
      const token = tokens[i] as Token;
      if (token.type === "bullet_list_close" && token.level === 0) break;
      if (token.type !== "list_item_open" || token.level !== 1) continue;
      const raw = this.rawItem(tokens, i);
      if (!raw || !this.open) continue;
      const read = readItem(raw, this.env, this.problems);
      if (!read) continue;
      if ("pair" in read) this.open.pairs.push(read.pair);
      else this.open.statements.push(read.statement);
    }
    return i;
  }

  private rawItem(tokens: readonly Token[], at: number): RawItem | undefined {
    const item = tokens[at] as Token;
    const inline = tokens[at + 2];
    if (tokens[at + 1]?.type !== "paragraph_open" || inline?.type !== "inline" || !inline.map || !item.map)
      return undefined;
    const nested: SourceText[] = [];
    for (let i = at + 3; i < tokens.length; i++) {
      const token = tokens[i] as Token;
      if (token.type === "list_item_close" && token.level === item.level) break;
      const below = tokens[i + 2];
      const direct =
        token.type === "list_item_open" &&
        token.level === item.level + 2 &&
        token.markup !== "." &&
        token.markup !== ")";
      if (direct && below?.type === "inline" && below.map) {
        nested.push(SourceText.inLines(this.lines, below.map[0], below.content));
      }
    }
    return { text: SourceText.inLines(this.lines, inline.map[0], inline.content), block: this.block(item.map), nested };
  }

  /** Whole lines, without the blank ones at the end. */
  private block([first, after]: readonly [number, number]): Range {
    let last = after;
    while (last > first + 1) {
      const { start, end } = this.lines.line(last - 1);
      if (this.text.slice(start, end).trim() !== "") break;
      last--;
    }
    return { start: this.lines.start(first), end: this.lines.start(last) };
  }

  private readActivity(token: Token): void {
    const [first, after] = token.map ?? [0, 0];
    const content = token.content.replace(/\n$/, "");
    const source = SourceText.inLines(this.lines, first + 1, content);
    const lineCount = token.content === "" ? 0 : content.split("\n").length;
    const body = { start: this.lines.start(first + 1), end: this.lines.start(first + 1 + lineCount) };
    this.activities.push({
      fence: { start: this.lines.start(first), end: this.lines.line(after - 1).end },
      body,
      options: readMapping(source, body, "activity", this.problems),
      section: this.open ? this.sections.length : -1,
    });
  }
}
