import type { Range } from "../base/range";
import { plain, type Run } from "../base/run";
import { Random, upTo } from "../base/seed";
import { fold } from "../match/fold";
import { answerKey } from "../match/relation";
import type { Answer, FormsTable, Phrase, Picture, Statement, Tie } from "../unit/unit";
import type { DealRequest } from "./contract";
import { told } from "./printed";
import { takeSpread } from "./supply";

/*
 * Statements as `sort` and `calls` deal them: those that are written, and false twins of true ones that differ in a form
 * of a verb.
 */

/** Something that is true or false. */
export interface Claim {
  /** Empty for a bare picture. */
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** As printed; the alternative text of a bare picture. */
  readonly text: string;
  /** Equal for claims that are the same to a learner. */
  readonly key: string;
  readonly truth: boolean;
  /** What is right instead of a false claim, where it is known. */
  readonly correction?: Correction;
  /** Code of the learner who wrote it. */
  readonly by?: string;
  readonly source: Range;
  /** What it was read from; a twin has that of its true statement. */
  readonly item: Statement;
  /** Set for a false twin: the wrong form, and whose form the right one is. */
  readonly twin?: { readonly wrong: string; readonly right: string; readonly column: string; readonly person: string };
}

export interface Correction {
  readonly runs: readonly Run[];
  readonly text: string;
  readonly source: Range;
}

/** `auto`: as many as it takes that at most 60 % are true. */
export type Twins = "auto" | "none" | number;

export interface ClaimOrder {
  readonly take?: number | undefined;
  readonly twins: Twins;
  /** Statements to keep apart, and how many must be left when nothing says how many to take; 1 if left out. */
  readonly reserve?: number;
  readonly least?: number;
  readonly seed: number;
}

export interface ClaimSupply {
  /** In the order of the unit, a twin right after its true statement. */
  readonly claims: readonly Claim[];
  readonly reserve: readonly Claim[];
  /** Twins that could not be made though they were asked for by number. */
  readonly missingTwins: number;
}

/** Shares of true ones that are fine, and that learners can make use of. About as many true as false is best; own limits. */
export const fineShare = { least: 0.4, most: 0.6 } as const;
export const usableShare = { least: 0.3, most: 0.7 } as const;

/** Share of true ones, 0 to 1; 0.5 for none. */
export function trueShare(claims: readonly Pick<Claim, "truth">[]): number {
  return claims.length === 0 ? 0.5 : claims.filter(({ truth }) => truth).length / claims.length;
}

/**
 * Chooses statements, spread over the sections by the seed, and makes twins of some. With `take` there are so many in all,
 * twins included. What is kept in reserve has no twins.
 */
export function supplyClaims(request: DealRequest, order: ClaimOrder): ClaimSupply {
  const groups = request.sections.map(({ statements }) => statements);
  const all = groups.flat();
  const kept = Math.max(0, Math.min(order.reserve ?? 0, all.length - (order.take ?? order.least ?? 1)));
  const most = Math.min(order.take ?? all.length, all.length - kept);
  const maker = new TwinMaker(request, all, order.seed);
  const wanted = order.twins === "auto" ? undefined : order.twins === "none" ? 0 : order.twins;
  // Each twin takes the place of a statement where `take` says how many there are in all.
  const choose = (count: number): { chosen: readonly Statement[]; twins: Map<Statement, Claim> } => {
    const room = order.take === undefined ? most : Math.max(Math.min(1, most), Math.min(most, order.take - count));
    const chosen = takeSpread(groups, room, String(order.seed));
    return { chosen, twins: maker.twinsOf(chosen, count) };
  };
  let count = wanted ?? 0;
  let { chosen, twins } = choose(count);
  if (wanted === undefined) {
    while (trueShare([...chosen, ...twins.values()]) > fineShare.most) {
      const next = choose(++count);
      if (next.twins.size < count) break;
      ({ chosen, twins } = next);
    }
  } else while (twins.size < count) ({ chosen, twins } = choose(--count));
  const rest = groups.map((group) => group.filter((statement) => !chosen.includes(statement)));
  return {
    claims: chosen.flatMap((statement) => {
      const twin = twins.get(statement);
      return [claimOf(statement), ...(twin ? [twin] : [])];
    }),
    reserve: kept > 0 ? takeSpread(rest, kept, `reserve/${order.seed}`).map(claimOf) : [],
    missingTwins: wanted === undefined ? 0 : wanted - twins.size,
  };
}

