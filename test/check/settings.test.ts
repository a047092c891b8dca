import assert from "node:assert/strict";
import { readSettings } from "../../src/check/settings";
import { applyEdits, readUnitText, slice } from "../support/units";

const found = (text: string) =>
  readSettings({ path: "cutwork.yml", text }).findings.map(({ code, severity, range, fixes }) => ({
    code,
    severity,
    at: slice(text, range),
    fixed: fixes.filter(({ preferred }) => preferred).map(({ edits }) => applyEdits(text, edits)),
  }));

describe("a cutwork.yml", () => {
  it("names findings that there are", () => {
    assert.deepEqual(found("severities: {meant-as-piar: off}\n"), [
      {
        code: "unknown-code",
        severity: "warning",
        at: "meant-as-piar",
        fixed: ["severities: {meant-as-pair: off}\n"],
      },
    ]);
    assert.deepEqual(found("severities: {meant-as-pair: off}\n"), []);
  });

  it("gives the findings of a unit with their severities and preferred fixes", () => {
    assert.deepEqual(found("paper = A4\ngroup: 2\ngroup: 3\nclasses: 24, 27\n"), [
      {
        code: "unreadable-yaml",
        severity: "error",
        at: " = ",
        fixed: ["paper: A4\ngroup: 2\ngroup: 3\nclasses: 24, 27\n"],
      },
      { code: "option-twice", severity: "warning", at: "group", fixed: [] },
      {
        code: "wrong-option",
        severity: "error",
        at: "24, 27",
        fixed: ["paper = A4\ngroup: 2\ngroup: 3\nclasses: [24, 27]\n"],
      },
    ]);
  });

  it("may begin with hyphens and hold nothing but remarks", () => {
    assert.deepEqual(found("---\npaper: A4\n...\n"), []);
    assert.deepEqual(found("# nothing yet\n"), []);
  });
});

describe("front matter", () => {
  const body = "\n## Roda\n\n- roda = wheel\n- selim = saddle\n- sino = bell\n- pneu = tyre\n";
  const activity = "\n```activity\nmake: loop\n```\n";
  const codes = async (text: string) => (await readUnitText(text)).findings.map(({ code }) => code);

  for (const [front, code] of [
    ["title: 404", "wrong-option"],
    ["title: a\ntitle: b", "option-twice"],
    ["title: Page #4", "unreadable-yaml"],
  ] as const) {
    it(`is somebody else's where no activity stands below it: ${JSON.stringify(front)}`, async () => {
      const text = `---\n${front}\nteaches: pt\n---\n${body}`;
      assert.deepEqual(await codes(text), []);
      assert.deepEqual(await codes(text + activity), [code]);
    });
  }

  it("an option that stands twice can be taken out with its line, which is asked for", async () => {
    for (const [options, mended] of [
      ["seed: 1\nseed: 2\ngroup: 3", "seed: 1\ngroup: 3"],
      ["seed: 1\ngroup: 3\nseed: 2", "seed: 1\ngroup: 3"],
      [
        "seed: 1\nlevels:\n  - hard\nlevels: # two\n  - gentle\n  - hard # no\ngroup: 3",
        "seed: 1\nlevels:\n  - hard\ngroup: 3",
      ],
    ]) {
      const text = `---\nteaches: pt\n---\n${body}\n\`\`\`activity\nmake: loop\n${options}\n\`\`\`\n`;
      const twice = (await readUnitText(text)).findings.find(({ code }) => code === "option-twice");
      assert.deepEqual(
        twice?.fixes.map(({ preferred, edits }) => [preferred, applyEdits(text, edits)]),
        [[undefined, text.replace(options ?? "", mended ?? "")]],
      );
    }
  });
});
