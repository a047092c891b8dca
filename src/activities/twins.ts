import { plain, type Run } from "../base/run";
import { Random, upTo } from "../base/seed";
import { fold } from "../match/fold";
import { isForm, raised } from "../match/form";
import { heard } from "../match/heard";
import { answerKey } from "../match/relation";
import type { FormsTable, Phrase, Statement, Tie } from "../unit/unit";
import type { DealRequest } from "./contract";
import { type FormCell, formStatements, isFormStatement } from "./form-statements";
import { assertions, type Claim, claimOf } from "./statements";

/** Whether there is a table in the unit that twins could be made from. */
export function hasForms({ unit, sections }: DealRequest): boolean {
  return [...unit.sections, ...sections].some(({ tables }) => tables.length > 0);
}

/** Makes false twins of true statements with tied forms. */
export class TwinMaker {
  private readonly tables: readonly { readonly section: string; readonly table: FormsTable }[];
  /** What is heard of all statements and of what some statement or correction says is so. */
  private readonly said: ReadonlySet<string>;

  constructor(
    private readonly request: DealRequest,
    readonly all: readonly Statement[],
    private readonly seed: number,
  ) {
    const sections = new Set([...request.unit.sections, ...request.sections]);
    this.tables = [...sections].flatMap(({ name, tables }) => tables.map((table) => ({ section: name, table })));
    // What is right by another table is not wrong.
    const forms = all.some(isFormStatement) ? [...sections].flatMap(formStatements) : [];
    const right = [...all, ...forms].flatMap(assertions);
    this.said = new Set([...right, ...all.map(({ text }) => fold(text))].map(heard));
  }

  canTwin(statement: Statement): boolean {
    return this.twin(statement, this.all.indexOf(statement)) !== undefined;
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
      const own = isFormStatement(statement) ? statement : undefined;
      const cell = own?.cell ?? this.cellOf(tie);
      const at = own?.at ?? placeOf(tie, statement, this.request.unit.text);
      if (!cell || at === undefined) continue;
      const { table, column, row } = cell;
      const order = new Random(`twins/${this.seed}/${number}`).shuffle(upTo(table.persons.length));
      for (const other of order) {
        const wrong = table.forms[other]?.[column];
        if (!wrong || !differs(wrong, cell.form)) continue;
        // A form that begins the sentence has a capital in the twin as well.
        const begins = fold(tie.text) !== fold(cell.form.text);
        const shown = begins ? raised(wrong.text, this.request.teaches) : wrong.text;
        const runs = replace(statement.runs, at, tie.text.length, shown);
        const text = plain(runs);
        // Another form may make a sentence that is true as well: “Ela mede” beside “Eu meço”; or one that stands there anyway.
        if (this.said.has(heard(fold(text)))) continue;
        return {
          ...claimOf(statement),
          runs,
          text,
          key: answerKey({ ...statement, runs, text }),
          truth: false,
          correction: { runs: embolden(statement.runs, at, tie.text.length), text: statement.text, source: tie.range },
          twin: {
            wrong: shown,
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
  private cellOf(tie: Tie): FormCell | undefined {
    const cells = this.tables
      .filter(({ section }) => tie.section === undefined || section === tie.section)
      .flatMap(({ table }) =>
        table.columns.flatMap((head, column) =>
          head.text === tie.column
            ? table.forms.flatMap((forms, row) => {
                const form = forms[column];
                const named = tie.person === undefined || table.persons[row]?.text === tie.person;
                return form && named && isForm(tie, form.text) ? [{ table, row, column, form }] : [];
              })
            : [],
        ),
      );
    return cells.length === 1 ? cells[0] : undefined;
  }
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