export function claimOf(statement: Statement): Claim {
  const { runs, text, truth, correction, by, range, picture } = statement;
  return {
    runs,
    text,
    key: answerKey(statement),
    truth,
    ...(picture ? { picture } : {}),
    // A correction stands in lists only, which tell a picture in words.
    ...(correction && !truth
      ? { correction: { runs: told(correction), text: correction.text, source: correction.range } }
      : {}),
    ...(by ? { by: by.code } : {}),
    source: range,
    item: statement,
  };
}

/** Whether one of two claims gives the other away: a true statement and its twin. */
export function areTwins(a: Claim | undefined, b: Claim | undefined): boolean {
  return a !== undefined && b !== undefined && a.item === b.item;
}

/** Makes false twins of true statements with tied forms. */
class TwinMaker {
  private readonly tables: readonly { readonly section: string; readonly table: FormsTable }[];
  /** What some statement or correction says is so. */
  private readonly asserted: ReadonlySet<string>;

  constructor(
    private readonly request: DealRequest,
    private readonly all: readonly Statement[],
    private readonly seed: number,
  ) {
    const sections = new Set([...request.unit.sections, ...request.sections]);
    this.tables = [...sections].flatMap(({ name, tables }) => tables.map((table) => ({ section: name, table })));
    this.asserted = new Set(all.flatMap(assertions));
  }

  /** At most `count` twins, of statements chosen by the seed. */
  twinsOf(statements: readonly Statement[], count: number): Map<Statement, Claim> {
    const made = new Map<Statement, Claim>();
    for (const i of new Random(`twins/${this.seed}`).shuffle(upTo(this.all.length))) {
      const statement = this.all[i];
      if (made.size === count || !statement || !statements.includes(statement)) continue;
      const twin = this.twin(statement, i);
      if (twin && ![...made.values()].some(({ key }) => key === twin.key)) made.set(statement, twin);
    }
    return made;
  }

  private twin(statement: Statement, number: number): Claim | undefined {
    if (!statement.truth) return undefined;
    for (const tie of statement.ties) {
      const cell = this.cellOf(tie);
      const at = placeOf(tie, statement, this.request.unit.text);
      if (!cell || at === undefined) continue;
      const { table, column, row } = cell;
      const order = new Random(`twins/${this.seed}/${number}`).shuffle(upTo(table.persons.length));
      for (const other of order) {
        const wrong = table.forms[other]?.[column];
        if (!wrong || !differs(wrong, cell.form)) continue;
        const runs = replace(statement.runs, at, tie.text.length, wrong.text);
        const text = plain(runs);
        // Another form may make a sentence that is true as well: “Ela mede” beside “Eu meço”.
        if (this.asserted.has(fold(text))) continue;
        return {
          ...claimOf(statement),
          runs,
          text,
          key: answerKey({ ...statement, runs, text }),
          truth: false,
          correction: { runs: embolden(statement.runs, at, tie.text.length), text: statement.text, source: tie.range },
          twin: {
            wrong: wrong.text,
            right: tie.text,
            column: table.columns[column]?.text ?? "",
            person: table.persons[row]?.text ?? "",
          },
        };
      }
    }
    return undefined;
  }

  /** The one cell that a tie leads to: by its person, else the only row in which the form stands. */
  private cellOf(tie: Tie): { table: FormsTable; row: number; column: number; form: Answer } | undefined {
    const cells = this.tables
      .filter(({ section }) => tie.section === undefined || section === tie.section)
      .flatMap(({ table }) =>
        table.columns.flatMap((head, column) =>
          head.text === tie.column
            ? table.forms.flatMap((forms, row) => {
                const form = forms[column];
                const named = tie.person === undefined || table.persons[row]?.text === tie.person;
                return form && named && fold(form.text) === fold(tie.text) ? [{ table, row, column, form }] : [];
              })
            : [],
        ),
      );
    return cells.length === 1 ? cells[0] : undefined;
  }
}

