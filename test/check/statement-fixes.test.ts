import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

/* What is offered for statements that are wrong brings up nothing else. */

const fair = ["[x] A mola salta.", "[ ] O cabo ri.", "[x] O aro gira.", "[ ] A roda voa.", "[x] O sino toca."];

const unit = (lines: readonly string[], activity = "make: calls"): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Oficina\n\n${lines.map((line) => `- ${line}\n`).join("")}\n\`\`\`activity\n${activity}\n\`\`\`\n`;

const same = "[ ] O selim brilha.\n  - O selim brilha.";

/** Titles of the fixes of a code's first finding; each leaves no warning and no error that was not there. */
async function offers(code: string, text: string): Promise<string[]> {
  const { findings } = await readUnitText(text);
  const had = new Map<string, number>();
  for (const each of findings) had.set(each.code, (had.get(each.code) ?? 0) + 1);
  const finding = findings.find((each) => each.code === code);
  assert.ok(finding, code);
  for (const { title, edits } of finding.fixes) {
    const now = new Map<string, number>();
    for (const { severity, code: what } of (await readUnitText(applyEdits(text, edits))).findings)
      if (severity === "error" || severity === "warning") now.set(what, (now.get(what) ?? 0) + 1);
    for (const [what, count] of now) assert.ok(count <= (had.get(what) ?? 0), `${title}: ${what}`);
  }
  return finding.fixes.map(({ title, preferred }) => `${title}${preferred ? " *" : ""}`);
}

describe("a statement whose correction says the same", () => {
  const mark = "Mark the statement true";
  const take = "Take the correction out";

  it("is marked true only where the list stays fair", async () => {
    for (const make of ["calls", "sort"]) {
      const options = `make: ${make}`;
      assert.deepEqual(await offers("same-correction", unit([...fair, same], options)), [mark, take]);
      const many = [...fair.slice(0, 3), "[x] A luz pisca.", "[x] O pneu rola.", "[x] O raio parte.", same];
      assert.deepEqual(await offers("same-correction", unit([...many, "[ ] A bomba canta."], options)), [take], make);
    }
  });

  it("is marked true only where no other one is heard as the same", async () => {
    const more = [...fair, "[ ] A luz ri."];
    for (const other of ["[x] O selim brilha.", "[ ] O selim brilha!", "[ ] o Selim brilha."])
      assert.deepEqual(await offers("same-correction", unit([...more, other, same])), [take], other);
    assert.deepEqual(await offers("same-correction", unit([...more, "[x] O selim brilha?", same])), [mark, take]);
  });
});

describe("a statement that is taken out", () => {
  it("makes no room for another one that contradicts", async () => {
    // Of thirteen statements ten are called or kept: each of these brings in others.
    const lines = [
      ...["[x] A mola salta.", "[ ] A mola salta.", "[x] O cabo parte.", "[ ] O cabo parte.", "[x] O aro gira."],
      ...["[ ] O aro gira.", "[x] A roda anda.", "[ ] A roda anda.", "[x] O sino toca.", "[ ] O sino toca."],
    ];
    for (let seed = 1; seed <= 30; seed++) {
      const { findings } = await readUnitText(unit(lines, `make: calls\ntake: 6\nseed: ${seed}`));
      if (findings.some(({ code }) => code === "contradicting-statements"))
        await offers("contradicting-statements", unit(lines, `make: calls\ntake: 6\nseed: ${seed}`));
    }
  });
});

describe("six statements where fewer are asked for", () => {
  const few = (lines: readonly string[]): Promise<string[]> =>
    offers("too-few-statements", unit(lines, "make: calls\ntake: 4"));

  it("are taken unasked only where nothing else is wrong with them", async () => {
    const { findings } = await readUnitText(unit([...fair, "[ ] A luz ri."], "make: calls\ntake: 4"));
    assert.equal(findings.length, 1);
    assert.deepEqual(await few([...fair, "[ ] A luz ri."]), ["Take 6 *"]);
    const wrong = new Map([
      [same, "a correction that says the same as its statement"],
      ["[x] A mola salta.", "a statement that stands twice"],
      ["[x] a mola salta!", "a statement that stands twice"],
      ["[ ] a mola salta.", "words that are easily taken for one another"],
    ]);
    for (const [other, left] of wrong) {
      const text = unit([...fair, other], "make: calls\ntake: 4");
      const told = (await readUnitText(text)).findings.filter(({ code }) => code === "too-few-statements");
      const [fix] = told.flatMap(({ fixes }) => fixes);
      assert.deepEqual([fix?.title, fix?.preferred ?? false], [`Take 6, which leaves to mend: ${left}`, false], other);
    }
    // Without tied forms levels do not differ.
    const levels = unit([...fair, "[ ] A luz ri."], "make: calls\ntake: 4\nlevels: [gentle, hard]");
    const [fix] = (await readUnitText(levels)).findings.flatMap(({ fixes }) => fixes);
    const alike = "Take 6, which leaves to mend: levels that do not differ";
    assert.deepEqual([fix?.title, fix?.preferred ?? false], [alike, false]);
  });
});
