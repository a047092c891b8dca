import type { Deal, DealtActivity, Press, View } from "../activities/contract";
import { adopt } from "../activities/foreign";
import { dealing } from "../activities/kept-deals";
import { foreignPaths, planning, type UnitPlan } from "../activities/plan";
import { planStations } from "../activities/stations";
import type { Finding } from "../base/finding";
import { finished, type Steps, told } from "../base/steps";
import { checking } from "../check/check";
import type { CheckedActivity } from "../check/context";
import { readSettings } from "../check/settings";
import type { Sheet } from "../page/sheet";
import { renderSvg } from "../render/svg";
import { openTypeface } from "../text/open";
import type { Typeface, TypefaceAssets } from "../text/typeface";
import { picturesOf } from "../unit/pictures";
import { readingUnit } from "../unit/read";
import type { Section, Unit } from "../unit/unit";
import { concerning } from "./blockers";
import { readPiecesFile } from "./pieces-file";
import { printRuns } from "./print-runs";
import type { Printable } from "./printable";
import { printedDeals } from "./printed-deals";
import { type Found, type FoundDeal, findDeals, findMark } from "./reprint";
import { reprintSheets } from "./reprint-sheets";

/*
 * The engine as the editor and the command line see it: bytes and text in, findings, drawings and files out.
 */

/** One unit file. `name` is its base name without `.unit.md`. */
export interface UnitFile {
  readonly name: string;
  readonly text: string;
}

/** What lies around a unit. Everything is read beforehand; the engine opens nothing. */
export interface Surroundings {
  /** Nearest `cutwork.yml` first. */
  readonly settings: readonly { readonly path: string; readonly text: string }[];
  /** Pictures by their path as written in the unit; a missing one is a finding. */
  readonly pictures: ReadonlyMap<string, Uint8Array>;
  /** Other units that activities take sections from, by their path as written in the unit. */
  readonly units: ReadonlyMap<string, string>;
  /** Severity or `off` by code, as the user's settings say; the unit's own go first. */
  readonly severities?: ReadonlyMap<string, string>;
  /** The last `NAME.pieces.json` in the output folder, as text. */
  readonly pieces?: string;
  /** The pieces files of other units in the output folder. */
  readonly neighbours: readonly { readonly name: string; readonly text: string }[];
}

export const nothingAround: Surroundings = { settings: [], pictures: new Map(), units: new Map(), neighbours: [] };

/** A unit read, dealt, proven and checked. */
export interface Reading {
  readonly file: UnitFile;
  readonly around: Surroundings;
  readonly unit: Unit;
  readonly activities: readonly DealtActivity[];
  readonly findings: readonly Finding[];
  /** What is wrong in the settings files around the unit, by file; places are offsets in that file. */
  readonly elsewhere: readonly {
    readonly path: string;
    readonly text: string;
    readonly findings: readonly Finding[];
  }[];
}

/** What a unit's text asks to be loaded before it is read. Paths are as written, relative to the unit's folder. */
export interface Needs {
  readonly units: readonly string[];
  readonly pictures: readonly string[];
}

export interface MadeFile {
  /** File name without folder. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface MakeOptions {
  /** A kind or a title: make only these activities. */
  readonly only?: string;
  /** One set of everything. */
  readonly trial?: boolean;
  /** One file a stock for the whole unit. */
  readonly merge?: boolean;
  /** Called before each file; throw to stop. Files are returned only when all are done. */
  readonly onStep?: (done: number, total: number, name: string) => void | Promise<void>;
}

