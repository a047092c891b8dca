import type Token from "markdown-it/lib/token.mjs";
import type { LineIndex } from "../base/range";
import type { Steps } from "../base/steps";
import { type Above, commentUnder, headingSilence, lostComment } from "./comments";
import { readFence } from "./fenced-blocks";
import type { Front } from "./front";
import { type Env, parseRuns, parsingBlocks } from "./inline";
import { ItemReader, type RawItem } from "./items";
import { plain } from "./phrases";
import { Problems } from "./problems";
import { rawItem } from "./raw-items";
import type { Gathered, Journal, Rest, Start } from "./resume";
import { SectionBuilder } from "./sections";
import type { Shape } from "./shapes";
import { SourceText } from "./source-text";
import { readTable } from "./tables";
import { blockInItem, indentedList, listInHtml, paragraphLines, splitList } from "./traps/blocks";
import { barePairs } from "./traps/both-sides";
import { pairsInFence } from "./traps/boxed-lines";
import { correctionBeside } from "./traps/corrections";
import { countedColumns } from "./traps/counted-pairs";
import { notedTable } from "./traps/counted-tables";
import { EmptyHeadings } from "./traps/empty-headings";
import { indentedActivity, insideItem, quotedFence } from "./traps/fences";
import { hiddenSigns } from "./traps/hidden-signs";
import { htmlList } from "./traps/html-lists";
import { itemTraps } from "./traps/items";
import { judgedPairs } from "./traps/judged-pairs";
import { lostCards } from "./traps/lost-cards";
import { fullCorners, nearlyTies } from "./traps/nearly-ties";
import { listForNested, nextForNested, type ReadItem } from "./traps/nesting";
import { countedBullets } from "./traps/other-numbers";
import { markedNotes, markedTexts, unmarkedItems } from "./traps/paragraphs";
import { linedUpPairs, partlyItems } from "./traps/part-lines";
import { pileTraps } from "./traps/piles";
import { type CountedItem, printedCounters } from "./traps/printed-counters";
import { quotedItems } from "./traps/quotes";
import { withoutHeads } from "./traps/rows-as-pairs";
import { spacedForms } from "./traps/spaced-tables";
import { farHeads, farRows, pairAsHeads } from "./traps/table-heads";
import { nearlyTable, partedRows } from "./traps/tables";
import { UnderItems } from "./traps/under-items";
import { unfencedActivity } from "./traps/unfenced";
import { wrappedBelow, wrappedNumbers } from "./traps/wrapped-numbers";
import type { Unit } from "./unit";

/** How many blocks without an end are told at most with what stands below read: for each the rest is parsed anew. */
const mostMends = 20;

/** Reads the blocks of a unit, one section after the other. */
export class Reader {
  private readonly problems: Problems;
  private readonly items: ItemReader;
  private readonly gathered: Gathered;
  private readonly journal: Journal;
  private rests: Start["rests"];
  private readonly emptyHeadings: EmptyHeadings;
  private open: SectionBuilder | undefined;
  /** What is looked at when the section is complete, at once or in steps. */
  private looks: (() => Steps<void, undefined> | undefined)[] = [];
  /** How many blocks above were taken to end where they do not: whether they were hangs on what stands below, so nothing there is kept. */
  private mends = 0;
  /** For comments that stand below it. */
  private lastItem: Above | undefined;
  /** The last item of a numbered list that ended just now. */
  private lastEvent: Token | undefined;

  /** Up to where lines were looked at for what nobody sees, and how many problems there were then. */
  private seen: { line: number; known: number };

  /** The last list that was told to begin with another sign than the one above it. */
  private splitAt: Token | undefined;

  /** The line behind a table, until another block comes. */
  private lastTable: number | undefined;

  constructor(
    private readonly lines: LineIndex,
    private readonly front: Front,
    private readonly env: Env,
    { line, gathered, journal, rests }: Start,
  ) {
    this.gathered = gathered;
    this.seen = { line, known: gathered.problems.length };
    this.journal = journal;
    this.rests = rests;
    this.problems = new Problems(gathered.problems);
    this.items = new ItemReader(env, this.problems, gathered.silences);
    this.emptyHeadings = new EmptyHeadings(lines, this.problems);
  }

