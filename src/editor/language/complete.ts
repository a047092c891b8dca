import { lineStart } from "../../base/range";
import { isForm } from "../../match/form";
import { beginsSentence } from "../../unit/ties";
import type { FormsTable, Section, Unit } from "../../unit/unit";
import { codeOffers, severityOffers } from "./codes";
import { columnOf } from "./names/mentions";
import { personTitle, pictureTarget, tieTarget } from "./names/writing";

/** One thing to offer. Offsets are UTF-16 units of the text. */
export interface Offer {
  readonly label: string;
  readonly kind: "column" | "person" | "code" | "value" | "picture";
  readonly insert: string;
  /** What it is, in a few words, beside the label. */
  readonly detail: string;
  /** Markdown. */
  readonly documentation: string;
  readonly start: number;
  readonly end: number;
  /** More can be offered once this is in. */
  readonly more: boolean;
}

/** What is around a unit or was found in it. */
export interface Nearby {
  /** Codes of findings in the line. */
  readonly codes?: readonly string[];
  /** Pictures of the workspace, by their paths from the unit's folder. */
  readonly pictures?: readonly string[];
}

/**
 * What can stand at the offset in prose: columns behind `](#`, persons behind them, paths of pictures, codes in
 * `<!-- allow `; and codes and severities under `severities:` and `allow:`. `unit` may be older than `text`.
 */
export function offersAt(text: string, offset: number, unit: Unit, near: Nearby = {}): readonly Offer[] {
  const start = lineStart(text, offset);
  const before = text.slice(start, offset);
  const after = /^[^\r\n]*/.exec(text.slice(offset))?.[0] ?? "";
  return (
    columnOffers(unit, before, after, offset) ??
    personOffers(unit, before, after, offset) ??
    pictureOffers(before, after, offset, near.pictures ?? []) ??
    remarkOffers(before, after, offset, near.codes ?? []) ??
    remarkWords(before, after, offset) ??
    severityOffers(text, start, before, after, offset) ??
    []
  );
}

interface Column {
  readonly section: Section;
  readonly table: FormsTable;
  readonly index: number;
  readonly name: string;
}

function columnsOf(unit: Unit): readonly Column[] {
  return unit.sections.flatMap((section) =>
    section.tables.flatMap((table) =>
      table.columns.map(({ text: name }, index): Column => ({ section, table, index, name })),
    ),
  );
}

/** Persons for whom a text is the form of a column. */
function personsFor({ table, index }: Column, word: Word): readonly string[] {
  return table.persons.flatMap(({ text }, row) => (isForm(word, table.forms[row]?.[index]?.text ?? "") ? [text] : []));
}

type Word = Parameters<typeof isForm>[0];

/** The word of a tie that is being written, with what stands before it in its line. */
function wordOf(text: string, before: string): Word {
  const own = before.replace(/^[\s>]*(?:[-*+]|\d{1,9}[.)])\s+/u, "");
  return beginsSentence(own) ? { text, opens: true } : { text };
}

function columnOffers(unit: Unit, before: string, after: string, offset: number): readonly Offer[] | undefined {
  const match = /\[([^\]]*)\]\((<?#[^)>"]*)$/u.exec(before);
  if (!match || (/\s/.test(match[2] ?? "") && !match[2]?.startsWith("<"))) return undefined;
  const [, written = "", typed = ""] = match;
  const word = wordOf(written, before.slice(0, match.index));
  const all = columnsOf(unit);
  // Columns that have the word come first.
  const fitting = all.filter((column) => personsFor(column, word).length > 0);
  const rest = typed.startsWith("<") ? (/^[^>)"]*>?/u.exec(after)?.[0] ?? "") : (/^[^\s)">]*/u.exec(after)?.[0] ?? "");
  return [...fitting, ...all.filter((column) => !fitting.includes(column))].flatMap((column): Offer[] => {
    const shared = all.filter(({ name }) => name === column.name).length > 1;
    // Up to its first slash a tie names a section.
    const parted = column.name.includes("/");
    const target = tieTarget(column.name, shared || parted ? column.section.name : undefined);
    if (target === undefined) return [];
    const persons = personsFor(column, word);
    const [person] = persons;
    // Where the form stands once, the column says all; else the person follows, if there is room for it.
    const title = persons.length > 1 && person !== undefined && !/^\s*"/.test(after.slice(rest.length));
    return [
      {
        label: shared || parted ? `${column.section.name}/${column.name}` : column.name,
        kind: "column",
        insert: title ? `${target} "` : target,
        detail: persons.length > 0 ? persons.join(", ") : column.section.name,
        documentation: formsList(column),
        start: offset - typed.length,
        end: offset + rest.length,
        more: title,
      },
    ];
  });
}

