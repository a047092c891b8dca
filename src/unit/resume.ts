import type { LineIndex } from "../base/range";
import type { Steps } from "../base/steps";
import { movedActivity, movedProblem, movedSilence, movingSection } from "./moved-section";
import type { SourceText } from "./source-text";
import type { Row } from "./tables";
import type { ActivityBlock, Problem, Section, Silence, Unit } from "./unit";

/*
 * What stands above or below an edit is not read again. A reading remembers how far it had come at each heading that begins a
 * section; the next goes on from the last one up to which its text is the same, and ends at the first one from which on it is the
 * same again. Sections above are then the same objects; those below are moved.
 */

/** What a reading gathers, in the order of the text. */
export interface Gathered {
  readonly sections: Section[];
  readonly headingsAbove: Unit["headingsAbove"][number][];
  readonly activities: ActivityBlock[];
  readonly stations: ActivityBlock[];
  readonly problems: Problem[];
  readonly silences: Silence[];
  /** Texts with something like a link, looked at when all tables are known. */
  readonly linked: SourceText[];
  /** Heads of tables that hold no forms. */
  readonly heads: Row[];
}

/** Where a section begins: nothing is open there, and nothing that follows changes what was gathered above it. */
interface Mark {
  /** The line of its heading. */
  readonly line: number;
  /** Where that line starts. */
  readonly start: number;
  /** Where the line below the heading starts: up to there the texts have to be the same. */
  readonly after: number;
  /** How much had been gathered. */
  readonly counts: Counts;
}

type Counts = Readonly<Record<keyof Gathered, number>>;

export interface Start {
  /** The line to go on from, zero-based. */
  readonly line: number;
  readonly gathered: Gathered;
  readonly journal: Journal;
  /** Where the rest of the text may be taken from another reading, by the line of the heading that begins it. */
  readonly rests: ReadonlyMap<number, Rest>;
}

/** Where the sections of one reading begin. */
export class Journal {
  private constructor(private readonly marks: Mark[]) {}

  /** A reading from the top of a text, that is read to its end. */
  static begin(line: number, problems: readonly Problem[]): Start {
    const gathered = {
      sections: [],
      headingsAbove: [],
      activities: [],
      stations: [],
      silences: [],
      linked: [],
      heads: [],
    };
    return { line, gathered: { ...gathered, problems: [...problems] }, journal: new Journal([]), rests: new Map() };
  }

  /** A section begins, and what stands above it has been gathered. */
  mark(lines: LineIndex, line: number, gathered: Gathered): void {
    const [start, after] = [lines.start(line), lines.start(line + 1)];
    this.marks.push({ line, start, after, counts: countsOf(gathered) });
  }

  /** Sections that are taken from elsewhere begin. */
  add(marks: readonly Mark[]): void {
    this.marks.push(...marks);
  }

  /**
   * Keeps what later readings may go on from. `front`: problems of the front matter; `body`: the line below it; `read`: problems of
   * all that was read, without those that came when all of it was known.
   */
  keep(unit: Unit, gathered: Gathered, known: Pick<Reading, "front" | "body" | "read">): void {
    kept.set(unit, { journal: this, gathered, unit, ...known });
  }

  /**
   * The last mark of a reading up to which a text is the same, as a start for reading it, with those from which on it is the same
   * again; undefined where there is neither.
   */
  static resume(
    lines: LineIndex,
    body: number,
    problems: readonly Problem[],
    before: readonly Unit[],
  ): Start | undefined {
    let best: { readonly reading: Reading; readonly nth: number; readonly mark: Mark } | undefined;
    let last: Reading | undefined;
    for (const unit of before) {
      const reading = kept.get(unit);
      // What a definition of links below or a line ending of Windows changes may stand anywhere.
      if (!reading || unit.references || unit.lines.newline !== lines.newline) continue;
      last ??= reading;
      if (reading.body !== body) continue;
      let same = 0;
      for (const [nth, mark] of reading.journal.marks.entries()) {
        if (unit.text.slice(same, mark.after) !== lines.text.slice(same, mark.after)) break;
        same = mark.after;
        if (!best || mark.line > best.mark.line) best = { reading, nth, mark };
      }
    }
    const begin = Journal.begin(body, problems);
    const from = best?.reading ?? last;
    const rests = from ? restsOf(from, from.journal.marks, lines, best?.mark.line ?? body) : begin.rests;
    if (!best) return rests.size > 0 ? { ...begin, rests } : undefined;
    const { reading, nth, mark } = best;
    const gathered = mapped(reading.gathered, (list, key) => list.slice(0, mark.counts[key])) as unknown as Gathered;
    const own = reading.gathered.problems.slice(reading.front, mark.counts.problems);
    const front = { problems: [...problems, ...own] };
    return {
      line: mark.line,
      gathered: { ...gathered, ...front },
      journal: new Journal(reading.journal.marks.slice(0, nth)),
      rests,
    };
  }
}

