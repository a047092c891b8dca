import type { Range } from "../base/range";
import { nestedComment, type Remarks, readRemarks } from "./comments";
import { bars, type Env, type Scan, scan, spacedSeparators, TextMemory } from "./inline";
import { movedPair, movedStatement, movedText } from "./moved";
import { readAnswer, readPhrase, readSide, type Scanned } from "./phrases";
import { drop, Problems } from "./problems";
import { SourceText } from "./source-text";
import { readTies } from "./ties";
import { emptySide } from "./traps/empty-side";
import { lineStart, pairLines } from "./traps/glued";
import { pairBreaks } from "./traps/one-line";
import { secondEquals } from "./traps/second-equals";
import type { Answer, Item, Pair, Phrase, Side, Silence, Statement, StoryEvent } from "./unit";

/** One list item as found in the file, with the first paragraphs of the bullets nested in it. */
export interface RawItem {
  readonly text: SourceText;
  /** Whole lines with everything nested and the final line ending. */
  readonly block: Range;
  readonly nested: readonly RawItem[];
  /** Numbered items nested in it, which are not read; their blocks begin with the number. */
  readonly numbered?: readonly RawItem[];
}

/** What a bullet is by its shape. */
type Bullet =
  | { readonly shape: "statement"; readonly item: Statement }
  | { readonly shape: "pair"; readonly item: Pair }
  | { readonly shape: "text"; readonly item: Item & Answer };

/** A bullet read of late as if it stood alone, and as it stood last. */
interface Kept {
  readonly bullet: Bullet;
  placed?: { readonly by: number; readonly bullet: Bullet };
}

/** By their texts; null for those that say more than their own text. */
const alone = new TextMemory<Kept | null>();

function readAlone(text: string, env: Env): Kept | null {
  const problems = new Problems();
  const silences: Silence[] = [];
  const reader = new ItemReader(env, problems, silences);
  const read = reader.bulletAnew({ text: SourceText.alone(text), block: { start: 0, end: 0 }, nested: [] });
  const more = problems.list.length > 0 || silences.length > 0 || !read || read.item.by || read.item.ties.length > 0;
  return more ? null : { bullet: read };
}

/** The same object as at the last reading where it stands at the same place. */
function placed(kept: Kept, by: number, block: Range): Bullet {
  const last = kept.placed;
  if (last?.by === by && last.bullet.item.block.start === block.start && last.bullet.item.block.end === block.end) {
    return last.bullet;
  }
  const bullet = moved(kept.bullet, by, block);
  kept.placed = { by, bullet };
  return bullet;
}

function moved(bullet: Bullet, by: number, block: Range): Bullet {
  if (bullet.shape === "pair") return { shape: "pair", item: movedPair(bullet.item, by, block) };
  if (bullet.shape === "statement") return { shape: "statement", item: movedStatement(bullet.item, by, block) };
  return { shape: "text", item: movedText(bullet.item, by, block) };
}

/** Reads items of one unit; silences are gathered on the way. */
export class ItemReader {
  constructor(
    private readonly env: Env,
    private readonly problems: Problems,
    private readonly silences: Silence[],
  ) {}

  /** A bullet: a statement or a pair by its shape, else plain text. */
  bullet(item: RawItem): Bullet | undefined {
    const { text, block, nested } = item;
    const known =
      text.isWhole && nested.length === 0
        ? alone.get(text.text, this.env, () => readAlone(text.text, this.env))
        : undefined;
    return known ? placed(known, text.source(0), block) : this.bulletAnew(item);
  }