  *read(tokens: readonly Token[]): Steps<Unit, undefined> {
    const { env, lines, front, gathered } = this;
    const rest = yield* this.walk(tokens);
    yield* this.closeSection(rest ? lines.start(rest.line) : lines.text.length);
    if (rest) yield* rest.rest.into(gathered, this.journal);
    const { sections, headingsAbove, activities, stations, problems, silences, linked, heads } = gathered;
    const read = problems.length;
    yield* nearlyTies(linked, sections, env, this.problems);
    fullCorners(linked, sections, heads, this.problems);
    const unit = {
      text: lines.text,
      lines,
      front: front.mapping,
      sections,
      headingsAbove,
      activities,
      stations,
      problems,
      silences,
      references: env["references"] === undefined ? "" : JSON.stringify(env["references"]),
    };
    this.journal.keep(unit, gathered, { front: front.problems, body: front.body, read });
    return unit;
  }

  /** Reads all blocks; comes back with what is left at the heading of a section that need not be read. */
  private *walk(parsed: readonly Token[]): Steps<{ line: number; rest: Rest } | undefined, undefined> {
    let tokens = parsed;
    for (let i = 0; i < tokens.length; i++) {
      const token = tokens[i];
      if (token?.level !== 0) continue;
      const next = tokens[i + 1];
      const table = this.lastTable;
      if (token.nesting >= 0 && token.type !== "paragraph_open" && token.type !== "inline") this.lastTable = undefined;
      yield;
      const line = token.map?.[0] ?? 0;
      const rest = token.type === "heading_open" ? this.rests.get(line) : undefined;
      if (rest) return { line, rest };
      if (token.type === "heading_open") yield* this.heading(token, next);
      else if (token.type === "bullet_list_open" || token.type === "ordered_list_open") i = yield* this.list(tokens, i);
      else if (token.type === "table_open") this.table(token);
      else if (token.type === "fence") {
        const below = this.fence(token);
        if (below !== undefined && this.mends < mostMends) [tokens, i] = [yield* this.blocksBelow(below), -1];
      } else if (token.type === "html_block") {
        lostComment(this.lines, tokens, i, this.lastItem, this.problems);
        if (!htmlList(this.lines, token, this.env, this.problems)) listInHtml(this.lines, token, this.problems);
      } else if (token.type === "blockquote_open") quotedItems(this.lines, token, this.env, this.problems);
      else if (token.type === "code_block") {
        if (token.map && farRows(this.lines, table, token.map, this.problems)) continue;
        if (token.map) spacedForms(this.lines, token.map, this.problems);
        indentedList(this.lines, token, this.problems);
        indentedActivity(this.lines, token, this.problems);
      } else if (token.type === "paragraph_open" && token.map) yield* this.paragraph(token.map);
    }
    return undefined;
  }

  private *paragraph(map: readonly [number, number]): Steps<void, undefined> {
    const { lines, problems, env } = this;
    const table = this.lastTable;
    this.lastTable = undefined;
    if (partedRows(lines, table, map, problems) || quotedFence(lines, map, problems)) return;
    if (unfencedActivity(lines, map, problems) || spacedForms(lines, map, problems)) return;
    if (farHeads(lines, map, problems)) return;
    yield;
    if (yield* unmarkedItems(lines, map, env, problems)) return;
    const told = problems.list.length;
    paragraphLines(lines, map, false, problems);
    nearlyTable(lines, map, problems);
    yield;
    const section = this.open;
    if (problems.list.length === told && !linedUpPairs(lines, map, env, problems)) {
      partlyItems(lines, map, env, problems);
      if (section) this.looks.push(() => void barePairs(lines, map, section.bullets, env, problems));
    }
    this.open?.addParagraph(map, markedTexts(lines, map));
  }