function formsList({ table, index }: Column): string {
  return table.persons.map(({ text }, row) => `- ${text}: ${table.forms[row]?.[index]?.text ?? "–"}`).join("\n");
}

function personOffers(unit: Unit, before: string, after: string, offset: number): readonly Offer[] | undefined {
  const match = /\[([^\]]*)\]\((?:<#([^>]*)>|#(\S+))[ \t]+"([^"]*)$/u.exec(before);
  if (!match) return undefined;
  const path = match[2] ?? match[3] ?? "";
  const slash = path.indexOf("/");
  const place = columnOf(unit, {
    column: slash < 0 ? path : path.slice(slash + 1),
    ...(slash < 0 ? {} : { section: path.slice(0, slash) }),
  });
  const section = place && unit.sections[place.section];
  const table = place && section?.tables[place.table];
  if (!place || !section || !table) return [];
  const column = { section, table, index: place.column, name: path };
  const fitting = personsFor(column, wordOf(match[1] ?? "", before.slice(0, match.index)));
  const typed = match[4] ?? "";
  const rest = /^[^")\r\n]*"?/u.exec(after)?.[0] ?? "";
  const names = [...fitting, ...table.persons.map(({ text }) => text).filter((name) => !fitting.includes(name))];
  return names.flatMap((name): Offer[] => {
    const title = personTitle(name);
    const row = table.persons.findIndex(({ text }) => text === name);
    if (title === undefined) return [];
    return [
      {
        label: name,
        kind: "person",
        insert: title.slice(1),
        detail: table.forms[row]?.[place.column]?.text ?? "",
        documentation: "",
        start: offset - typed.length,
        end: offset + rest.length,
        more: false,
      },
    ];
  });
}

const pictureStart = /!\[(?:\\.|[^\]\\])*\]\((<?[^)>"]*)$/u;

/** Whether the path of a picture is being written at the offset. */
export function wantsPictures(text: string, offset: number): boolean {
  return pictureStart.test(text.slice(lineStart(text, offset), offset));
}

function pictureOffers(
  before: string,
  after: string,
  offset: number,
  pictures: readonly string[],
): readonly Offer[] | undefined {
  const typed = pictureStart.exec(before)?.[1];
  if (typed === undefined) return undefined;
  const rest = (typed.startsWith("<") ? /^[^>)]*>?/u : /^[^\s)>]*/u).exec(after)?.[0] ?? "";
  return pictures.flatMap((path): Offer[] => {
    const insert = pictureTarget(path);
    if (insert === undefined) return [];
    const place = { start: offset - typed.length, end: offset + rest.length };
    return [{ label: path, kind: "picture", insert, detail: "", documentation: "", ...place, more: false }];
  });
}

function remarkOffers(
  before: string,
  after: string,
  offset: number,
  near: readonly string[],
): readonly Offer[] | undefined {
  const match = /<!--[ \t]*allow[ \t]+([a-z-]*)$/.exec(before);
  if (!match) return undefined;
  const typed = match[1] ?? "";
  const rest = /^[a-z-]*/.exec(after)?.[0] ?? "";
  const colon = /^\s*:/.test(after.slice(rest.length));
  return codeOffers(near, (code) => (colon ? code : `${code}: `)).map((offer) => ({
    ...offer,
    start: offset - typed.length,
    end: offset + rest.length,
  }));
}

/** The words that a remark can begin with. */
const remarks: readonly { readonly word: string; readonly insert: string; readonly detail: string }[] = [
  { word: "allow", insert: "allow ", detail: "A finding here is meant, and why" },
  { word: "by", insert: "by: ", detail: "Who wrote it, by a code" },
];

function remarkWords(before: string, after: string, offset: number): readonly Offer[] | undefined {
  const [, gap, typed = ""] = /<!--([ \t]*)([a-z]*)$/.exec(before) ?? [];
  if (gap === undefined) return undefined;
  const rest = /^[a-z]*/.exec(after)?.[0] ?? "";
  return remarks.map(({ word, insert, detail }) => ({
    label: word,
    kind: "value",
    insert: gap === "" ? ` ${insert}` : insert,
    detail,
    documentation: "",
    start: offset - typed.length,
    end: offset + rest.length,
    more: word === "allow",
  }));
}

/** All codes, those of findings at hand first. */