export interface Workshop {
  /** Reads, deals, proves and checks. Never throws. */
  read(file: UnitFile, around: Surroundings): Reading;
  /** The same in steps, for a caller with other things to do; says in a few words what is being done. */
  reading(file: UnitFile, around: Surroundings): Steps<Reading>;
  /** What to load for a text; with the texts of the other units that it names, their pictures too. */
  needs(text: string, units?: ReadonlyMap<string, string>): Needs;
  /** The same in steps. */
  needing(text: string, units: ReadonlyMap<string, string>): Steps<Needs>;
  /** The sheets of one copy of a deal, as they leave the printer: with others where they share a sheet. `second` is empty where no second solution is known. */
  view(reading: Reading, activity: DealtActivity, deal: Deal, view: View): readonly Sheet[];
  /** A sheet as a standalone SVG element, sized in mm. Piece areas carry `data-piece`, texts `data-start` and `data-end`; ids begin with `prefix`. */
  draw(reading: Reading, sheet: Sheet, prefix: string): string;
  /** Pieces that a mark may stand for, in the pieces files of an output folder (as texts); current prints first. */
  find(files: readonly string[], mark: string): readonly Found[];
  /** Deals that a code may stand for, alone or at the beginning of a mark, in the same files; current ones first. */
  deals(files: readonly string[], mark: string): readonly FoundDeal[];
  /** Found pieces on sheets of card, each the same in text, size and mark as it was. */
  reprint(found: readonly Found[], pictures: ReadonlyMap<string, Uint8Array>): Promise<Uint8Array>;
  /** Errors that keep an export from being right; an export is refused while there are any. With a kind or a title, those that concern it. */
  blockers(reading: Reading, only?: string): readonly Finding[];
  /** Findings of a severity, with a kind or a title those that concern it. */
  concerning(reading: Reading, severity: Finding["severity"], only?: string): readonly Finding[];
  /** All files of a unit, pieces file included. Rejects with a `BlockedError` while there are blockers, and with what `onStep` throws. */
  make(reading: Reading, options: MakeOptions): Promise<readonly MadeFile[]>;
}

/** An export that was refused; the message is a sentence for the user. */
export class BlockedError extends Error {
  override readonly name = "BlockedError";

  constructor(readonly findings: readonly Finding[]) {
    const [first] = findings;
    const more = findings.length > 1 ? ` (and ${findings.length - 1} more)` : "";
    super(`Nothing was made, since the sheets would not be right: ${first?.message ?? ""}${more}`);
  }
}

/** Opens the engine: instantiates the shaper and loads the faces. Rejects where an asset cannot be used. */
export async function openWorkshop(assets: TypefaceAssets): Promise<Workshop> {
  return new Bench(await openTypeface(assets));
}

interface OpenReading extends Reading {
  readonly plan: UnitPlan;
  readonly checked: readonly CheckedActivity[];
  readonly press: Press;
}

class Bench implements Workshop {
  constructor(private readonly typeface: Typeface) {}

  read(file: UnitFile, around: Surroundings): OpenReading {
    return finished(this.reading(file, around));
  }

  *reading(file: UnitFile, around: Surroundings): Steps<OpenReading> {
    const unit = yield* this.parsing(file.text);
    const settings = around.settings.map(readSettings);
    const units = new Map<string, Unit>();
    for (const [path, text] of around.units) units.set(path, yield* this.parsing(text));
    yield "Reading";
    const plan = yield* told(planning(unit, { settings: settings.map(({ mapping }) => mapping), units }), "Planning");
    const press = { typeface: this.typeface, pictures: around.pictures, unitTitle: plan.facts.title ?? file.name };
    const checked: CheckedActivity[] = [];
    for (const activity of plan.activities) {
      if (!activity.kind || !activity.request) continue;
      yield `Dealing “${activity.title}”`;
      checked.push({ plan: activity, dealt: yield* dealing(activity.kind, activity.request) });
    }
    const activities = checked.flatMap(({ plan: { index, title, kind, request }, dealt }): DealtActivity[] => {
      const levels = request?.options.value.levels;
      const facts = { index, title, summary: dealt.summary, deals: dealt.deals, ...(levels ? { levels } : {}) };
      return kind ? [{ ...facts, make: kind.name }] : [];
    });
    const severities = new Map([...(around.severities ?? []), ...plan.severities]);
    const context = { unit, plan, activities: checked, press, printed: printedDeals(file, around), severities };
    const elsewhere = settings.flatMap(({ path, text, findings }) =>
      findings.length > 0 ? [{ path, text, findings }] : [],
    );
    yield "Checking";
    const findings = yield* told(checking(context), "Checking");
    return { file, around, unit, plan, checked, press, activities, findings, elsewhere };
  }

