import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

const unit = (options: string): string =>
  `## Rodas\n\n- roda = wheel\n\n## Selins\n\n- selim = saddle\n\n\`\`\`activity\n${options}\n\`\`\`\n`;

/** What the first fix of the only finding with this code writes. */
async function firstFix(options: string, code: string): Promise<string> {
  const found = (await readUnitText(unit(options))).findings.filter((finding) => finding.code === code);
  assert.equal(found.length, 1, options);
  return found[0]?.fixes[0]?.edits.map(({ text }) => text).join() ?? "";
}

describe("fixes of options", () => {
  for (const [written, fixed] of [
    ["grid: 6*5", "6 x 5"],
    ["grid: 6 х 5", "6 x 5"],
    ["grid: 40", "auto"],
    ["seed: 1_000", "1000"],
    ["seed: 12 000", "12000"],
    ["seed: 7 or 8", "7"],
  ] as const) {
    it(`${written} is meant as ${fixed}`, async () =>
      assert.equal(await firstFix(`make: tiles\n${written}`, "wrong-option"), fixed));
  }

  for (const [written, fixed] of [
    ["Portuguese", "pt"],
    ["português", "pt"],
    ["ukrainian", "uk"],
    ["pt_BR", "pt-BR"],
    ["en/pt", "en"],
  ] as const) {
    it(`explains: ${written} is meant as ${fixed}`, async () => {
      const { findings } = await readUnitText(`---\nexplains: ${written}\n---\n\n${unit("make: loop")}`);
      const fault = findings.find(({ code }) => code === "wrong-option");
      assert.equal(fault?.fixes[0]?.title, `Change to “${fixed}”`);
    });
  }

  for (const [written, fixed, sure] of [
    ["26 Kinder", "[26]", true],
    ["[18; 22]", "[18, 22]", true],
    ["18 and 22", "[18, 22]", true],
    ["[26 Kinder, 24 Kinder]", "[26, 24]", true],
    ['["26", "24"]', "[26, 24]", true],
    ["ca. 26", "[26]", false],
    ["18/22", "[18, 22]", false],
    ["{7a: 26, 7b: 24}", "[26, 24]", false],
    ["26-28", undefined, false],
    ["26.5", undefined, false],
    ["26 (7b)", undefined, false],
    ["7b", undefined, false],
    ["2026", undefined, false],
    ["2 classes of 26", undefined, false],
    ["two groups of 26", undefined, false],
  ] as const) {
    it(`classes: ${written} is ${fixed === undefined ? "left to the teacher" : `meant as ${fixed}`}`, async () => {
      const { findings } = await readUnitText(`---\nclasses: ${written}\n---\n\n${unit("make: loop")}`);
      const faults = findings.filter(({ code }) => code === "wrong-option");
      assert.equal(faults.length, 1);
      const [fix] = faults[0]?.fixes ?? [];
      assert.deepEqual([fix?.edits[0]?.text, fix?.preferred === true], [fixed, sure]);
    });
  }

  it("rename no option to one that is set already", async () => {
    assert.equal(await firstFix("make: tiles\ngird: 3 x 3", "wrong-option"), "grid");
    assert.equal(await firstFix("make: tiles\ngrid: 4 x 4\ngird: 3 x 3", "wrong-option"), "");
  });

  it("take an overruled option out only where it stands once", async () => {
    const overruled = async (options: string): Promise<number | undefined> =>
      (await readUnitText(unit(options))).findings.find(({ code }) => code === "overruled-option")?.fixes.length;
    assert.equal(await overruled("make: tiles\nlevels: [gentle, hard]\nouter: decoys"), 1);
    assert.equal(await overruled("make: tiles\nlevels: [gentle, hard]\nouter: decoys\nouter: decoys"), 0);
  });

  it("make a list of several names, and name each section once", async () => {
    assert.equal(await firstFix("make: loop\nfrom: Rodas, Selins", "unknown-section"), "[Rodas, Selins]");
    assert.equal(await firstFix("make: loop\nfrom: Rodas, Selim", "unknown-section"), "Rodas");
    const { findings } = await readUnitText(`${unit("make: loop\nfrom: Selas")}\n## Selins\n`);
    const titles = findings.find(({ code }) => code === "unknown-section")?.fixes.map(({ title }) => title);
    assert.deepEqual(titles, ["Change to “Selins”", "Change to “Rodas”"]);
  });
});
