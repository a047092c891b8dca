import type { Range } from "../base/range";
import type { Steps } from "../base/steps";
import type { RawItem } from "./items";
import type { SourceText } from "./source-text";
import { Together } from "./together";
import { endCustom } from "./traps/end-marks";
import { customOf } from "./traps/mark-words";
import { allJudged, type Marked, marksOf } from "./traps/marks";
import type { Paragraph, PileFacts } from "./traps/piles";
import type { FormsTable, Pair, Pile, PileMember, PlainBullet, Section, Statement, StoryEvent } from "./unit";

/** A section while it is being read. */
export class SectionBuilder {
  private readonly pairs: Pair[] = [];
  private readonly statements: Statement[] = [];
  private readonly events: StoryEvent[] = [];
  private readonly tables: FormsTable[] = [];
  private readonly noted: (readonly SourceText[])[] = [];
  private readonly paragraphs: Paragraph[] = [];
  private readonly tops: { readonly line: number; above: boolean }[] = [];
  private readonly marks: { readonly lines: readonly [number, number]; readonly texts: readonly string[] }[] = [];
  /** What was found of the bullets together, until another one comes. */
  private together: Together | undefined;
  private marking: Marked | undefined;
  /** Plain bullets. */
  private readonly texts: string[] = [];
  private readonly plain: PlainBullet[] = [];
  private readonly piles: { name: string; heading: Range; members: PileMember[] }[] = [];

  constructor(
    private readonly name: string,
    private readonly heading: Range,
    private readonly start: number,
  ) {}

  /** A deeper heading: what follows belongs to its pile. Headings of one name are one pile. */
  beginPile(name: string, heading: Range): void {
    this.piles.push({ name, heading, members: [] });
  }

  get inPile(): boolean {
    return this.piles.length > 0;
  }

  /** Whether plain items are likely to be pairs that went wrong. */
  get expectsPairs(): boolean {
    return (
      this.pairs.length > 0 || (this.statements.length === 0 && this.events.length === 0 && this.tables.length === 0)
    );
  }

  /** What its bullets and events are together. */
  get bullets(): Together {
    this.together ??= new Together(this.pairs, this.texts, this.events, this.piles);
    return this.together;
  }

  get hasStatements(): boolean {
    return this.statements.length > 0;
  }

  /** What the marks of its plain bullets and statements say; found once, in steps. */
  *marked(): Steps<Marked, undefined> {
    this.marking ??= yield* this.findMarked();
    return this.marking;
  }

  private *findMarked(): Steps<Marked, undefined> {
    const { marks, all } = marksOf(this.texts);
    yield;
    const truths = this.statements.map(({ truth }) => truth);
    const custom = customOf(marks, truths);
    const alone = this.pairs.length === 0 && this.events.length === 0;
    const judged = truths.length > 0 || this.bullets.marked || (all && custom.both && alone);
    yield;
    const crossed = custom.crossed ? this.statements.flatMap(({ truth, mark }) => (truth ? [mark] : [])) : [];
    const ended = alone && marks.length === 0 ? endCustom(this.texts, truths.length > 0) : undefined;
    const remarked = this.statements.some(({ truth, text }) => truth && /[)）]\P{L}*$/u.test(text));
    return { judged, custom, crossed, ended, remarked };
  }

  /** The same of events. */
  get judgedStory(): boolean {
    return this.statements.length > 0 || this.bullets.markedStory;
  }

  /**
   * Paragraphs whose lines begin with marks, where they are likely to be statements; `ticked` where ticks and crosses, which stand in
   * many notes, are all that a section has of items.
   */
  get judgedNotes(): { readonly paragraphs: readonly (readonly [number, number])[]; readonly ticked: boolean } {
    const texts = this.marks.flatMap((each) => each.texts);
    const bracketed = this.statements.length > 0 || texts.every((text) => /^[[［【]/u.test(text));
    const alone = this.bullets.isEmpty && this.tables.length === 0;
    const judged = this.statements.length > 0 || ((bracketed || alone) && allJudged(texts));
    return { paragraphs: judged ? this.marks.map(({ lines }) => lines) : [], ticked: !bracketed };
  }

  add(member: PileMember): void {
    [this.together, this.marking] = [undefined, undefined];
    const top = this.tops.at(-1);
    if (top) top.above = true;
    if (member.shape === "pair") this.pairs.push(member.item);
    else if (member.shape === "statement") this.statements.push(member.item);
    else if (member.shape === "event") this.events.push(member.item);
    else this.texts.push(member.item.text);
    this.piles.at(-1)?.members.push(member);
  }

  /** A bullet with text alone, and those below it. */
  addPlain({ range, block }: PlainBullet["nested"][number], nested: readonly RawItem[]): void {
    this.plain.push({ range, block, nested: nested.map((each) => ({ range: each.text.whole, block: each.block })) });
  }

  /** A paragraph of notes, by its first line and the one after it; `marked` are its lines where each begins with a mark. */
  addParagraph(lines: readonly [number, number], marked: readonly string[]): void {
    if (marked.length > 0) this.marks.push({ lines, texts: marked });
    this.paragraphs.push({ lines, pile: this.piles.length - 1 });
  }

  /** A heading of the first rank, by its line: it names neither a section nor a pile. */
  addTop(line: number): void {
    this.tops.push({ line, above: false });
  }

  get pileFacts(): PileFacts {
    const { paragraphs, statements, piles } = this;
    const tops = this.tops.flatMap(({ line, above }) => (above ? [line] : []));
    return { paragraphs, statements: statements.length, sizes: piles.map(({ members }) => members.length), tops };
  }

  /** A table that is a note, by its heads. */
  addNoted(heads: readonly SourceText[]): void {
    this.noted.push(heads);
  }

  /** Heads of tables that are notes, where the section has nothing that could be used. */
  get onlyNoted(): readonly (readonly SourceText[])[] {
    const items = this.pairs.length + this.statements.length + this.events.length + this.texts.length;
    return items + this.tables.length === 0 ? this.noted : [];
  }

  addTable(table: FormsTable): void {
    this.tables.push(table);
  }

  close(end: number): Section {
    const { name, heading, pairs, statements, events, tables, plain } = this;
    const piles: Pile[] = this.piles.filter(({ members }) => members.length > 0);
    return { name, heading, range: { start: this.start, end }, pairs, statements, events, piles, tables, plain };
  }
}
