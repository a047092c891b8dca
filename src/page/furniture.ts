import type { Run } from "../base/run";
import type { Typeface } from "../text/typeface";
import { type Box, mm, type Paper } from "./paper";
import type { LineItem, SheetItem, TextItem } from "./sheet";

/*
 * What stands on a sheet outside everything that is cut: title, folio, and the bar that shows whether the printer kept the
 * size. Heights in mm.
 */

/** Portrait or landscape. */
type PaperSize = Pick<Paper, "width" | "height">;

const titleSize = 7.5;
const headHeight = 6;
const footHeight = 8;

/** Where pieces may stand: the paper less the margins, the title line and the foot. mm */
export function bodyBox(paper: PaperSize, margin: number): Box {
  return {
    x: margin,
    y: margin + headHeight,
    w: paper.width - 2 * margin,
    h: paper.height - 2 * margin - headHeight - footHeight,
  };
}

export interface SheetTexts {
  /** Left above: unit and activity. */
  readonly title: readonly Run[];
  /** Right above: level, version, copy, deal code. */
  readonly state: readonly Run[];
  /** Right below: place among the sheets. */
  readonly folio: string;
}

/** Clear between what stands left and right in the title line, mm. */
const titleGap = 4;
const graphemes = new Intl.Segmenter("und", { granularity: "grapheme" });

/**
 * A title that leaves `state` its place in the title line: where it is too long, its first run (the unit's name) ends in an
 * ellipsis, and where that is not enough the last one (the activity's) too.
 */
export function titleBeside(
  title: readonly Run[],
  state: readonly Run[],
  { paper, margin }: { readonly paper: PaperSize; readonly margin: number },
  typeface: Pick<Typeface, "measure">,
): readonly Run[] {
  const room = (paper.width - 2 * margin - titleGap) / mm(titleSize) - typeface.measure(state);
  let fitted = title;
  for (const index of new Set([0, title.length - 1])) {
    const run = fitted[index];
    const characters = [...graphemes.segment(run?.text ?? "")].map(({ segment }) => segment);
    const least = Math.min(characters.length, fewestCharacters);
    for (let kept = characters.length - 1; run && typeface.measure(fitted) > room && kept >= least; kept--) {
      const text = `${characters.slice(0, kept).join("").trimEnd()}…`;
      fitted = fitted.map((each, i) => (i === index ? { ...run, text } : each));
    }
  }
  return fitted;
}

/** What is left of a name that is shortened. */
const fewestCharacters = 12;

/** Title line above, size bar and folio below. `barLabel` says what to do with the bar. */
export function furniture(paper: PaperSize, margin: number, texts: SheetTexts, barLabel: string): SheetItem[] {
  const top = margin + 3;
  const bottom = paper.height - margin;
  const right = paper.width - margin;
  return [
    line(texts.title, margin, top, "start"),
    line(texts.state, right, top, "end"),
    ...sizeBar(margin, bottom - 3.2),
    line([{ text: barLabel }], margin, bottom, "start", 6.5),
    line([{ text: texts.folio }], right, bottom, "end"),
  ];
}

function line(runs: readonly Run[], x: number, y: number, anchor: TextItem["anchor"], size = titleSize): TextItem {
  return { type: "text", runs, x, y, size, turn: 0, anchor };
}

/** A bar exactly 100 mm long with a tick each 10 mm: a ruler laid on it shows whether the print was scaled. */
function sizeBar(x: number, y: number): LineItem[] {
  const weight = 0.5;
  const bar: LineItem[] = [{ type: "line", role: "mark", x1: x, y1: y, x2: x + 100, y2: y, weight }];
  for (let i = 0; i <= 10; i++) {
    const height = i % 10 === 0 ? 1.6 : i % 5 === 0 ? 1.2 : 0.7;
    bar.push({ type: "line", role: "mark", x1: x + 10 * i, y1: y, x2: x + 10 * i, y2: y - height, weight: 0.35 });
  }
  return bar;
}
