import { widthOf } from "../../../base/columns";
import { type Blocks, lastLine } from "./blocks";

type Align = "left" | "right" | "centre";

/**
 * Bars of each table under each other. A table with a row that has too many cells stays, and so does one with a line without
 * bars, which may be no row: their findings show where.
 */
export function alignTables({ lines, tokens }: Blocks): readonly string[] {
  const out = [...lines];
  for (const { type, level, map } of tokens) {
    if (type !== "table_open" || level !== 0 || !map) continue;
    const after = lastLine(lines, map);
    const rows = lines.slice(map[0], after).map(cellsOf);
    const columns = rows[0]?.length ?? 0;
    const barless = lines.slice(map[0], after).some((line) => !/(?<!\\)\|/.test(line));
    if (barless || rows.some((row) => row.length > columns)) continue;
    aligned(rows, columns).forEach((line, i) => {
      out[map[0] + i] = line;
    });
  }
  return out;
}

function aligned(rows: readonly (readonly string[])[], columns: number): readonly string[] {
  const [, delimiters = []] = rows;
  const numbers = Array.from({ length: columns }, (_, i) => i);
  const aligns = numbers.map((i) => alignOf(delimiters[i] ?? "-"));
  const texts = rows.filter((_, i) => i !== 1);
  const widths = numbers.map((i) => Math.max(3, ...texts.map((row) => widthOf(row[i] ?? ""))));
  return rows.map((row, r) => {
    const cells = numbers.map((i) =>
      r === 1
        ? delimiter(delimiters[i] ?? "-", widths[i] ?? 3)
        : padded(row[i] ?? "", widths[i] ?? 3, aligns[i] ?? "left"),
    );
    return `| ${cells.join(" | ")} |`;
  });
}

/** Cells as written, without the white space around them; the same bars count as in reading. */
function cellsOf(line: string): readonly string[] {
  let text = line.replace(/^\uFEFF/, "").trim();
  if (text.startsWith("|")) text = text.slice(1);
  if (text.endsWith("|") && !text.endsWith("\\|")) text = text.slice(0, -1);
  return text.split(/(?<!\\)\|/).map((cell) => cell.trim());
}

function alignOf(delimiterCell: string): Align {
  if (!delimiterCell.endsWith(":")) return "left";
  return delimiterCell.startsWith(":") ? "centre" : "right";
}

function delimiter(written: string, width: number): string {
  const [left, right] = [written.startsWith(":") ? ":" : "", written.length > 1 && written.endsWith(":") ? ":" : ""];
  return left + "-".repeat(width - left.length - right.length) + right;
}

function padded(text: string, width: number, align: Align): string {
  const room = width - widthOf(text);
  const before = align === "right" ? room : align === "centre" ? Math.floor(room / 2) : 0;
  return " ".repeat(before) + text + " ".repeat(room - before);
}