  bulletAnew(item: RawItem): Bullet | undefined {
    const found = scan(item.text.text, this.env);
    const remarks = this.remarks(item, found);
    const scanned = { source: item.text, mask: found.mask, env: this.env };
    const task = /^\[([ xX])\](?=\s|$)\s*/.exec(item.text.text);
    if (task) {
      this.commentsBelow(item, remarks);
      const statement = this.statement(item, task, scanned, found, remarks);
      return statement && { shape: "statement", item: statement };
    }
    if (spacedSeparators(item.text.text, found.mask, "=", 0, remarks.end).length > 0) {
      this.commentsBelow(item, remarks);
      const pair = this.pair(item, scanned, found, remarks);
      return pair && { shape: "pair", item: pair };
    }
    const answer = readAnswer(scanned, { start: 0, end: remarks.end }, false);
    return { shape: "text", item: { ...answer, ...this.common(item, found, remarks) } };
  }

  private commentsBelow({ nested, text: { whole } }: RawItem, { by }: Remarks): void {
    for (const { text } of nested)
      if (text.text.includes("<!--"))
        nestedComment(text, scan(text.text, this.env), whole.end, by !== undefined, this.problems);
  }

  /** A numbered item with the bullets that follow it in any order. */
  storyEvent(item: RawItem): StoryEvent {
    const read = (raw: RawItem): Item & Phrase => {
      const found = scan(raw.text.text, this.env);
      const remarks = this.remarks(raw, found);
      const scanned = { source: raw.text, mask: found.mask, env: this.env };
      return { ...readPhrase(scanned, { start: 0, end: remarks.end }), ...this.common(raw, found, remarks) };
    };
    return { ...read(item), free: item.nested.map(read) };
  }

  /** A table's row as a pair. */
  tableRow(left: SourceText, right: SourceText, block: Range, env: Env): Pair[] {
    const side = (source: SourceText, end: number, cutAtBars: boolean): Side => {
      const { mask } = scan(source.text, env);
      return readSide({ source, mask, env }, { start: 0, end }, cutAtBars);
    };
    const found = scan(right.text, env);
    const remarks = readRemarks(right, found, this.problems);
    this.silences.push(...remarks.silences.map((silence) => ({ ...silence, scope: block })));
    const [l, r] = [side(left, left.text.length, true), side(right, remarks.end, false)];
    const ties = [left, right].flatMap((source) => readTies(source, scan(source.text, env).links, env));
    const range = { start: l.range.start, end: r.range.end };
    const empty = [...l.answers, ...r.answers].find((answer) => answer.text === "" && !answer.picture);
    if (empty) {
      this.problems.add(
        "empty-answer",
        range,
        "Nothing is written here. Each side of a pair needs a word or a picture.",
        drop("Take the row out", block),
      );
      return [];
    }
    return [
      { range, block, left: l, right: r, examples: [], orders: [], ties, ...(remarks.by ? { by: remarks.by } : {}) },
    ];
  }

  private remarks(item: RawItem, found: Scan): Remarks {
    const remarks = readRemarks(item.text, found, this.problems);
    this.silences.push(...remarks.silences.map((silence) => ({ ...silence, scope: item.block })));
    return remarks;
  }

  private common(item: RawItem, { links }: Scan, { end, by }: Remarks): Item {
    return {
      range: item.text.range(0, end),
      block: item.block,
      ties: readTies(item.text, links, this.env),
      ...(by ? { by } : {}),
    };
  }

  private statement(
    item: RawItem,
    task: RegExpExecArray,
    scanned: Scanned,
    found: Scan,
    remarks: Remarks,
  ): Statement | undefined {
    const start = task[0].length;
    const mark = item.text.range(0, 3);
    if (start >= remarks.end) {
      this.problems.add("empty-statement", mark, "Nothing is stated here.", drop("Take the item out", item.block));
      return undefined;
    }
    const [below] = item.nested;
    return {
      ...this.common(item, found, remarks),
      ...readPhrase(scanned, { start, end: remarks.end }),
      mark,
      truth: task[1] !== " ",
      ...(below ? { correction: this.nestedPhrase(below) } : {}),
    };
  }

  private nestedPhrase({ text }: RawItem): Phrase {
    return readPhrase({ source: text, mask: [], env: this.env }, { start: 0, end: text.text.trimEnd().length });
  }

