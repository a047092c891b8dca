import { Recent } from "../base/recent";
import { plain, type Run, runsKey } from "../base/run";
import { breakingSpace, breaks, SOFT_HYPHEN, ZERO_WIDTH_SPACE } from "./breaks";
import { mmPerPoint } from "./points";
import type { Room } from "./space";
import type { Typeface } from "./typeface";

/*
 * A text cut wherever a line may end, each stretch of it measured once for all the sizes and shapes that it is tried in.
 */

/** What can tell widths; one that knows those of a line's stretches spares the shaping of each. */
export type Measure = Pick<Typeface, "measure"> & Partial<Pick<Typeface, "stretches">>;

export interface FittedLine {
  /** Without white space at its ends. */
  readonly runs: readonly Run[];
  /** em */
  readonly width: number;
}

/** Forgives the last digit of a floating-point sum, em. */
export const slack = 1e-9;

/** Texts kept per typeface. */
const keptTexts = 5000;

const kept = new WeakMap<Measure, Recent<WordsApart>>();

/** The text of some runs, ready to be broken into lines; kept per typeface and text. */
export function wordsApart(typeface: Measure, runs: readonly Run[]): WordsApart {
  const known = kept.get(typeface) ?? new Recent<WordsApart>(keptTexts);
  kept.set(typeface, known);
  return known.get(runsKey(runs), () => new WordsApart(typeface, runs));
}

/** A way to set the first parts of a text. */
interface Setting {
  /** Sum over the lines of the squared share of unused width: the lower, the evener. */
  readonly cost: number;
  /** First part of each line so far. */
  readonly starts: readonly number[];
}

/** A text cut at every place where a line may end. */
export class WordsApart {
  /** Parts that no line may end in; none in a blank text. */
  readonly count: number;
  private readonly text: string;
  private readonly bounds: readonly number[];
  private readonly stretches: ReturnType<Typeface["stretches"]> | undefined;
  /** Widths (em) by first part, then by number of parts. */
  private readonly widths: (number | undefined)[][] = [];

  constructor(
    private readonly typeface: Measure,
    private readonly runs: readonly Run[],
  ) {
    this.text = plain(runs);
    this.bounds = [0, ...breaks(this.text), this.text.length];
    this.count = isBlank(this.text) ? 0 : this.bounds.length - 1;
    const plainCut = this.count > 1 && !invisible.test(this.text);
    this.stretches = plainCut ? typeface.stretches?.(runs) : undefined;
  }

  /** Width of the parts [from, to) as a line, em. */
  width(from: number, to: number): number {
    this.widths[from] ??= [];
    const row = this.widths[from] ?? [];
    let width = row[to - from];
    if (width === undefined) {
      width = this.widthAnew(from, to);
      row[to - from] = width;
    }
    return width;
  }

  private widthAnew(from: number, to: number): number {
    const [start, end] = trimmed(this.text, this.bounds[from] ?? 0, this.bounds[to] ?? this.text.length);
    return this.stretches?.(start, end) ?? this.typeface.measure(this.printed(from, to));
  }

  private printed(from: number, to: number): readonly Run[] {
    return printed(this.text, this.runs, this.bounds[from] ?? 0, this.bounds[to] ?? this.text.length);
  }

  /** Parts [from, to) as a line. */
  line(from: number, to: number): FittedLine {
    return { runs: this.printed(from, to), width: this.width(from, to) };
  }

  /** Whether the whole text can be set in exactly so many lines. */
  fits(lines: number, size: number, room: Room): boolean {
    if (this.count === 0) return true;
    let starts = [0];
    for (let line = 0; line < lines; line++) {
      const available = room(line, lines, size) / (size * mmPerPoint);
      if (available <= 0) return false;
      const last = this.count - (lines - line - 1);
      const next: number[] = [];
      for (const from of starts) {
        for (let to = from + 1; to <= last && this.width(from, to) <= available + slack; to++) {
          // Starts ascend, and so does what is reached from each: what is not yet among them lies beyond the last.
          if (to > (next.at(-1) ?? 0)) next.push(to);
        }
      }
      starts = next;
    }
    return starts.at(-1) === this.count;
  }

  /** The evenest way to set the whole text in exactly so many lines; undefined where there is none. */
  into(lines: number, size: number, room: Room): readonly FittedLine[] | undefined {
    if (this.count === 0) return [];
    let settings = new Map<number, Setting>([[0, { cost: 0, starts: [] }]]);
    for (let line = 0; line < lines; line++) {
      const available = room(line, lines, size) / (size * mmPerPoint);
      if (available <= 0) return undefined;
      settings = this.addLine(settings, available, lines - line - 1);
    }
    const starts = settings.get(this.count)?.starts;
    return starts?.map((from, i) => this.line(from, starts[i + 1] ?? this.count));
  }

  /** From the ways to set the text up to some part, those with one line more, leaving a part for each line to come. */
  private addLine(settings: ReadonlyMap<number, Setting>, available: number, toCome: number): Map<number, Setting> {
    const longer = new Map<number, Setting>();
    for (const [from, setting] of settings) {
      for (let to = from + 1; to <= this.count - toCome; to++) {
        const width = this.width(from, to);
        if (width > available + slack) break;
        const cost = setting.cost + (1 - width / available) ** 2;
        const known = longer.get(to);
        if (!known || cost < known.cost) longer.set(to, { cost, starts: [...setting.starts, from] });
      }
    }
    return longer;
  }
}

function isBlank(text: string): boolean {
  for (const character of text) if (!breakingSpace.test(character) && !invisible.test(character)) return false;
  return true;
}

const invisible = new RegExp(`[${SOFT_HYPHEN}${ZERO_WIDTH_SPACE}]`, "u");

/** Offsets of a stretch of a text without white space at its ends. */
function trimmed(text: string, start: number, end: number): readonly [number, number] {
  let [from, to] = [start, end];
  while (from < to && breakingSpace.test(text.charAt(from))) from++;
  while (to > from && breakingSpace.test(text.charAt(to - 1))) to--;
  return [from, to];
}

/** A stretch of the runs as it is printed on a line: trimmed, break marks taken out, a hyphen where it was used. */
function printed(text: string, runs: readonly Run[], start: number, end: number): readonly Run[] {
  const hyphenated = end < text.length && text.charAt(end - 1) === SOFT_HYPHEN;
  const [from, to] = trimmed(text, start, end);
  const line: Run[] = [];
  let at = 0;
  for (const run of runs) {
    const kept = run.text.slice(Math.max(0, from - at), Math.max(0, to - at)).replace(allInvisible, "");
    at += run.text.length;
    if (kept) line.push({ ...run, text: kept });
  }
  const last = line.at(-1);
  if (hyphenated && last) line[line.length - 1] = { ...last, text: `${last.text}-` };
  return line;
}

const allInvisible = new RegExp(invisible, "gu");
