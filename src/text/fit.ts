import { plain, type Run } from "../base/run";
import { breakingSpace, breaks, SOFT_HYPHEN, ZERO_WIDTH_SPACE } from "./breaks";
import { mmPerPoint } from "./points";
import type { Room } from "./space";
import type { Typeface } from "./typeface";

/*
 * Breaks a text into lines that fit a shape, as large as it will go.
 */

/** Sizes are whole multiples of this, pt. */
export const sizeStep = 0.25;

export interface FittedLine {
  /** Without white space at its ends. */
  readonly runs: readonly Run[];
  /** em */
  readonly width: number;
}

export interface FittedText {
  /** pt */
  readonly size: number;
  /** Top to bottom; none for a blank text. */
  readonly lines: readonly FittedLine[];
}

export interface SizeLimits {
  /** pt */
  readonly smallest: number;
  /** pt */
  readonly largest: number;
  readonly maxLines: number;
}

/**
 * The largest size, a multiple of a quarter point within the limits, at which the text fits in at most so many lines,
 * and those lines; of equal sizes the one with the fewest lines. Undefined where it does not fit at the smallest.
 */
export function largestSize(
  typeface: Pick<Typeface, "measure">,
  runs: readonly Run[],
  room: Room,
  limits: SizeLimits,
): FittedText | undefined {
  const text = new Pieces(typeface, runs);
  let low = Math.ceil(limits.smallest / sizeStep);
  let best: FittedText | undefined;
  for (let lines = 1; lines <= limits.maxLines; lines++) {
    let high = Math.floor(limits.largest / sizeStep);
    while (low <= high) {
      const middle = (low + high + 1) >> 1;
      const size = middle * sizeStep;
      const broken = text.into(lines, size, room);
      if (broken) {
        best = { size, lines: broken };
        low = middle + 1;
      } else {
        high = middle - 1;
      }
    }
  }
  return best;
}

/** The text at a given size, in as few lines as fit; undefined where it does not fit in so many. */
export function fitAt(
  typeface: Pick<Typeface, "measure">,
  runs: readonly Run[],
  room: Room,
  size: number,
  maxLines: number,
): FittedText | undefined {
  const text = new Pieces(typeface, runs);
  for (let lines = 1; lines <= maxLines; lines++) {
    const broken = text.into(lines, size, room);
    if (broken) return { size, lines: broken };
  }
  return undefined;
}

/**
 * Running text at `size` pt in lines of at most `width` mm, each as full as it will go. A word that is wider than that
 * has a line of its own and sticks out: compare its width.
 */
export function wrap(
  typeface: Pick<Typeface, "measure">,
  runs: readonly Run[],
  size: number,
  width: number,
): readonly FittedLine[] {
  const text = new Pieces(typeface, runs);
  const available = width / (size * mmPerPoint);
  const lines: FittedLine[] = [];
  let from = 0;
  while (from < text.count) {
    let to = from + 1;
    while (to < text.count && text.line(from, to + 1).width <= available + slack) to++;
    lines.push(text.line(from, to));
    from = to;
  }
  return lines;
}

/** Forgives the last digit of a floating-point sum, em. */
const slack = 1e-9;

/** A way to set the first pieces of a text. */
interface Setting {
  /** Sum over the lines of the squared share of unused width: the lower, the evener. */
  readonly cost: number;
  readonly lines: readonly FittedLine[];
}

/** A text cut at every place where a line may end. */
class Pieces {
  readonly count: number;
  private readonly text: string;
  private readonly bounds: readonly number[];
  private readonly measured = new Map<number, FittedLine>();

  constructor(
    private readonly typeface: Pick<Typeface, "measure">,
    private readonly runs: readonly Run[],
  ) {
    this.text = plain(runs);
    this.bounds = [0, ...breaks(this.text), this.text.length];
    this.count = isBlank(this.text) ? 0 : this.bounds.length - 1;
  }

  /** Pieces [from, to) as a line. */
  line(from: number, to: number): FittedLine {
    const key = from * (this.count + 1) + to;
    let line = this.measured.get(key);
    if (!line) {
      const runs = printed(this.runs, this.bounds[from] ?? 0, this.bounds[to] ?? this.text.length);
      line = { runs, width: this.typeface.measure(runs) };
      this.measured.set(key, line);
    }
    return line;
  }

  /** The evenest way to set the whole text in exactly so many lines; undefined where there is none. */
  into(lines: number, size: number, room: Room): readonly FittedLine[] | undefined {
    if (this.count === 0) return [];
    let settings = new Map<number, Setting>([[0, { cost: 0, lines: [] }]]);
    for (let line = 0; line < lines; line++) {
      const available = room(line, lines, size) / (size * mmPerPoint);
      if (available <= 0) return undefined;
      settings = this.addLine(settings, available, lines - line - 1);
    }
    return settings.get(this.count)?.lines;
  }

  /** From the ways to set the text up to some piece, those with one line more, leaving a piece for each line to come. */
  private addLine(settings: ReadonlyMap<number, Setting>, available: number, toCome: number): Map<number, Setting> {
    const longer = new Map<number, Setting>();
    for (const [from, setting] of settings) {
      const last = toCome === 0 ? this.count : this.count - toCome;
      for (let to = from + 1; to <= last; to++) {
        const line = this.line(from, to);
        if (line.width > available + slack) break;
        const cost = setting.cost + (1 - line.width / available) ** 2;
        const known = longer.get(to);
        if (!known || cost < known.cost) longer.set(to, { cost, lines: [...setting.lines, line] });
      }
    }
    return longer;
  }
}

function isBlank(text: string): boolean {
  return [...text].every((character) => breakingSpace.test(character) || invisible.test(character));
}

const invisible = new RegExp(`[${SOFT_HYPHEN}${ZERO_WIDTH_SPACE}]`, "u");

/** A stretch of the runs as it is printed on a line: trimmed, break marks taken out, a hyphen where it was used. */
function printed(runs: readonly Run[], start: number, end: number): readonly Run[] {
  const text = plain(runs);
  const hyphenated = end < text.length && text.charAt(end - 1) === SOFT_HYPHEN;
  let [from, to] = [start, end];
  while (from < to && breakingSpace.test(text.charAt(from))) from++;
  while (to > from && breakingSpace.test(text.charAt(to - 1))) to--;
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
