import type { Range } from "../../base/range";
import type { Unit } from "../../unit/unit";
import { membersOf, pileRange } from "./members";

/** Lines that fold into the first of them, both counted from zero. */
export interface Fold {
  readonly first: number;
  readonly last: number;
}

/** Front matter, sections, piles, activities, tables, and items with something under them. */
export function foldsOf(unit: Unit): readonly Fold[] {
  const { lines, front } = unit;
  const spans = [
    ...unit.sections.flatMap((section) => [
      section.range,
      ...section.piles.map((pile) => pileRange(unit, pile)),
      ...membersOf(section).map(({ block }) => block),
    ]),
    ...[...unit.activities, ...unit.stations].map(({ fence }) => fence),
  ];
  const folds = spans.map((span) => foldOf(unit, span));
  // The range of the front matter is what stands between its two lines.
  if (front.range.start > 0) folds.push({ first: 0, last: lines.lineAt(front.range.end) });
  return folds.filter(({ first, last }) => last > first).sort((a, b) => a.first - b.first || b.last - a.last);
}

/** Blank lines after a span stay visible, as they do elsewhere in VS Code. */
function foldOf({ lines, text }: Unit, { start, end }: Range): Fold {
  const first = lines.lineAt(start);
  let last = lines.lineAt(end);
  while (last > first && text.slice(lines.start(last), Math.min(lines.line(last).end, end)).trim() === "") last--;
  return { first, last };
}
