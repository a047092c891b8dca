import type { Range } from "../base/range";
import type { SourceText } from "./source-text";
import { haveOneSign } from "./traps/doubtful-signs";
import { allJudged, allMarked } from "./traps/marks";
import type { Paragraph, PileFacts } from "./traps/piles";
import type { FormsTable, Pair, Pile, PileMember, Section, Statement, StoryEvent } from "./unit";

/** A short word before others, as an article. */
const leadOf = (text: string): string | undefined => /^(\p{L}{1,4})\s+\S/u.exec(text.trim())?.[1]?.toLowerCase();

/** Whether the letters of a text are Latin ones alone. */
const isLatin = (text: string): boolean => !/(?!\p{Script=Latin})\p{L}/u.test(text);

/** A section while it is being read. */
export class SectionBuilder {
  private readonly pairs: Pair[] = [];
  private readonly statements: Statement[] = [];
  private readonly events: StoryEvent[] = [];
  private readonly tables: FormsTable[] = [];
  private readonly noted: (readonly SourceText[])[] = [];
  private readonly paragraphs: Paragraph[] = [];
  private readonly marks: { readonly lines: readonly [number, number]; readonly texts: readonly string[] }[] = [];
  /** Whether all plain bullets begin with marks, once that was asked. */
  private marked: boolean | undefined;
  private markedStory: boolean | undefined;
  private signed: boolean | undefined;
  private partly: boolean | undefined;
  private worded: boolean | undefined;
  /** Short first words of left and of right sides. */
  private scripts: readonly (readonly boolean[])[] | undefined;
  private leads: readonly ReadonlySet<string>[] | undefined;
  /** Plain bullets. */
  private readonly texts: string[] = [];
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

  /** Whether most bullets are pairs, or so many that their sign is surely known. */
  private get mostlyPairs(): boolean {
    return this.pairs.length > Math.min(2, this.texts.length);
  }

  /** What an item may be meant as hangs on this. */
  get around() {
    const { mostlyPairs, hasPairs, hasCards, alike, parted, phrased } = this;
    const ofOneSide = (one: string, other: string): boolean => this.ofOneSide(one, other);
    return { mostlyPairs, hasPairs, hasCards, alike, parted, phrased, ofOneSide };
  }

  get hasStatements(): boolean {
    return this.statements.length > 0;
  }

  private get hasPairs(): boolean {
    return this.pairs.length > 0;
  }

  /** Whether plain bullets are the cards of piles, and none is a pair: what stands above them is hardly one. */
  private get hasCards(): boolean {
    return this.pairs.length === 0 && this.piles.some(({ members }) => members.some(({ shape }) => shape === "text"));
  }

  /** Whether most plain bullets have a bar or another sign between two sides, as pairs that went wrong have. */
  private get parted(): boolean {
    if (this.partly !== undefined) return this.partly;
    const sign = /\S(?:\s+(?:[|｜¦‖│∣/／→;:\p{Pd}−]|[-=]{1,2}>)\s+|:\s+|\s*\t\s*)\S/u;
    const found = this.texts.filter((text) => sign.test(text)).length;
    this.partly = found > 1 && found * 2 > this.texts.length;
    return this.partly;
  }

  /**
   * Whether two texts both begin with short words that only left sides begin with here, or only right ones, or both have the script of
   * one side alone: they are of one language, and no pair.
   */
  private ofOneSide(one: string, other: string): boolean {
    this.leads ??= [this.pairs.map(({ left }) => left), this.pairs.map(({ right }) => right)].map(
      (sides) => new Set(sides.flatMap(({ answers }) => answers.flatMap(({ text }) => leadOf(text) ?? []))),
    );
    const [left, right] = this.leads;
    const sideOf = (text: string): number | undefined => {
      const lead = leadOf(text);
      if (lead === undefined || left?.has(lead) === right?.has(lead)) return undefined;
      return left?.has(lead) ? 0 : 1;
    };
    const side = sideOf(one);
    if (side !== undefined && side === sideOf(other)) return true;
    return this.twoScripts && isLatin(one) === isLatin(other);
  }

  /** Whether there are some pairs, and all sides of one hand are in Latin letters alone, and all of the other in others as well. */
  private get twoScripts(): boolean {
    this.scripts ??= (["left", "right"] as const).map((at) =>
      this.pairs.map((pair) => pair[at].answers.every(({ text }) => isLatin(text))),
    );
    const [left = [], right = []] = this.scripts;
    return left.length > 2 && left.every((latin, i) => latin === left[0] && latin !== right[i]);
  }

  /** Whether there are some pairs, most of several words on both sides, as words with their articles. */
  private get phrased(): boolean {
    if (this.worded !== undefined) return this.worded;
    const several = ({ answers }: Pair["left"]): boolean => /\S\s+\S/.test(answers[0].text);
    const found = this.pairs.filter(({ left, right }) => several(left) && several(right)).length;
    this.worded = found > 2 && found * 3 >= this.pairs.length * 2;
    return this.worded;
  }

  /** Whether all plain bullets have the same sign that may be meant to part a pair, and there are at least three bullets in all. */
  private get alike(): boolean {
    this.signed ??= this.pairs.length + this.texts.length > 2 && haveOneSign(this.texts, !this.hasPairs);
    return this.signed;
  }

  /** Whether plain items that begin with a mark are likely to be statements that went wrong. */
  get judged(): boolean {
    this.marked ??= this.pairs.length === 0 && allMarked(this.texts);
    return this.statements.length > 0 || this.marked;
  }

  /** The same of events. */
  get judgedStory(): boolean {
    this.markedStory ??= allJudged(this.events.map(({ text }) => text));
    return this.statements.length > 0 || this.markedStory;
  }

  /** Paragraphs whose lines begin with marks, where they are likely to be statements. */
  get judgedNotes(): readonly (readonly [number, number])[] {
    const judged = this.statements.length > 0 || allJudged(this.marks.flatMap(({ texts }) => texts));
    return judged ? this.marks.map(({ lines }) => lines) : [];
  }

  add(member: PileMember): void {
    this.marked = undefined;
    this.markedStory = undefined;
    this.signed = undefined;
    this.partly = undefined;
    this.worded = undefined;
    this.scripts = undefined;
    this.leads = undefined;
    if (member.shape === "pair") this.pairs.push(member.item);
    else if (member.shape === "statement") this.statements.push(member.item);
    else if (member.shape === "event") this.events.push(member.item);
    else this.texts.push(member.item.text);
    this.piles.at(-1)?.members.push(member);
  }

  /** A paragraph of notes, by its first line and the one after it; `marked` are its lines where each begins with a mark. */
  addParagraph(lines: readonly [number, number], marked: readonly string[]): void {
    if (marked.length > 0) this.marks.push({ lines, texts: marked });
    this.paragraphs.push({ lines, pile: this.piles.length - 1 });
  }

  get pileFacts(): PileFacts {
    const { paragraphs, statements, piles } = this;
    return { paragraphs, statements: statements.length, sizes: piles.map(({ members }) => members.length) };
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
    const { name, heading, pairs, statements, events, tables } = this;
    const piles: Pile[] = this.piles.filter(({ members }) => members.length > 0);
    return { name, heading, range: { start: this.start, end }, pairs, statements, events, piles, tables };
  }
}
