import type { Steps } from "../../base/steps";
import { type Env, scan } from "../inline";
import { drop, type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import type { FormsTable, Section } from "../unit";

/*
 * Ties to columns of forms tables that tie nothing as they are written. They are looked at when all tables are read.
 */

/** What ties may lead to: for each column of any table its forms in small letters, and all persons. */
class Columns {
  private readonly forms = new Map<string, Set<string>>();
  private readonly persons = new Set<string>();

  constructor(tables: readonly FormsTable[]) {
    for (const { columns, persons, forms } of tables) {
      columns.forEach(({ text }, i) => {
        const own = this.forms.get(text) ?? new Set<string>();
        for (const row of forms) for (const { text: form } of row[i] ? [row[i]] : []) own.add(form.toLowerCase());
        this.forms.set(text, own);
      });
      for (const { text } of persons) if (text !== "") this.persons.add(text);
    }
  }

  has(name: string): boolean {
    return this.forms.has(columnOf(name));
  }

  hasForm(name: string, form: string): boolean {
    return this.forms.get(columnOf(name))?.has(form.toLowerCase()) ?? false;
  }

  /** The longest name of a column that a text begins with, and no longer word. */
  beginning(text: string): string | undefined {
    const found = [...this.forms.keys()].filter(
      (name) => name !== "" && text.startsWith(name) && !/^[\p{L}\p{M}\p{N}]/u.test(text.slice(name.length)),
    );
    return found.sort((a, b) => b.length - a.length)[0];
  }

  /** `trazer eu`, `trazer, eu`, `trazer “eu”`: a column and a person behind it. */
  parted(name: string): { readonly column: string; readonly person: string } | undefined {
    if (this.has(name)) return undefined;
    const bare = name.replace(/[“”„‟«»‘’‚‹›]$/u, "").trimEnd();
    for (const person of this.persons) {
      const before = bare.endsWith(person) ? bare.slice(0, -person.length) : "";
      const column = before.replace(/[\s,;:/]*[“”„‟«»‘’‚‹›]?\s*$/u, "");
      if (column !== before && this.has(column)) return { column, person };
    }
    return undefined;
  }
}

/** `Verbs/pedir` names the column with the section of its table. */
function columnOf(name: string): string {
  return name.slice(name.indexOf("/") + 1);
}

function target(name: string, title: string): string {
  return `(${/\s/.test(name) ? `<#${name}>` : `#${name}`}${title})`;
}

/** Looks at texts that are printed, in which something like a link stands. */
export function* nearlyTies(
  sources: readonly SourceText[],
  sections: readonly Section[],
  env: Env,
  problems: Problems,
): Steps<void, undefined> {
  if (sources.length === 0) return;
  const columns = new Columns(sections.flatMap(({ tables }) => tables));
  for (const source of sources) {
    yield* nearlyTie(source, columns, env, problems);
    yield;
  }
}

function* nearlyTie(source: SourceText, columns: Columns, env: Env, problems: Problems): Steps<void, undefined> {
  const { mask, links } = scan(source.text, env);
  const tell: Tell = (at, whole, wanted, message) => {
    const range = source.range(at, at + whole.length);
    problems.trap("nearly-a-tie", range, message, write(`Write “${wanted}”`, range, wanted));
  };
  spaced(source, mask, columns, tell);
  yield;
  broken(source, mask, columns, tell);
  yield;
  for (const match of source.text.matchAll(/(?<!!)(\[([^[\]\n]+)\])\(<?([^()<>#"\n]+?)>?([^\S\n]+"[^"\n]*")?\)/gu)) {
    const [whole, text = "", form = "", name = "", title = ""] = match;
    if (!links.some(({ start }) => start === match.index) || !columns.hasForm(decoded(name), form)) continue;
    const wanted = text + target(decoded(name), title);
    tell(
      match.index,
      whole,
      wanted,
      `This is a link and ties nothing; the column has a number sign before it: ${wanted}.`,
    );
  }
  for (const match of source.text.matchAll(
    /(?<!!)(?:(\[[^[\]\n]+\])|(?<=^|\s)\(([^()\n]+)\))\[#[^\S\n]*([^\]\n]*[^\]\s])[^\S\n]*\]/gu,
  )) {
    const [whole, text, round = "", name = ""] = match;
    if (mask[match.index] || !columns.has(name)) continue;
    const wanted = (text ?? `[${round}]`) + target(name, "");
    tell(
      match.index,
      whole,
      wanted,
      `This ties nothing and is printed as it stands; ${text ? "with round brackets" : "the other way round"} it is ${wanted}.`,
    );
  }
}

type Tell = (at: number, whole: string, wanted: string, message: string) => void;

/** `[peço]{#pedir}`, `peço(#pedir)` and `[peço](#pedir` without its end. */
function broken({ text: all }: SourceText, mask: readonly boolean[], columns: Columns, tell: Tell): void {
  const say = (at: number, whole: string, wanted: string, how: string): void => {
    if (!mask[at]) tell(at, whole, wanted, `This ties nothing and is printed as it stands; ${how} it is ${wanted}.`);
  };
  for (const { index, 0: whole, ...match } of all.matchAll(/(?<!!)(\[[^[\]\n]+\])\{\s*#\s*([^{}\n]*[^{}\s])\s*\}/gu))
    if (columns.has(match[2] ?? "")) say(index, whole, match[1] + target(match[2] ?? "", ""), "with round brackets");
  for (const { index, 0: whole, ...match } of all.matchAll(/([\p{L}\p{M}]+)[({]#([^(){}\n]+)[)}]/gu))
    if (columns.hasForm(match[2] ?? "", match[1] ?? ""))
      say(index, whole, `[${match[1]}]${target(match[2] ?? "", "")}`, "with square brackets round the form");
  for (const { index, 0: head, 1: text } of all.matchAll(/(?<!!)(\[[^[\]\n]+\])\(<?#/gu)) {
    const behind = all.slice(index + head.length);
    const name = columns.beginning(behind);
    if (name === undefined || /^[^()\n]*\)/u.test(behind)) continue;
    // A person that stands behind it already belongs to it.
    const [title = ""] = /^>?[ \t]+"[^"()\n]+"(?=\s|$)/u.exec(behind.slice(name.length)) ?? [];
    const person = title.replace(/^>/, "");
    say(index, head + name + title, text + target(name, person), "with its second bracket");
  }
}

/** `[peço] (#pedir)`, `[trink](#to drink)`: white space where a link has none. */
function spaced({ text: all }: SourceText, mask: readonly boolean[], columns: Columns, tell: Tell): void {
  for (const match of all.matchAll(/(\[[^[\]\n]+\])(\s*)\((\s*#\s*[^()<>"\n]*?)(\s+"[^"\n]*")?\s*\)/gu)) {
    const [whole, text = "", , written = "", title = ""] = match;
    const name = written.replace(/^\s*#\s*/, "").trim();
    if (mask[match.index] || name === "") continue;
    const parted = title === "" ? columns.parted(name) : undefined;
    const wanted = text + (parted ? target(parted.column, ` "${parted.person}"`) : target(name, title));
    const bare = /\s/.test(name) && match[2] === "" ? "in angle brackets" : "without white space";
    const how = parted ? "with the person in quotation marks" : bare;
    tell(match.index, whole, wanted, `This ties nothing and is printed as it stands; ${how} it is ${wanted}.`);
  }
}

function decoded(name: string): string {
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

/** Ties to a column of a table whose top left cell is not empty, so that it holds no forms. Where others do, the tie is told. */
export function fullCorners(
  sources: readonly SourceText[],
  sections: readonly Section[],
  heads: readonly (readonly SourceText[])[],
  problems: Problems,
): void {
  if (sources.length === 0 || sections.some(({ tables }) => tables.length > 0)) return;
  const links = sources.flatMap(({ text }) => [...text.matchAll(/\]\(<?#([^()<>"\n]+?)>?(?:\s+"[^"\n]*")?\)/gu)]);
  const names = new Set(links.map(([, name = ""]) => columnOf(decoded(name))));
  for (const [corner, ...columns] of heads) {
    const column = columns.find(({ text }) => names.has(text));
    if (!corner || !column || corner.text === "") continue;
    if (problems.list.some(({ code, range }) => code === "not-a-table" && range.start === corner.whole.start)) continue;
    problems.trap(
      "not-a-table",
      corner.whole,
      `This is no table of forms, so that ties to “${column.text}” mean nothing: its top left cell is empty.`,
      drop("Empty this cell", corner.whole),
    );
  }
}