  private *heading(token: Token, inline: Token | undefined): Steps<void, undefined> {
    const [line] = token.map ?? [0];
    const content = inline?.content ?? "";
    const source = SourceText.inLines(this.lines, line, content);
    const name = plain(parseRuns(content, this.env).runs);
    const heading = content === "" ? this.lines.line(line) : source.whole;
    if (token.tag !== "h1") this.emptyHeadings.see(line, token.tag, content);
    if (token.tag === "h2") {
      [this.lastEvent, this.splitAt] = [undefined, undefined];
      yield* this.closeSection(this.lines.start(line));
      if (content !== "" && token.markup === "##" && this.mends === 0)
        this.journal.mark(this.lines, line, this.gathered);
      this.open = new SectionBuilder(name, heading, this.lines.start(line));
    } else if (!this.open) {
      const after = token.map?.[1] ?? line + 1;
      this.gathered.headingsAbove.push({
        name: content,
        range: { start: this.lines.start(line), end: this.lines.line(after - 1).end },
      });
    } else if (token.tag !== "h1") this.open.beginPile(name, heading);
    else if (token.markup === "#") this.open.addTop(line);
    this.lastItem = { end: heading.end, heading: true };
    const silence = headingSilence(source, this.lines.line(line), this.problems);
    if (silence) this.gathered.silences.push(silence);
  }

  private *closeSection(end: number): Steps<void, undefined> {
    for (const look of this.looks) {
      const steps = look();
      if (steps) yield* steps;
      yield;
    }
    this.looks = [];
    const { paragraphs = [], ticked = false } = this.open?.judgedNotes ?? {};
    for (const map of paragraphs) markedNotes(this.lines, map, ticked, this.problems);
    for (const heads of this.open?.onlyNoted ?? []) notedTable(this.lines, heads, this.problems);
    if (this.open) pileTraps(this.lines, this.open.pileFacts, this.problems);
    const { line, known } = this.seen;
    const after = end < this.lines.text.length ? this.lines.lineAt(end) : this.lines.count;
    if (after > line) hiddenSigns(this.lines, line, after, known, this.problems);
    this.seen = { line: after, known: this.gathered.problems.length };
    if (this.open) this.gathered.sections.push(this.open.close(end));
    this.open = undefined;
  }

  /** Reads a top-level list; returns the index of its closing token. */
  private *list(tokens: readonly Token[], at: number): Steps<number, undefined> {
    const open = tokens[at];
    const close = `${open?.type.replace("_open", "")}_close`;
    const ordered = open?.type === "ordered_list_open";
    const read: (ReadItem & CountedItem)[] = [];
    const numbered: RawItem[] = [];
    let above: RawItem | undefined;
    const under = new UnderItems(this.lines, this.env, this.problems);
    let i = at + 1;
    for (; i < tokens.length; i++) {
      const token = tokens[i];
      if (token?.type === close && token.level === 0) break;
      if (token?.type === "fence" || token?.type === "heading_open") insideItem(this.lines, token, this.problems);
      else if (token?.type === "html_block") commentUnder(this.lines, tokens, i, this.problems);
      under.look(tokens, i);
      if (token?.type !== "list_item_open" || token.level !== 1) continue;
      const raw = rawItem(this.lines, tokens, i, this.env, this.problems);
      if (!this.open) continue;
      if (!raw) blockInItem(this.lines, token, tokens[i + 1], this.problems, read.length + 1);
      const shape = raw && this.item(raw, ordered, this.open);
      if (above && raw && shape === "text") correctionBeside(above, raw, this.lines, this.problems);
      if (raw && ordered) numbered.push(raw);
      above = shape === "statement" ? raw : undefined;
      read.push({ token, shape, raw });
      yield;
      under.begin(token, shape, this.open.inPile);
    }
    if (!ordered) {
      const goesOn = tokens[i + 1]?.type === "ordered_list_open";
      listForNested(this.lines, this.lastEvent, read, goesOn, this.problems);
      nextForNested(this.lines, read, this.problems);
      countedBullets(this.lines, read, this.problems);
      printedCounters(read, this.problems);
      const pairs = read.flatMap(({ raw, shape }) => (raw && shape === "pair" ? [raw] : []));
      if (pairs.length === read.length) judgedPairs(pairs, this.env, this.problems);
      if (above) wrappedBelow(this.lines, above, [tokens, i + 1], this.problems);
    }
    if (ordered) wrappedNumbers(this.lines, numbered, this.problems);
    const section = this.open;
    if (section && ordered)
      this.looks.push(() => void countedColumns(numbered, section.bullets, this.env, this.problems));
    this.lastEvent = ordered ? read.at(-1)?.token : undefined;
    const next = tokens[i + 1];
    if (open && next?.type === open.type && next.level === 0 && next.markup !== open.markup && this.open) {
      // One list with one other sign in the middle is told once: at the list after it the first sign only comes back.
      if (this.splitAt !== open) {
        const areNotes = !this.open.inPile && read.every(({ shape }) => shape === "text");
        splitList(this.lines, open, next, areNotes, this.problems);
        this.splitAt = next;
      }
    }
    return i;
  }

