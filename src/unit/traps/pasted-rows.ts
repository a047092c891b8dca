import type { LineIndex } from "../../base/range";
import type { Problems } from "../problems";
import type { Line } from "./styles";

/*
 * Rows of a table program pasted as they are, of which each was meant as a pair: two texts with quotation marks and a comma between
 * them, two words with a comma alone, and three columns with tabs, of which one is a remark.
 */

/** `"a roda","the wheel"`: texts of a row in quotation marks, in which two of them are one. */
const quotedRow = /^"(?:[^"]|"")+"(?:[,;\t]"(?:[^"]|"")*")+$/u;
const quotedCell = /"((?:[^"]|"")*)"[,;\t]?/gu;

/** What would be read otherwise in a pair. */
const otherwise = /[=＝|｜<`\\]|^(?:[-+*>#[]|\d{1,9}[.)](?:\s|$))/u;

const isText = (cell: string): boolean => /\p{L}/u.test(cell) && !otherwise.test(cell);

const isShort = (cell: string): boolean => cell.split(/\s+/).length <= 8 && !/[.!?:;,]$/.test(cell);

const isSentence = (cell: string): boolean => /\s.*[.!?…。！？।؟]$/u.test(cell);

interface Rows {
  readonly cells: readonly (readonly string[])[];
  /** Hardly anything else writes such lines. */
  readonly sure?: true;
}

/** Whether a paragraph is such rows, which is told then. */
export function pastedRows(lines: LineIndex, found: readonly Line[], problems: Problems): boolean {
  const [head] = found;
  const rows = head && found.length > 1 ? (quotedRows(found) ?? commaRows(found) ?? tabbedRows(found)) : undefined;
  const items = rows && itemsOf(rows.cells, lines.newline);
  if (!head || !items) return false;
  problems.tell(
    "pairs",
    "not-an-item",
    { start: head.start, end: head.start + head.text.length },
    "These are no pairs: each begins with a hyphen and a space, and “ = ” stands between its sides.",
    {
      title: items.remarks
        ? `Make pairs of these lines, with ${items.remarks} below ${items.remarks === "examples" ? "them" : "in comments"}`
        : "Make items of these lines",
      edits: found.map(({ start, text }, i) => ({
        range: { start: lines.start(lines.lineAt(start)), end: start + text.length },
        text: items.texts[i] ?? text,
      })),
      ...(rows.sure && !items.remarks ? {} : { unsure: true as const }),
    },
  );
  return true;
}

function quotedRows(found: readonly Line[]): Rows | undefined {
  if (!found.every(({ text }) => text.startsWith('"') && quotedRow.test(text))) return undefined;
  const cells = found.map(({ text }) =>
    [...text.matchAll(quotedCell)].map(([, cell = ""]) => cell.replaceAll('""', '"').trim()),
  );
  return { cells, sure: true };
}

function commaRows(found: readonly Line[]): Rows | undefined {
  if (found.length < 3) return undefined;
  const cells = found.map(({ text }) => text.split(/,(?=\S)/u));
  const isRow = (row: readonly string[]): boolean =>
    row.length === 2 && row.every((cell) => isShort(cell) && !/[,\t]|\s$/u.test(cell) && cell.split(" ").length <= 4);
  return cells.every(isRow) ? { cells } : undefined;
}

function tabbedRows(found: readonly Line[]): Rows | undefined {
  if (!found.every(({ text }) => text.includes("\t"))) return undefined;
  const cells = found.map(({ text }) => text.split(/[^\S\n]*\t[^\S\t\n]*/u));
  return cells.some(({ length }) => length === 3) ? { cells } : undefined;
}

/** The items of rows of two columns, or of three of which one is a remark; undefined where they cannot be such. */
function itemsOf(
  cells: Rows["cells"],
  newline: string,
): { readonly texts: readonly string[]; readonly remarks?: "examples" | "remarks" } | undefined {
  const columns = Math.max(...cells.map(({ length }) => length));
  if (columns > 3) return undefined;
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
