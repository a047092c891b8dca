import { quotedList } from "../../activities/report";
import type { Report, Rule } from "../../base/finding";
import { isForm } from "../../match/form";
import type { FormsTable, Tie, Unit } from "../../unit/unit";
import { type CheckContext, sectionsInUse } from "../context";
import { nearest } from "../nearest";

export const unknownForm: Rule<CheckContext> = {
  code: "unknown-form",
  severity: "error",
  title: "A tie to a form that no table has",
  why: '`[meço](#medir)` ties a word to the column “medir” of a forms table, and needs the word to stand in that column. Where it stands there twice, the person is named: `[meço](#medir "eu")`; where two tables have the column, the section: `[meço](#Verbs/medir)`.',
  example: {
    wrong:
      "## Verbs\n\n|    | medir |\n| -- | ----- |\n| eu | meço  |\n\n## Story\n\n- [x] Eu [meço](#mdir) a conta.\n- [ ] Ela paga.\n",
    right:
      "## Verbs\n\n|    | medir |\n| -- | ----- |\n| eu | meço  |\n\n## Story\n\n- [x] Eu [meço](#medir) a conta.\n- [ ] Ela paga.\n",
  },
  check: (context) => {
    const { unit } = context;
    const tables = unit.sections.flatMap((section) =>
      section.tables.map((table) => ({ section: section.name, table })),
    );
    // Links to anchors are ordinary Markdown: without a forms table they mean nothing here.
    if (tables.length === 0) return [];
    const ties = unit.sections.flatMap(({ pairs, statements, events }) =>
      [...pairs, ...statements, ...events, ...events.flatMap(({ free }) => free)].flatMap((item) => item.ties),
    );
    const used = sectionsInUse(context);
    return ties.flatMap((tie): Report[] => {
      const inUse = used.some(({ range }) => range.start <= tie.range.start && tie.range.start < range.end);
      const fault = faultOf(tie, tables, unit);
      return fault && (inUse || fault.near) ? [fault.report] : [];
    });
  },
};

type NamedTable = { readonly section: string; readonly table: FormsTable };

function faultOf(tie: Tie, tables: readonly NamedTable[], unit: Unit): { report: Report; near: boolean } | undefined {
  const own = tables.filter(({ section }) => tie.section === undefined || section === tie.section);
  const columns = own.flatMap(({ section, table }) =>
    table.columns.map((column, index) => ({ section, table, column, index })),
  );
  const found = columns.filter(({ column }) => column.text === tie.column);
  const target = (text: string): string => (/\s/.test(text) ? `<#${text}>` : `#${text}`);
  const angled = unit.text.charAt(tie.target.start - 1) === "<";
  const place = angled ? { start: tie.target.start - 1, end: tie.target.end + 1 } : tie.target;
  const rename = (text: string, title: string, preferred = false) => ({
    title,
    edits: [{ range: place, text: target(text) }],
    preferred,
  });
  const [first, second] = found;
  if (!first) {
    // Up to its first slash a tie names a section, unless there is none with that name.
    const whole = tie.section === undefined ? tie.column : `${tie.section}/${tie.column}`;
    const parted = tie.section !== undefined && own.length === 0 ? sectionsWith(whole, tables) : [];
    if (parted.length > 0) {
      const message = `A column with a slash in its name is named with its section: “${whole}” is a column of ${parted.map((name) => `“${name}”`).join(" and ")}.`;
      const fixes = parted
        .filter((name) => !name.includes("/"))
        .map((name) => rename(`${name}/${whole}`, `Name “${name}” too`, parted.length === 1));
      return { report: { range: tie.target, message, fixes }, near: true };
    }
    const near = nearest(
      tie.column,
      columns.map(({ column }) => column.text),
      true,
    )[0];
    const message = `No forms table${tie.section === undefined ? "" : ` of “${tie.section}”`} has a column “${tie.column}”.`;
    const section = tie.section === undefined ? "" : `${tie.section}/`;
    // A column that is merely named alike may be another verb, without this form.
    const isSure = columns.some(
      ({ column, table, index }) =>
        column.text === near && table.forms.some((forms) => isForm(tie, forms[index]?.text ?? "")),
    );
    const fixes = near === undefined ? [] : [rename(`${section}${near}`, `Change to “${near}”`, isSure)];
    return { report: { range: tie.target, message, fixes }, near: near !== undefined };
  }
  if (second) {
    const where = found.every(({ section }) => section === first.section)
      ? `Two tables of “${first.section}” have a column “${tie.column}”, so that this may be the form of either.`
      : `Two tables have a column “${tie.column}”: name the section too.`;
    const sections = [...new Set(found.map(({ section }) => section))];
    const fixes =
      sections.length === 1
        ? []
        : sections.map((section) => rename(`${section}/${tie.column}`, `Take the one of “${section}”`));
    return { report: { range: tie.target, message: where, fixes }, near: true };
  }
  const persons = first.table.persons.filter((_, row) =>
    isForm(tie, first.table.forms[row]?.[first.index]?.text ?? ""),
  );
  // All between the column and the closing bracket is the person.
  const title = (person: string) => ({
    title: `It is the form for “${person}”`,
    edits: [{ range: { start: place.end, end: tie.range.end - 1 }, text: ` "${person}"` }],
  });
  const { table, index } = first;
  if (tie.person !== undefined) {
    if (persons.some(({ text }) => text === tie.person)) return undefined;
    const row = table.persons.findIndex(({ text }) => text === tie.person);
    const wanted = respelt(tie, unit, row < 0 ? [] : [table.forms[row]?.[index]?.text ?? ""]);
    const message = `“${tie.text}” is not the form of “${tie.column}” for “${tie.person}”.`;
    return {
      report: { range: tie.range, message, fixes: [...persons.map(({ text }) => title(text)), ...wanted] },
      near: true,
    };
  }
  if (persons.length === 0) {
    const fixes = respelt(
      tie,
      unit,
      table.forms.map((row) => row[index]?.text ?? ""),
    );
    const message = `“${tie.text}” is no form of “${tie.column}” in its table.`;
    return { report: { range: tie.range, message, fixes }, near: true };
  }
  if (persons.length === 1) return undefined;
  const message = `“${tie.text}” is the form of “${tie.column}” for ${quotedList(persons.map(({ text }) => text))}: say for which.`;
  return { report: { range: tie.range, message, fixes: persons.map(({ text }) => title(text)) }, near: true };
}

function sectionsWith(column: string, tables: readonly NamedTable[]): readonly string[] {
  const found = tables.filter(({ table }) => table.columns.some(({ text }) => text === column));
  return [...new Set(found.map(({ section }) => section))];
}

/** The form that is spelt nearly as in the tie, with its capital; none where the tie has signs of Markdown in it. */
function respelt({ text, range }: Tie, unit: Unit, forms: readonly string[]) {
  const place = { start: range.start + 1, end: range.start + 1 + text.length };
  const near = nearest(
    text,
    forms.filter((form) => form !== ""),
    true,
  )[0];
  if (near === undefined || unit.text.slice(place.start, place.end) !== text) return [];
  const put = /^\p{Lu}/u.test(text) ? near.replace(/^./u, (letter) => letter.toUpperCase()) : near;
  return [{ title: `Change to “${put}”`, edits: [{ range: place, text: put }] }];
}
