import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { applyEdits, readUnitText } from "../support/units";
import { parseFixture } from "./fixture";

/*
 * What a fixture finds, and what its fixes do, hangs neither on how its lines end nor on a byte order mark before it.
 */

const folder = path.join(__dirname, "fixtures");

interface Found {
  readonly code: string;
  /** Lines and columns from 0; the byte order mark has no column. */
  readonly at: readonly number[];
  /** The text after each fix, without carriage returns and byte order mark. */
  readonly fixed: readonly string[];
}

async function look(text: string): Promise<Found[]> {
  const { findings, unit } = await readUnitText(text);
  const column = (line: number, character: number): number =>
    line === 0 && text.startsWith("\uFEFF") ? character - 1 : character;
  return findings
    .map(({ code, range, fixes }) => {
      const { start, end } = unit.lines.lsp(range);
      const at = [start.line, column(start.line, start.character), end.line, column(end.line, end.character)];
      const fixed = fixes.map(({ edits }) => applyEdits(text, edits));
      return { code, at, fixed };
    })
    .sort((a, b) => (JSON.stringify([a.code, a.at]) < JSON.stringify([b.code, b.at]) ? -1 : 1));
}

const bare = (found: readonly Found[]): Found[] =>
  found.map((each) => ({
    ...each,
    fixed: each.fixed.map((text) => text.replace(/^\uFEFF/, "").replace(/\r\n?/g, "\n")),
  }));

describe("ends of lines and the byte order mark", () => {
  for (const name of readdirSync(folder).sort())
    it(`${name}: the same findings at the same places, and the same fixes`, async () => {
      const { text } = parseFixture(readFileSync(path.join(folder, name), "utf8"));
      const plain = await look(text);
      const returned = await look(text.replaceAll("\n", "\r\n"));
      assert.deepEqual(bare(returned), plain);
      for (const { code, fixed } of returned)
        for (const each of fixed) assert.ok(!/(?<!\r)\n|\r(?!\n)/.test(each), `${code} mixes ends of lines`);
      const alone = await look(text.replaceAll("\n", "\r"));
      assert.deepEqual(bare(alone), plain);
      for (const { code, fixed } of alone)
        for (const each of fixed) assert.ok(!each.includes("\n"), `${code} mixes ends of lines`);
      const marked = await look(`\uFEFF${text}`);
      assert.deepEqual(bare(marked), plain);
      for (const { code, fixed } of marked)
        for (const each of fixed) assert.ok(each.startsWith("\uFEFF"), `${code} writes before the mark`);
    });
});
