import type { Deal, Piece, PiecePlace, Press } from "../activities/contract";
import { levelTold } from "../activities/levels";
import type { PlannedStations } from "../activities/stations";
import type { Sheet } from "../page/sheet";
import { renderPdf } from "../render/pdf";
import { drawingsOf, type PieceDrawing } from "./drawings";
import { FileNames } from "./file-names";
import { guideSheets } from "./papers/guide";
import { labelSheets } from "./papers/labels";
import { prepBlocks } from "./papers/prep";
import { stationBlocks } from "./papers/stations";
import {
  type PieceEntry,
  pastAfter,
  pieceEntries,
  type RecordedDeal,
  readPiecesFile,
  writePiecesFile,
} from "./pieces-file";
import { printRuns } from "./print-runs";
import type { Printable, PrintedActivity, Run } from "./printable";
import type { MadeFile, MakeOptions } from "./workshop";

interface Job {
  readonly name: string;
  readonly title: string;
  readonly lang: string;
  readonly sheets: readonly Sheet[];
}

/** Sets all sheets of a unit and writes them as files, the pieces file last. Throws only what `onStep` throws. */
export async function makeFiles(
  unit: { readonly name: string; readonly pieces?: string; readonly stations: readonly PlannedStations[] },
  printables: readonly Printable[],
  press: Press,
  options: MakeOptions,
): Promise<readonly MadeFile[]> {
  const names = new FileNames();
  const jobs: Job[] = [];
  const entries: PieceEntry[] = [];
  const deals: RecordedDeal[] = [];
  const printed: PrintedActivity[] = [];
  const merged = new Map<string, { sheets: Sheet[]; lang: string }>();
  for (const whole of printables) {
    const printable = options.trial ? trialOf(whole) : whole;
    const { kind, title, dealt, seed, lang } = printable;
    const { paper: paperName, margin } = dealt.request.options.value;
    const name = names.take(title);
    if (options.only !== undefined && options.only !== kind.name && options.only !== title) continue;
    const file = (stock: string): string => `${unit.name}.${options.merge ? "" : `${name}.`}${stock}.pdf`;
    const runs: Run[] = [];
    const before = options.merge ? (merged.get("card")?.sheets.length ?? 0) : 0;
    const card: Sheet[] = [];
    const paper: Sheet[] = [];
    for (const deal of dealt.deals) {
      const pieces = kind.pieces(dealt, deal, press);
      const level = levelTold(deal, dealt.request.options.value.levels);
      let print: readonly PieceDrawing[] | undefined;
      for (const { copies, sheets, apart } of printRuns(kind, dealt, deal, press)) {
        for (const copy of new Set(copies)) {
          const of = { activity: title, make: kind.name, deal, level, copy };
          const places = [...copies.keys()].filter((place) => copies[place] === copy);
          const own = pieces.map((piece) => ({
            ...piece,
            at: places.flatMap((place) => lowered(piece, place * apart)),
          }));
          entries.push(...pieceEntries(own, of, file("card"), before + card.length + 1));
        }
        print ??= drawingsOf(sheets, pieces);
        card.push(...sheets);
        runs.push({ sheets, sets: copies.length });
      }
      paper.push(...kind.solutionSheets(dealt, deal, "solved", press));
      const { code, version, desk, attempt } = deal;
      deals.push({
        code,
        activity: title,
        make: kind.name,
        level,
        version,
        ...(desk === undefined ? {} : { desk }),
        attempt,
        seed,
        paper: paperName,
        margin,
        master: deal.copies === "by copier",
        print: print ?? [],
        record: kind.record(dealt, deal, press),
      });
    }
    paper.push(...kind.papers(dealt, press));
    printed.push({ printable, card, paper, sets: runs.reduce((sum, { sets }) => sum + sets, 0), runs });
    for (const [stock, sheets] of Object.entries({ card, paper })) {
      if (sheets.length === 0) continue;
      if (!options.merge) jobs.push({ name: file(stock), title: `${press.unitTitle}: ${title}`, lang, sheets });
      else merged.set(stock, { sheets: [...(merged.get(stock)?.sheets ?? []), ...sheets], lang });
    }
  }
  for (const [stock, { sheets, lang }] of merged)
    jobs.push({ name: `${unit.name}.${stock}.pdf`, title: press.unitTitle, lang, sheets });
  const chosen = printed.map(({ printable }) => printable);
  const labels = labelSheets(chosen, press);
  const stations = stationBlocks(unit.stations, printables, printed, press);
  const guideOf = (sheets: number): Sheet[] =>
    guideSheets(printed, press, [...stations, { type: "page break" }, ...prepBlocks(printed, labels, sheets)]);
  // The guide counts its own sheets: their number changes none of its lines.
  const guide = guideOf(guideOf(1).length);
  const lang = chosen[0]?.lang ?? "en";
  // With `only`, the unit's guide and labels stay as they are: they speak of all activities.
  for (const [name, sheets] of options.only === undefined ? Object.entries({ guide, labels }) : []) {
    if (sheets.length > 0)
      jobs.push({ name: `${unit.name}.${name}.pdf`, title: `${press.unitTitle}: ${name}`, lang, sheets });
  }
  return writeAll(unit, jobs, { entries, deals }, press, options);
}

