import { listOfOptions, loudTraps, tabs } from "./yaml-faults";
import { optionsInLine, unevenOptions } from "./yaml-layout";
import { type Line, type Mend, mendedText } from "./yaml-mend";
import { separators, silentTraps } from "./yaml-signs";

/*
 * What YAML makes of lines that were meant otherwise. Where what was meant is sure, the text is mended and read as such: so each
 * trap is told once, and what stands around it is read.
 */

/** Faults that YAML names, with one for a text that is no mapping, and what it reads. */
export interface Outcome {
  readonly faults: number;
  readonly value: string;
}

/** The traps in a YAML text whose mending is sure. `what` is what the text is: activity, plan, front matter, settings file. */
export function findMends(text: string, what: string, outcome: (text: string) => Outcome): Mend[] {
  const lines = linesOf(text);
  let taken: Mend[] = separators(text, lines);
  const now = () => outcome(mendedText(text, taken));
  for (const mend of silentTraps(lines)) {
    const before = now();
    const after = outcome(mendedText(text, [...taken, mend]));
    // In a text of several lines within quotation marks all stands as written.
    if (after.faults <= before.faults && after.value !== before.value) taken.push(mend);
  }
  if (now().faults === 0) return taken;
  const sure = taken;
  const places = new Set(sure.flatMap(({ edits }) => edits.map(({ start }) => lineAt(lines, start))));
  const free = ({ edits }: Mend): boolean => edits.every(({ start }) => !places.has(lineAt(lines, start)));
  const joined = what === "plan" ? [] : optionsInLine(lines, what);
  const parted = new Set(joined.map(({ start }) => lineAt(lines, start)));
  // What stands behind the value of such a line is no part of it.
  const within = loudTraps(lines, what).filter(({ start }) => !parted.has(lineAt(lines, start)));
  const uneven = what === "plan" ? [] : unevenOptions(lines);
  const loud = [...joined, ...uneven, ...listOfOptions(lines), ...within].filter(free).slice(0, 40);
  const faultsOf = (mends: readonly Mend[]): number => outcome(mendedText(text, mends)).faults;
  // What hangs on another trap shows only when that one is mended: so all at once, and those that do nothing out again.
  taken = [[], ...tabs(lines)]
    .map((indent) => [...sure, ...indent.filter(free), ...loud.filter((mend) => !touch(mend, indent))])
    .reduce((best, each) => (faultsOf(each) < faultsOf(best) ? each : best));
  if (faultsOf(taken) >= faultsOf(sure)) {
    taken = sure;
    for (const mend of loud) if (faultsOf([...taken, mend]) < faultsOf(taken)) taken = [...taken, mend];
  }
  for (const mend of taken.filter((each) => !sure.includes(each))) {
    const without = taken.filter((each) => each !== mend);
    if (faultsOf(without) <= faultsOf(taken)) taken = without;
  }
  return taken;
}

function lineAt(lines: readonly Line[], offset: number): number {
  return lines.findLastIndex(({ start }) => start <= offset);
}

function touch({ edits }: Mend, others: readonly Mend[]): boolean {
  return others.some((other) => other.edits.some((a) => edits.some((b) => a.start <= b.end && b.start <= a.end)));
}

/** All lines but those of block scalars (`|` and `>`), which say what they say. */
function linesOf(text: string): Line[] {
  const lines: Line[] = [];
  let start = 0;
  let block: number | undefined;
  for (const line of text.split("\n")) {
    const indent = line.length - line.trimStart().length;
    if (block !== undefined && line.trim() !== "" && indent <= block) block = undefined;
    if (block === undefined) lines.push({ start, text: line });
    if (block === undefined && /[:-][ \t]+[|>][-+\d]*[ \t]*(?:#.*)?$/.test(line)) block = indent;
    start += line.length + 1;
  }
  return lines;
}
