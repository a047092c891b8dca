import assert from "node:assert/strict";
import { plain } from "../../src/base/run";
import { type Block, setDocument } from "../../src/page/document";
import type { Sheet } from "../../src/page/sheet";
import { testTypeface } from "../support/typeface";
import { samplePage } from "./sample";

const page = samplePage("A4");

/** Rows of a table, and those of them that go on with the one above. */
const table = (count: number, goesOn: readonly number[], rowHeight = 0): Block => ({
  type: "table",
  columns: [{ head: "No." }, { head: "Text" }],
  rows: Array.from({ length: count }, (_, i) => [goesOn.includes(i) ? "" : `${i}`, `row ${i}`]),
  rowHeight,
  goesOn,
});

const rowsOn = ({ items }: Sheet): number[] =>
  items.flatMap((item) => {
    const match = item.type === "text" ? /^row (\d+)$/.exec(plain(item.runs)) : null;
    return match ? [Number(match[1])] : [];
  });

describe("rows that go on with the one above", () => {
  it("have no line above them", async () => {
    const [sheet] = setDocument([table(4, [1, 3])], page, await testTypeface());
    assert.ok(sheet);
    const at = new Map(
      sheet.items.flatMap((item) => (item.type === "text" ? [[plain(item.runs), item.y] as const] : [])),
    );
    const rules = sheet.items.flatMap((item) =>
      item.type === "line" && item.role === "rule" && item.y1 === item.y2 && item.x2 - item.x1 > 100 ? [item.y1] : [],
    );
    const between = (a: string, b: string): number =>
      rules.filter((y) => y > (at.get(a) ?? 0) && y < (at.get(b) ?? 0)).length;
    assert.deepEqual([between("Text", "row 0"), between("row 0", "row 1"), between("row 1", "row 2")], [1, 0, 1]);
    assert.deepEqual([between("row 2", "row 3"), rules.length], [0, 3]);
  });

  it("stand on the page of the row that they go on with, unless that is more than a page", async () => {
    const typeface = await testTypeface();
    const goesOn = Array.from({ length: 40 }, (_, i) => i).filter((i) => i % 4 !== 0);
    for (const height of [9, 11, 13.5, 17]) {
      const sheets = setDocument([table(40, goesOn, height)], page, typeface).map(rowsOn);
      assert.ok(sheets.length > 1);
      assert.deepEqual(
        sheets.flat(),
        Array.from({ length: 40 }, (_, i) => i),
      );
      for (const [first] of sheets) assert.equal((first ?? 1) % 4, 0, `${height}`);
    }
    const all = goesOn.length + 1;
    const long = setDocument(
      [
        table(
          all,
          Array.from({ length: all - 1 }, (_, i) => i + 1),
          20,
        ),
      ],
      page,
      typeface,
    );
    assert.deepEqual(
      long.flatMap(rowsOn),
      Array.from({ length: all }, (_, i) => i),
    );
  });
});
