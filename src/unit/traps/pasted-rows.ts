import type { LineIndex } from "../../base/range";
import { stops } from "../../base/stops";
import type { Problems } from "../problems";
import { isShort } from "./pair-lines";
import { type Line, noPairs } from "./styles";

/*
 * Rows of a table program pasted as they are, of which each was meant as a pair: two texts with quotation marks and a comma between
 * them, two words with a comma alone, and three columns with tabs, of which one is a remark.
 */

/** What would be read otherwise in a pair. */
const otherwise = /[=＝|｜<`\\]|^(?:[-+*>#[]|\d{1,9}[.)](?:\s|$))/u;

const isText = (cell: string): boolean => /\p{L}/u.test(cell) && !otherwise.test(cell);

const sentence = new RegExp(String.raw`\s.*[${stops}]$`, "u");

const isSentence = (cell: string): boolean => sentence.test(cell);

interface Rows {
  readonly cells: readonly (readonly string[])[];
  /** Hardly anything else writes such lines. */
  readonly sure: boolean;
}

/** Whether a paragraph is such rows, which is told then. */
export function pastedRows(lines: LineIndex, found: readonly Line[], problems: Problems): boolean {
  const [head] = found;
  const rows = head && (signedRows(found, ",") ?? signedRows(found, ";") ?? tabbedRows(found));
  const items = rows && itemsOf(rows.cells, lines.newline);
  if (!head || !items) return false;
  problems.tell("pairs", "not-an-item", { start: head.start, end: head.start + head.text.length }, noPairs, {
    title: items.remarks
      ? `Make pairs of these lines, with the ${items.remarks === "examples" ? "examples below them" : "remarks in comments"}`
      : found.length > 1
        ? "Make items of these lines"
        : "Make it an item",
    edits: found.map(({ start, text }, i) => ({
      range: { start: lines.start(lines.lineAt(start)), end: start + text.length },
      text: items.texts[i] ?? text,
    })),
    ...(rows.sure && !items.remarks ? {} : { unsure: true as const }),
  });
  return true;
}

/** `"a roda","the wheel"`, all in quotation marks or only where a comma is in it; without any, few words in three rows at least. */
function signedRows(found: readonly Line[], sign: "," | ";"): Rows | undefined {
  if (!found.every(({ text }) => text.includes(sign))) return undefined;
  const rows = found.map(({ text }) => cellsOf(text, sign));
  if (!rows.every((row) => row !== undefined && row.cells.length > 1)) return undefined;
  const all = rows.flatMap((row) => row ?? []);
  const cells = all.map((row) => row.cells);
  const spaced = all.some((row) => row.spaced);
  const several = found.length > 1;
  if (all.every(({ quoted, cells }) => quoted === cells.length))
    return several || !spaced ? { cells, sure: several && !spaced } : undefined;
  if (spaced) return undefined;
  if (all.some(({ quoted }) => quoted > 0)) return several ? { cells, sure: false } : undefined;
  const isRow = (row: readonly string[]): boolean =>
    row.length === 2 && row.every((cell) => isShort(cell) && cell.split(" ").length <= 4);
  return sign === "," && found.length > 2 && cells.every(isRow) ? { cells, sure: false } : undefined;
}

interface Row {
  readonly cells: readonly string[];
  /** How many stand in quotation marks, in which two of them are one. */
  readonly quoted: number;
  /** Whether white space stands round a sign. */
  readonly spaced: boolean;
}

function cellsOf(text: string, sign: string): Row | undefined {
  const cells: string[] = [];
  let quoted = 0;
  for (let at = 0; at <= text.length; at++) {
    const cell = /"((?:[^"]|"")*)"[ \t]*/y;
    cell.lastIndex = at + (/^[ \t]*/.exec(text.slice(at))?.[0].length ?? 0);
    const inside = cell.exec(text)?.[1];
    const end = inside === undefined ? text.indexOf(sign, at) : cell.lastIndex;
    const until = end < 0 ? text.length : end;
    if (inside === undefined && text.slice(at, until).includes('"')) return undefined;
    if (until < text.length && text.charAt(until) !== sign) return undefined;
    cells.push(inside === undefined ? text.slice(at, until).trim() : inside.replaceAll('""', '"').trim());
    if (inside !== undefined) quoted++;
    at = until;
  }
  return { cells, quoted, spaced: new RegExp(`${sign}\\s|\\s${sign}`).test(text.replace(/"(?:[^"]|"")*"/g, '""')) };
}

function tabbedRows(found: readonly Line[]): Rows | undefined {
  if (!found.every(({ text }) => text.includes("\t"))) return undefined;
  const cells = found.map(({ text }) => text.split(/[^\S\n]*\t[^\S\t\n]*/u));
  return cells.some(({ length }) => length === 3) ? { cells, sure: false } : undefined;
}

/** The items of rows of two columns, or of three of which one is a remark; undefined where they cannot be such. */
function itemsOf(
  cells: Rows["cells"],
  newline: string,
): { readonly texts: readonly string[]; readonly remarks?: "examples" | "remarks" } | undefined {
  if (cells.some(({ length }) => length > 3)) return undefined;
  const columns = cells.some(({ length }) => length === 3) ? 3 : 2;
  const aside = columns === 3 ? asideOf(cells) : 3;
  const pairs = cells.map((row) => row.filter((_, i) => i !== aside));
  const isPair = (row: readonly string[]): boolean => row.length === 2 && row.every(isText);
  if (!pairs.every(isPair) || (columns === 3 && !pairs.flat().every(isShort))) return undefined;
  const texts = pairs.map((row) => `- ${row.join(" = ")}`);
  if (columns < 3) return { texts };
  const remarks = cells.map((row) => row[aside] ?? "");
  if (remarks.some((remark) => /--|[<>`\t]|^(?:allow|by)\b/i.test(remark))) return undefined;
  const examples = remarks.every((remark) => remark === "" || (isSentence(remark) && !otherwise.test(remark)));
  const under = (remark: string): string => (examples ? `${newline}  - ${remark}` : ` <!-- ${remark} -->`);
  return {
    texts: texts.map((text, i) => (remarks[i] ? text + under(remarks[i]) : text)),
    remarks: examples ? "examples" : "remarks",
  };
}

/** Which of three columns is no side of a pair: numbers in the first, kinds of words as `n.` in the second, else the last. */
function asideOf(cells: Rows["cells"]): number {
  if (cells.every(([first = ""]) => /^\d+[.)]?$/.test(first))) return 0;
  return cells.every(([, second = ""]) => /^\p{L}{1,6}\.$/u.test(second)) ? 1 : 2;
}
