import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const pairs = "- roda = wheel\n- selim = saddle\n- luz = light\n- sino = bell\n";
const unit = (heading: string, more = ""): string =>
  `${heading}\n\n${pairs}\n${more}\`\`\`activity\nmake: loop\n\`\`\`\n`;

describe("an activity in a unit without sections", () => {
  for (const [written, wanted] of [
    ["# Oficina", "## Oficina"],
    ["##Oficina", "## Oficina"],
    ["### Oficina", "## Oficina"],
    ["＃＃ Oficina", "## Oficina"],
    ["Oficina\n=======", "## Oficina"],
    ["# Unidade\n\n### Oficina", "# Unidade\n\n## Oficina"],
  ] as const) {
    it(`makes a section of ${JSON.stringify(written)}`, async () => {
      const text = unit(written);
      const [first, ...more] = (await readUnitText(text)).findings;
      assert.deepEqual([first?.code, more.length], ["no-section", 0]);
      const after = applyEdits(text, first?.fixes[0]?.edits ?? []);
      assert.equal(after, unit(wanted));
      const { findings, unit: read } = await readUnitText(after);
      assert.deepEqual([findings.map(({ code }) => code), read.sections[0]?.pairs.length], [[], 4]);
    });
  }

  for (const newline of ["\n", "\r\n"]) {
    it(`parts a heading from settings that never end, with ${JSON.stringify(newline)}`, async () => {
      const text = `---\ntitle: The lighthouse\n${unit("At night\n===")}`.replaceAll("\n", newline);
      const found = (await readUnitText(text)).findings.find(({ code }) => code === "no-section");
      assert.equal(text.slice(found?.range.start, found?.range.end), "```activity");
      const { findings } = await readUnitText(applyEdits(text, found?.fixes[0]?.edits ?? []));
      assert.deepEqual(
        findings.filter(({ code }) => code === "no-section"),
        [],
      );
    });
  }

  it("takes no heading from a block of notes, and offers nothing where there is none", async () => {
    const noted = await readUnitText(unit("# Oficina", "```\n# notes\n```\n\n"));
    assert.deepEqual(
      noted.findings.flatMap(({ fixes }) => fixes.map(({ title }) => title)),
      ["Make a section of “Oficina”"],
    );
    const bare = await readUnitText(unit("Oficina"));
    assert.deepEqual(
      bare.findings.map(({ code, fixes }) => [code, fixes.length]),
      [["no-section", 0]],
    );
  });
});
