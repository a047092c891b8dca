import { plain } from "../base/run";
import type { Answer, FormsTable, Section, Statement } from "../unit/unit";
import { told } from "./printed";

/*
 * Statements that forms tables make where nothing else is stated: “medir, nós: medimos” is true, and a false twin of it has the form
 * of another person.
 */

/** A cell of a forms table. */
export interface FormCell {
  readonly table: FormsTable;
  readonly row: number;
  readonly column: number;
  readonly form: Answer;
}

export interface FormStatement extends Statement {
  readonly cell: FormCell;
  /** Where the form begins in the text. */
  readonly at: number;
}

export function isFormStatement(statement: Statement): statement is FormStatement {
  return "cell" in statement;
}

const made = new WeakMap<Section, readonly FormStatement[]>();

/** What the forms tables of a section say. The same objects at each call; empty cells say nothing. */
export function formStatements(section: Section): readonly FormStatement[] {
  const known = made.get(section);
  if (known) return known;
  const statements = section.tables.flatMap((table) =>
    table.forms.flatMap((forms, row) =>
      forms.flatMap((form, column): FormStatement[] => {
        const [verb, person] = [table.columns[column], table.persons[row]];
        if (!form || !verb || !person || form.text === "") return [];
        const { range } = form;
        const before = [...told(verb), { text: ", " }, ...told(person), { text: ": " }];
        const own = told(form);
        const at = plain(before).length;
        const tie = { range, target: range, text: form.text, section: section.name };
        return [
          {
            range,
            block: range,
            mark: range,
            ties: [{ ...tie, column: verb.text, person: person.text }],
            runs: [...before, ...own],
            text: plain([...before, ...own]),
            truth: true,
            cell: { table, row, column, form },
            at,
          },
        ];
      }),
    ),
  );
  made.set(section, statements);
  return statements;
}

/** The statements of some sections, by section: those that are written, or where there is none at all those of forms tables. */
export function statementGroups(sections: readonly Section[]): (readonly Statement[])[] {
  const written = sections.map(({ statements }) => statements);
  return written.some(({ length }) => length > 0) ? written : sections.map(formStatements);
}

/** How a form of the first table gets into a sentence, as an example: `[meço](#medir)`; undefined where there is none. */
export function tieExample(sections: readonly Section[]): string | undefined {
  const [first] = sections.flatMap(formStatements);
  const [tie] = first?.ties ?? [];
  if (!tie) return undefined;
  return `[${tie.text}](${/\s/u.test(tie.column) ? `<#${tie.column}>` : `#${tie.column}`})`;
}
