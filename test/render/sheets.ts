import { deflateSync } from "node:zlib";
import type { Run } from "../../src/base/run";
import type { QuarterTurn, Sheet, SheetItem, TextItem } from "../../src/page/sheet";

export const quarterTurns: readonly QuarterTurn[] = [0, 1, 2, 3];

/** An A4 sheet of card with these items. */
export function sheetOf(items: readonly SheetItem[], rest: Partial<Sheet> = {}): Sheet {
  return { width: 210, height: 297, stock: "card", label: "Sheet", lang: "pt", ...rest, items };
}

export function textItem(text: string | readonly Run[], x: number, y: number, rest: Partial<TextItem> = {}): TextItem {
  const runs = typeof text === "string" ? [{ text }] : text;
  return { type: "text", runs, x, y, size: 14, turn: 0, anchor: "start", ...rest };
}

/** Words whose letters, marks and kerning try a writer, in the scripts of the shipped typeface. */
export const words: readonly string[] = [
  "disco",
  "AVATAR",
  "Tiếng",
  "Việt".normalize("NFD"),
  "ἄνθρωπος",
  "щастя",
  "q\u0308ed",
  "edq\u0323",
  "кни\u0301га",
  "łódź",
  "œuvre",
  "fi-Größe",
  "¿Qué?",
];

/** Every word at every turn on a grid of 50 × 22 mm, anchored by turn, styles by row. */
export function wordSheet(): Sheet {
  const anchors = ["start", "middle", "end", "middle"] as const;
  const items = words.flatMap((text, row) =>
    quarterTurns.map((turn) => {
      const run: Run = { text, ...(row % 2 ? { bold: true } : {}), ...(row % 3 ? {} : { italic: true }) };
      return textItem([run], 28 + 50 * turn, 20 + 22 * row, { turn, anchor: anchors[turn] ?? "start" });
    }),
  );
  return sheetOf(items);
}

/** Where a text's line runs: its middle point and, for turned text, which way; mm. */
export function middleOf(item: TextItem, width: number, rise: number): readonly [number, number] {
  const share = { start: 0.5, middle: 0, end: -0.5 }[item.anchor];
  const along = width * item.size * (25.4 / 72) * share;
  const up = rise * item.size * (25.4 / 72);
  const turned: Readonly<Record<QuarterTurn, readonly [number, number]>> = {
    0: [along, -up],
    1: [up, along],
    2: [-along, up],
    3: [-up, -along],
  };
  const [dx, dy] = turned[item.turn];
  return [item.x + dx, item.y + dy];
}

function chunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc(body), body.length + 4);
  return out;
}

function crc(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
}

/** A PNG of grey pixels, given as rows of values from 0 to 255. */
export function png(rows: readonly (readonly number[])[], opacities?: readonly (readonly number[])[]): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(rows[0]?.length ?? 0, 0);
  header.writeUInt32BE(rows.length, 4);
  header.set([8, opacities ? 4 : 0, 0, 0, 0], 8);
  const pixels = (row: readonly number[], y: number): readonly number[] =>
    opacities ? row.flatMap((grey, x) => [grey, opacities[y]?.[x] ?? 255]) : row;
  const data = deflateSync(Buffer.from(rows.flatMap((row, y) => [0, ...pixels(row, y)])));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const parts = [signature, chunk("IHDR", header), chunk("IDAT", data), chunk("IEND", Buffer.alloc(0))];
  return new Uint8Array(Buffer.concat(parts));
}