interface Reading {
  readonly journal: Journal;
  readonly gathered: Gathered;
  readonly unit: Unit;
  readonly front: number;
  readonly body: number;
  readonly read: number;
}

const kept = new WeakMap<Unit, Reading>();

/** Marks from which on a text is what was read before, below a line of it, as what may be taken from there. */
function restsOf(from: Reading, marks: readonly Mark[], lines: LineIndex, below: number): Map<number, Rest> {
  const rests = new Map<number, Rest>();
  const { text } = from.unit;
  const by = lines.text.length - text.length;
  const further = lines.count - from.unit.lines.count;
  let same = text.length;
  for (let nth = marks.length - 1; nth >= 0; nth--) {
    const { start, line } = marks[nth] as Mark;
    const at = line + further;
    if (at <= below || lines.start(at) !== start + by) break;
    if (text.slice(start, same) !== lines.text.slice(start + by, same + by)) break;
    same = start;
    rests.set(at, new Rest(from, marks.slice(nth), by, further));
  }
  return rests;
}

/** All from a heading on, as another reading has gathered it. */
export class Rest {
  /** `by`: how much further down it stands now, in UTF-16 units; `further`: in lines. */
  constructor(
    private readonly from: Reading,
    private readonly marks: readonly Mark[],
    private readonly by: number,
    private readonly further: number,
  ) {}

  /** Adds what it holds, with a pause now and then. */
  *into(gathered: Gathered, journal: Journal): Steps<void, undefined> {
    const { marks, by, further } = this;
    const [first] = marks;
    if (!first) return;
    const had = countsOf(gathered);
    const more = mapped(gathered, (_, key) => had[key] - first.counts[key]);
    const rest = <Key extends keyof Gathered>(key: Key): Gathered[Key] =>
      this.from.gathered[key].slice(first.counts[key]) as Gathered[Key];
    const move = <Each>(all: readonly Each[], moved: (each: Each) => Each): readonly Each[] =>
      by === 0 ? all : all.map(moved);
    for (const section of rest("sections")) {
      gathered.sections.push(by === 0 ? section : yield* movingSection(section, by));
      yield;
    }
    const activity = (block: ActivityBlock): ActivityBlock => movedActivity(block, by, more.sections);
    gathered.activities.push(...rest("activities").map(activity));
    gathered.stations.push(...rest("stations").map(activity));
    const problems = this.from.gathered.problems.slice(first.counts.problems, this.from.read);
    gathered.problems.push(...move(problems, (problem) => movedProblem(problem, by)));
    gathered.silences.push(...move(rest("silences"), (silence) => movedSilence(silence, by)));
    gathered.linked.push(...move(rest("linked"), (text) => text.moved(by)));
    gathered.heads.push(...move(rest("heads"), (row) => row.map((text) => text.moved(by))));
    journal.add(
      marks.map(({ line, start, after, counts }) => ({
        line: line + further,
        start: start + by,
        after: after + by,
        counts: mapped(gathered, (_, key) => counts[key] + more[key]),
      })),
    );
  }
}

function countsOf(gathered: Gathered): Counts {
  return mapped(gathered, ({ length }) => length);
}

function mapped<Value>(
  gathered: Gathered,
  make: (list: readonly unknown[], key: keyof Gathered) => Value,
): Record<keyof Gathered, Value> {
  const entries = Object.entries(gathered).map(([key, list]) => [key, make(list, key as keyof Gathered)]);
  return Object.fromEntries(entries);
}