  private item(raw: RawItem, ordered: boolean, section: SectionBuilder): Shape | undefined {
    this.lastItem = { end: raw.text.whole.end, heading: false };
    let shape: Shape = "text";
    if (ordered) {
      shape = "event";
      section.add({ shape, item: this.items.storyEvent(raw) });
    } else {
      const read = this.items.bullet(raw);
      // Of an item with nothing on a side it is said already what is wrong.
      if (!read) return undefined;
      shape = read.shape;
      section.add(read);
      if (shape === "text") section.addPlain(read.item, raw.nested);
    }
    for (const { text } of [raw, ...raw.nested]) this.link(text);
    const inPile = section.inPile;
    // Whether plain text was meant as a pair shows when the section is complete.
    this.looks.push(() => this.lookingAt(raw, shape, section, inPile));
    return shape;
  }

  private *lookingAt(raw: RawItem, shape: Shape, section: SectionBuilder, inPile: boolean): Steps<void, undefined> {
    if (inPile && shape === "text" && !section.hasStatements) lostCards(this.lines, raw, this.problems);
    const found = yield* section.marked();
    const marked = shape === "event" ? { ...found, judged: section.judgedStory } : found;
    const lone = !inPile && section.expectsPairs;
    const around = { bullets: section.bullets, lone, marked, lines: this.lines };
    yield* itemTraps(raw, shape, around, this.env, this.problems);
  }

  private link(text: SourceText): void {
    if (/\]\s*[([]|\)\[#|[({]\s*#/.test(text.text)) this.gathered.linked.push(text);
  }

  private table(token: Token): void {
    if (!this.open || !token.map) return;
    const [firstLine, afterLine] = token.map;
    this.lastTable = afterLine;
    const read = readTable(
      this.lines,
      { firstLine, afterLine },
      { env: this.env, problems: this.problems, items: this.items, link: (cell) => void this.link(cell) },
    );
    if ("forms" in read) this.open.addTable(read.forms);
    else {
      this.gathered.heads.push(read.heads);
      this.open.addNoted(read.heads);
      for (const pair of read.pairs) this.open.add({ shape: "pair", item: pair });
      const { heads } = read;
      const section = this.open;
      if (heads.length === 2)
        this.looks.push(
          () =>
            void (heads.some(({ text }) => text === "")
              ? withoutHeads(this.lines, [firstLine, afterLine], section.bullets, this.problems)
              : pairAsHeads(this.lines, firstLine, heads, section.bullets, this.problems)),
        );
    }
  }

  /** Reads a fence; gives the line from which on to read as if it had ended above, where it has no end. */
  private fence(token: Token): number | undefined {
    const section = this.open ? this.gathered.sections.length : -1;
    const known = this.problems.list.length;
    const { name, block, below } = readFence(this.lines, token, section, this.problems);
    if (!block && this.problems.list.length === known) pairsInFence(this.lines, token, this.env, this.problems);
    if (block) (name === "stations" ? this.gathered.stations : this.gathered.activities).push(block);
    return below;
  }

  /** The blocks from a line on that stands in a block without an end. */
  private *blocksBelow(line: number): Steps<readonly Token[], undefined> {
    this.mends += 1;
    this.rests = new Map();
    const text = "\n".repeat(line) + this.lines.text.slice(this.lines.start(line));
    return yield* parsingBlocks(text, this.env);
  }
}