  private pair(item: RawItem, scanned: Scanned, found: Scan, remarks: Remarks): Pair | undefined {
    const { text } = item;
    const [first, ...others] = spacedSeparators(text.text, found.mask, "=", 0, remarks.end);
    if (!first) return undefined;
    // A line that was meant as an item of its own is a trap, and its sign is no second one.
    const own = pairLines(text.text, found.mask);
    const second = others.filter(
      ({ start, end }) => !own.has(lineStart(text.text, start + text.text.slice(start, end).search(/[=＝]/u))),
    );
    const signs = second.map(({ start, end }) => start + text.text.slice(start, end).search(/[=＝]/u));
    const [sign] = signs;
    // Two pairs in one line are a trap.
    if (sign !== undefined && !pairBreaks(text.text, found.mask, [first, ...second]))
      secondEquals(text, [first, ...second], remarks.end, this.problems);
    const left = readSide(scanned, { start: 0, end: first.start }, true);
    const right = readSide(scanned, { start: first.end, end: Math.max(first.end, remarks.end) }, false);
    if ([left, right].some(({ answers }) => answers.some((answer) => answer.text === "" && !answer.picture))) {
      emptySide(item, [left, right], { start: first.start, end: first.end }, found.mask, this.problems);
      return undefined;
    }
    const { examples, orders } = this.below(item, left.answers[0].parts);
    const { range, block, ties, by } = this.common(item, found, remarks);
    // Made for each item of a unit: the shorter way to write it takes long.
    return by
      ? { range, block, ties, by, left, right, examples, orders }
      : { range, block, ties, left, right, examples, orders };
  }

  /** Bullets under a pair: an accepted order where they have bars and the same parts, else an example sentence. */
  private below(item: RawItem, parts: readonly Phrase[]): Pick<Pair, "examples" | "orders"> {
    const examples: Phrase[] = [];
    const orders: { range: Range; parts: readonly number[] }[] = [];
    for (const { text } of item.nested) {
      const { mask } = scan(text.text, this.env);
      // An order with a translation of its own is told as a pair that stands too deep.
      const [equals] = parts.length < 2 ? [] : spacedSeparators(text.text, mask, "=");
      const end = equals?.start ?? text.text.trimEnd().length;
      const scanned = { source: text, mask, env: this.env };
      const stops = bars(text.text, mask, 0, end);
      if (parts.length < 2 || stops.length === 0) {
        examples.push(readPhrase(scanned, { start: 0, end: text.text.trimEnd().length }));
        continue;
      }
      let from = 0;
      const own = [...stops, { start: end, end }].map((stop) => {
        const phrase = readPhrase(scanned, { start: from, end: stop.start });
        from = stop.end;
        return phrase;
      });
      const order = sameParts(parts, own);
      if (order) orders.push({ range: text.whole, parts: order });
      else if (!equals) {
        this.problems.add(
          "other-parts",
          text.whole,
          `An accepted order has the same parts as the sentence above it: ${parts.map((part) => `“${part.text}”`).join(", ")}.`,
        );
      }
    }
    return { examples, orders };
  }
}

/** For each part of `own` the index of its like in `parts`; undefined where they are not the same parts. */
function sameParts(parts: readonly Phrase[], own: readonly Phrase[]): number[] | undefined {
  if (parts.length !== own.length) return undefined;
  const left = parts.map(({ text }) => partKey(text));
  const order: number[] = [];
  for (const { text } of own) {
    const at = left.findIndex((key, i) => key === partKey(text) && !order.includes(i));
    if (at < 0) return undefined;
    order.push(at);
  }
  return order;
}

/** A part without case and without punctuation at its edges. */
export function partKey(text: string): string {
  return text
    .normalize("NFC")
    .toLowerCase()
    .replace(/^[\p{P}\s]+|[\p{P}\s]+$/gu, "");
}