/** What a statement says is so, folded: itself where it is true, else its correction. */
export function assertions(statement: Statement): string[] {
  if (statement.truth) return [fold(statement.text)];
  return statement.correction ? [fold(statement.correction.text)] : [];
}

/** Spelled so that a learner sees another form; `mede` for `Pede` is none. */
function differs(a: Phrase, b: Phrase): boolean {
  const bare = ({ text }: Phrase): string => fold(text).toLowerCase();
  return bare(a) !== bare(b) && bare(a) !== "";
}

/** Where in its statement's printed text a tied word begins; undefined where that cannot be told. */
function placeOf(tie: Tie, statement: Statement, file: string): number | undefined {
  const places: number[] = [];
  for (let at = statement.text.indexOf(tie.text); at >= 0; at = statement.text.indexOf(tie.text, at + 1)) {
    const around = statement.text.slice(0, at).slice(-1) + statement.text.slice(at + tie.text.length).slice(0, 1);
    if (!/[\p{L}\p{N}]/u.test(around)) places.push(at);
  }
  if (places.length < 2) return places[0];
  // The same word stands in it several times: count those before the link, which only the file itself can tell.
  if (!file.startsWith(`[${tie.text}]`, tie.range.start)) return undefined;
  const before = file.slice(statement.range.start, tie.range.start).replace(/\]\([^)]*\)/gu, "]");
  const word = new RegExp(`(?<![\\p{L}\\p{N}])${escaped(tie.text)}(?![\\p{L}\\p{N}])`, "gu");
  return places[[...before.matchAll(word)].length];
}

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|]/g, "\\$&");
}

function replace(runs: readonly Run[], at: number, length: number, text: string): Run[] {
  return splice(runs, at, length, (run, first) => (first ? { ...run, text } : undefined));
}

function embolden(runs: readonly Run[], at: number, length: number): Run[] {
  return splice(runs, at, length, (run) => ({ ...run, bold: true }));
}

/** Runs with the stretch of `length` characters at `at` handed to `change`, run by run. */
function splice(
  runs: readonly Run[],
  at: number,
  length: number,
  change: (run: Run, first: boolean) => Run | undefined,
): Run[] {
  let from = 0;
  let first = true;
  return runs.flatMap((run): Run[] => {
    const start = Math.min(run.text.length, Math.max(0, at - from));
    const end = Math.min(run.text.length, Math.max(0, at + length - from));
    from += run.text.length;
    if (start >= end) return [run];
    const changed = change({ ...run, text: run.text.slice(start, end) }, first);
    first = false;
    const rest = [run.text.slice(0, start), run.text.slice(end)].map((text): Run => ({ ...run, text }));
    const [before, after] = rest;
    return [before, changed, after].filter((each): each is Run => each !== undefined && each.text !== "");
  });
}

/** “True” and “false” as learners say them, by primary language tag; English where there are none. */
const truthWords: Readonly<Record<string, readonly [string, string]>> = {
  en: ["True", "False"],
  es: ["Verdadero", "Falso"],
  fr: ["Vrai", "Faux"],
  de: ["Richtig", "Falsch"],
  pt: ["Verdadeiro", "Falso"],
  it: ["Vero", "Falso"],
};

/** The words in the first of some languages that has them, else in English. */
export function truthWordsIn(...langs: readonly string[]): {
  readonly yes: string;
  readonly no: string;
  readonly lang: string;
} {
  const lang = langs.map((each) => each.toLowerCase().split("-")[0] ?? "").find((each) => truthWords[each]) ?? "en";
  const [yes, no] = truthWords[lang] ?? ["True", "False"];
  return { yes, no, lang };
}

/** A claim as lists tell it, with the code of the learner who wrote it: `… (K7)`. */
export function labelled(claim: Pick<Claim, "runs" | "picture" | "by">): readonly Run[] {
  return claim.by === undefined ? told(claim) : [...told(claim), { text: ` (${claim.by})` }];
}