/** Where a piece of a set stands that lies so many millimetres further down. */
function lowered({ at }: Piece, by: number): readonly PiecePlace[] {
  return by === 0 ? at : at.map((place) => ({ ...place, y: place.y + by }));
}

/** The same deals for a single group: one set of each, one slip, and one list to call from. */
function trialOf(printable: Printable): Printable {
  const { kind } = printable;
  const dealt = kind.oneHour?.(printable.dealt) ?? printable.dealt;
  const { request } = dealt;
  const deals = dealt.deals.map((deal): Deal => (deal.copies === "by copier" ? deal : { ...deal, copies: 1 }));
  const classes = request.classes.length > 0 ? [request.options.value.group] : [];
  return { ...printable, dealt: { ...dealt, deals, request: { ...request, classes } } };
}

async function writeAll(
  unit: { readonly name: string; readonly pieces?: string },
  jobs: readonly Job[],
  { entries, deals }: { readonly entries: readonly PieceEntry[]; readonly deals: readonly RecordedDeal[] },
  press: Press,
  { onStep, only }: MakeOptions,
): Promise<readonly MadeFile[]> {
  const files: MadeFile[] = [];
  for (const [i, job] of jobs.entries()) {
    await onStep?.(i, jobs.length, job.name);
    const bytes = await renderPdf(job.sheets, press.typeface, press.pictures, { title: job.title, lang: job.lang });
    files.push({ name: job.name, bytes });
  }
  await onStep?.(jobs.length, jobs.length, "");
  const before = readPiecesFile(unit.pieces);
  // With `only`, what other activities printed stays as it was.
  const made = new Set(deals.map(({ activity }) => activity));
  const kept = only === undefined ? [] : (before?.deals ?? []).filter(({ activity }) => !made.has(activity));
  const keptPieces = only === undefined ? [] : (before?.pieces ?? []).filter(({ activity }) => !made.has(activity));
  const current = [...kept, ...deals];
  const file = {
    unit: unit.name,
    deals: current,
    pieces: [...keptPieces, ...entries],
    past: pastAfter(before, current),
    guide: only === undefined ? codesOf(current) : (before?.guide ?? codesOf(before?.deals ?? [])),
  };
  // A pieces file that cannot be read is kept under another name: it may hold the history of all prints.
  const damaged = unit.pieces !== undefined && before === undefined && unit.pieces.trim() !== "";
  const salvaged = damaged
    ? [{ name: `${unit.name}.pieces.damaged.json`, bytes: new TextEncoder().encode(unit.pieces) }]
    : [];
  return [...files, ...salvaged, { name: `${unit.name}.pieces.json`, bytes: writePiecesFile(file) }];
}

function codesOf(deals: readonly RecordedDeal[]): string[] {
  return deals.map(({ code }) => code);
}
