import type { LineIndex } from "../base/range";
import type { SourceText } from "./source-text";
import type { Row } from "./tables";
import type { ActivityBlock, Problem, Section, Silence, Unit } from "./unit";

/*
 * What stands above an edit is not read again. A reading remembers how far it had come at each heading that begins a section; the
 * next goes on from the last one up to which its text is the same. Sections above it are then the same objects.
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
  /** Where the line below the heading starts: up to there the texts have to be the same. */
  readonly after: number;
  /** How much had been gathered. */
  readonly counts: Readonly<Record<keyof Gathered, number>>;
}

export interface Start {
  /** The line to go on from, zero-based. */
  readonly line: number;
  readonly gathered: Gathered;
  readonly journal: Journal;
}

/** Where the sections of one reading begin. */
export class Journal {
  private constructor(private readonly marks: Mark[]) {}

  /** A reading from the top of a text. */
  static begin(problems: readonly Problem[]): Omit<Start, "line"> {
    const gathered = {
      sections: [],
      headingsAbove: [],
      activities: [],
      stations: [],
      silences: [],
      linked: [],
      heads: [],
    };
    return { gathered: { ...gathered, problems: [...problems] }, journal: new Journal([]) };
  }

  /** A section begins, and what stands above it has been gathered. */
  mark(lines: LineIndex, line: number, gathered: Gathered): void {
    const counts = mapped(gathered, ({ length }) => length);
    this.marks.push({ line, after: lines.start(line + 1), counts });
  }

  /** Keeps what later readings may go on from. `front`: problems of the front matter; `body`: the line below it. */
  keep(unit: Unit, gathered: Gathered, front: number, body: number): void {
    kept.set(unit, { journal: this, gathered, front, body });
  }

  /** The last mark of a reading up to which a text is the same, as a start for reading it; undefined where there is none. */
  static resume(
    lines: LineIndex,
    body: number,
    problems: readonly Problem[],
    before: readonly Unit[],
  ): Start | undefined {
    let best: { readonly reading: Reading; readonly nth: number; readonly mark: Mark } | undefined;
    for (const unit of before) {
      const reading = kept.get(unit);
      // What a definition of links below or a line ending of Windows changes may stand anywhere.
      if (!reading || reading.body !== body || unit.references || unit.lines.newline !== lines.newline) continue;
      let same = 0;
      for (const [nth, mark] of reading.journal.marks.entries()) {
        if (unit.text.slice(same, mark.after) !== lines.text.slice(same, mark.after)) break;
        same = mark.after;
        if (!best || mark.line > best.mark.line) best = { reading, nth, mark };
      }
    }
    if (!best) return undefined;
    const { reading, nth, mark } = best;
    const gathered = mapped(reading.gathered, (list, key) => list.slice(0, mark.counts[key])) as unknown as Gathered;
    const own = reading.gathered.problems.slice(reading.front, mark.counts.problems);
    const front = { problems: [...problems, ...own] };
    return {
      line: mark.line,
      gathered: { ...gathered, ...front },
      journal: new Journal(reading.journal.marks.slice(0, nth)),
    };
  }
}

interface Reading {
  readonly journal: Journal;
  readonly gathered: Gathered;
  readonly front: number;
  readonly body: number;
}

const kept = new WeakMap<Unit, Reading>();

function mapped<Value>(
  gathered: Gathered,
  make: (list: readonly unknown[], key: keyof Gathered) => Value,
): Record<keyof Gathered, Value> {
  const entries = Object.entries(gathered).map(([key, list]) => [key, make(list, key as keyof Gathered)]);
  return Object.fromEntries(entries);
}
