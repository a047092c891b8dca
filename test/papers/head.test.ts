import assert from "node:assert/strict";
import { type PrintedPage, readPrint } from "../support/print";
import { readUnitText, testWorkshop, unitOf } from "../support/units";

const name =
  "Uma oficina de bicicletas com um nome muito comprido que ninguém consegue ler até ao fim, nem com óculos novos em folha".slice(
    0,
    120,
  );

/** The texts of the title line from left to right, each with where it begins and ends, mm. */
function titleLine({ texts }: PrintedPage): { text: string; from: number; to: number }[] {
  return texts
    .filter(({ y, size }) => y < 14 && Math.abs(size - 7.5) < 0.01)
    .map(({ text, x, middle }) => ({ text, from: x, to: 2 * middle[0] - x }))
    .sort((a, b) => a.from - b.from);
}

describe("the title line", () => {
  for (const paper of ["A4", "Letter"])
    it(`${paper}: long names end in an ellipsis before what stands on the right, on every sheet`, async () => {
      const front = `---\ntitle: ${name}\nteaches: pt\npaper: ${paper}\nclasses: [6]\n---\n\n`;
      const story = `## Story\n\n1. Um.\n2. Dois.\n3. Três.\n\n\`\`\`activity\nmake: strips\ntitle: ${name.slice(0, 78)}\nversions: 2\n\`\`\`\n`;
      const unit = `${unitOf(12, `title: Peças\ngrid: 3 x 3\nversions: 2`, front)}\n${story}`;
      const workshop = await testWorkshop();
      const files = await workshop.make(await readUnitText(unit), {});
      const json = new TextDecoder().decode(files.find(({ name: file }) => file.endsWith(".json"))?.bytes);
      const marks: string[] = JSON.parse(json).pieces.map(({ mark }: { mark: string }) => mark);
      const again = await workshop.reprint(
        marks.slice(0, 20).flatMap((mark) => workshop.find([json], mark)),
        new Map(),
      );
      const pdfs = [...files.filter(({ name: file }) => file.endsWith(".pdf")).map(({ bytes }) => bytes), again];
      let shortened = 0;
      for (const page of (await Promise.all(pdfs.map(readPrint))).flat()) {
        const line = titleLine(page);
        assert.ok(line.length >= 2);
        line.slice(1).forEach(({ text, from }, i) => {
          const before = line[i];
          assert.ok(before && from > before.to - 0.5, `${before?.text} | ${text}`);
        });
        const [last, ...others] = [...line].reverse();
        const end = Math.max(...others.map(({ to }) => to));
        assert.ok(last && last.from > end + 3.5, `${last?.text} begins at ${last?.from}, ${end} is taken`);
        if (line.some(({ text }) => text.includes("…"))) shortened++;
      }
      assert.ok(shortened > 5);
      // A short name of an activity stays whole beside a long one of the unit.
      const tiles = files.find(({ name: file }) => file.includes(".Peças.card"));
      const [sheet] = await readPrint(tiles?.bytes ?? new Uint8Array());
      assert.ok(sheet && titleLine(sheet).some(({ text }) => text.endsWith("· Peças")));
    });
});
