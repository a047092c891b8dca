import type { SheetItem } from "../sheet";
import type { Align, Words } from "./blocks";
import { type Part, slack } from "./part";
import {
  bold,
  drawWords,
  firstBaseline,
  heightOf,
  type Measure,
  naturalWidth,
  type SetWords,
  setWords,
  sourced,
} from "./words";

/** What all blocks of a paper share: the size of running text (pt), the width (mm) and the face to measure with. */
export interface Setting {
  readonly size: number;
  readonly width: number;
  readonly typeface: Measure;
}

interface LinesPlace {
  readonly above: number;
  readonly keepsNext?: boolean;
  /** From the left edge of the page, and how wide; mm. */
  readonly left: number;
  readonly width: number;
  readonly align?: Align;
  /** What stands before the first line; gets its baseline. */
  readonly label?: (x: number, baseline: number) => readonly SheetItem[];
}

/** Fewer lines than these never stand alone at the foot or the head of a page. */
const fewest = 2;

/** Lines of one paragraph. */
function linesPart(set: SetWords, place: LinesPlace): Part {
  const count = set.lines.length;
  const part: Part = {
    above: place.above,
    height: heightOf(set),
    least: heightOf(set, count < 2 * fewest ? count : fewest),
    keepsNext: place.keepsNext ?? false,
    draw: (x, y) => [
      ...(place.label?.(x, y + firstBaseline(set)) ?? []),
      ...drawWords(set, x + place.left, y + firstBaseline(set), place.width, place.align ?? "start"),
    ],
  };
  if (count < 2 * fewest) return part;
  const { label, ...unlabelled } = place;
  return {
    ...part,
    split(available) {
      const fitting = Math.min(Math.floor(available / set.lineHeight + slack), count - fewest);
      if (fitting < fewest) return undefined;
      return [
        linesPart({ ...set, lines: set.lines.slice(0, fitting) }, { ...place, keepsNext: false }),
        linesPart({ ...set, lines: set.lines.slice(fitting) }, { ...unlabelled, above: 0 }),
      ];
    },
  };
}

/** Sizes in shares of running text, and the space above in mm at 10 pt. */
const headings = {
  1: { size: 1.6, above: 6 },
  2: { size: 1.2, above: 5 },
  3: { size: 1, above: 3.6 },
} as const;

export function headingPart(text: Words, level: 1 | 2 | 3, { size, width, typeface }: Setting): Part {
  const heading = headings[level];
  const set = setWords(typeface, bold(sourced(text)), size * heading.size, width);
  return linesPart(set, { above: (heading.above * size) / 10, keepsNext: true, left: 0, width });
}

export function paragraphPart(text: Words, setting: Setting, align: Align = "start", keepsNext = false): Part {
  const { size, width, typeface } = setting;
  const above = 0.16 * size;
  return linesPart(setWords(typeface, text, size, width), { above, keepsNext, left: 0, width, align });
}

/** Items one below the other, each behind its label, all labels in a column as wide as the widest. */
export function listParts(
  items: readonly Words[],
  labelOf: (index: number) => string,
  { size, width, typeface }: Setting,
): Part[] {
  const labels = items.map((_, i) => setWords(typeface, labelOf(i), size, width / 3));
  const widest = Math.max(0, ...items.map((_, i) => naturalWidth(typeface, labelOf(i), size)));
  const indent = Math.min(widest, width / 3) + 0.24 * size;
  return items.map((item, i) => {
    // Neither the first item nor the last stands alone at the foot or the head of a page.
    const keepsNext = items.length > 1 && (i === 0 || i === items.length - 2);
    const set = setWords(typeface, item, size, width - indent);
    const label = (x: number, baseline: number) => {
      const own = labels[i];
      if (!own) return [];
      // The label stands on the side where its item begins.
      const [at, align] = set.rightToLeft ? ([x + width - indent, "end"] as const) : ([x, "start"] as const);
      return drawWords(own, at, baseline, indent, align);
    };
    return linesPart(set.lines.length > 0 ? set : { ...set, lines: [[]] }, {
      above: (i === 0 ? 0.16 : 0.1) * size,
      keepsNext,
      left: set.rightToLeft ? 0 : indent,
      width: width - indent,
      label,
    });
  });
}