  needs(text: string, units: ReadonlyMap<string, string> = new Map()): Needs {
    return finished(this.needing(text, units));
  }

  *needing(text: string, units: ReadonlyMap<string, string>): Steps<Needs> {
    const unit = yield* this.parsing(text);
    const pictures = new Set<string>();
    const look = (sections: readonly Section[]): void => {
      for (const { path } of sections.flatMap(picturesOf)) pictures.add(path);
    };
    look(unit.sections);
    for (const [path, other] of units) {
      const { sections } = yield* this.parsing(other);
      look(sections.map((section) => adopt(section, section.heading, path)));
    }
    return { units: foreignPaths(unit), pictures: [...pictures] };
  }

  /** Reads a text once: asking what it needs and reading it is one effort. */
  private *parsing(text: string): Steps<Unit> {
    const known = this.parsed.find((each) => each.text === text);
    if (known) return known;
    const unit = yield* told(readingUnit(text, this.parsed), "Reading");
    this.parsed = [unit, ...this.parsed].slice(0, 8);
    return unit;
  }

  private parsed: readonly Unit[] = [];

  view(reading: Reading, activity: DealtActivity, deal: Deal, view: View): readonly Sheet[] {
    const { checked, press } = this.opened(reading);
    const found = checked.find(({ plan }) => plan.index === activity.index);
    if (!found?.plan.kind) return [];
    const { kind } = found.plan;
    if (view === "papers") return kind.papers(found.dealt, press);
    if (view !== "dealt") return kind.solutionSheets(found.dealt, deal, view, press);
    const [first] = printRuns(kind, found.dealt, deal, press);
    return first?.sheets ?? [];
  }

  draw(reading: Reading, sheet: Sheet, prefix: string): string {
    return renderSvg(sheet, this.typeface, reading.around.pictures, { prefix });
  }

  find(files: readonly string[], mark: string): readonly Found[] {
    return findMark(
      files.flatMap((text) => readPiecesFile(text) ?? []),
      mark,
    );
  }

  deals(files: readonly string[], mark: string): readonly FoundDeal[] {
    return findDeals(
      files.flatMap((text) => readPiecesFile(text) ?? []),
      mark,
    );
  }

  async reprint(found: readonly Found[], pictures: ReadonlyMap<string, Uint8Array>): Promise<Uint8Array> {
    const { renderPdf } = await import("../render/pdf");
    const sheets = reprintSheets(found, "Print at 100 %: this bar is 100 mm long.", this.typeface);
    return renderPdf(sheets, this.typeface, pictures, { title: found.map(({ mark }) => mark).join(", "), lang: "und" });
  }

  blockers(reading: Reading, only?: string): readonly Finding[] {
    return this.concerning(reading, "error", only);
  }

  concerning(reading: Reading, severity: Finding["severity"], only?: string): readonly Finding[] {
    const { findings, unit, plan } = this.opened(reading);
    const asked = findings.filter((each) => each.severity === severity);
    return concerning(asked, unit, plan, only);
  }

  async make(reading: Reading, options: MakeOptions): Promise<readonly MadeFile[]> {
    const blockers = this.blockers(reading, options.only);
    if (blockers.length > 0) throw new BlockedError(blockers);
    const { checked, press, file, around } = this.opened(reading);
    const printables = checked.flatMap(({ plan: { kind, request }, dealt }): Printable[] =>
      kind && request && dealt.deals.length > 0
        ? [{ kind, title: request.title, seed: request.options.value.seed, lang: request.explains, dealt }]
        : [],
    );
    // Loaded when it is first needed: reading and checking do without the writer of PDF.
    const { makeFiles } = await import("./files");
    const stations = planStations(this.opened(reading).unit, this.opened(reading).plan);
    const unit = { name: file.name, stations, ...(around.pieces === undefined ? {} : { pieces: around.pieces }) };
    return makeFiles(unit, printables, press, options);
  }

  /** A reading of this bench; one that went through other hands is read again. */
  private opened(reading: Reading): OpenReading {
    return isOpen(reading) ? reading : this.read(reading.file, reading.around);
  }
}

function isOpen(reading: Reading): reading is OpenReading {
  return "checked" in reading && "press" in reading;
}
