import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";
import { applyEdits, readUnitText } from "../support/units";

/*
 * Activities whose fence is missing, or does not hold their name.
 */

const head = "## Oficina\n\n- roda = wheel\n\n";
const meant = (options: string): string => `${head}\`\`\`activity\n${options}\n\`\`\`\n`;

describe("an activity without its fence, or with its name elsewhere", () => {
  for (const [written, options] of [
    ["make: loop", "make: loop"],
    ["make: loop\ntake: 4", "make: loop\ntake: 4"],
    ["make loop\ntake: 4", "make: loop\ntake: 4"],
    ["take: 4\nmake  loop ", "take: 4\nmake:  loop "],
    ["activity\nmake loop", "make: loop"],
    ["activity\nmake: loop", "make: loop"],
    ["Activity:\nmake: loop\nseed: 3", "make: loop\nseed: 3"],
    ["```\nactivity\nmake: loop\n```", "make: loop"],
    ["```yaml\nactivity:\nmake: loop\n```", "make: loop"],
    ["```yaml activity\nmake: loop\n```", "make: loop"],
    ["```activity: loop\n```", "make: loop"],
    ["```activity=loop\ntake: 4\n```", "make: loop\ntake: 4"],
    ["```Activity: loop\n```", "make: loop"],
  ] as const) {
    for (const newline of ["\n", "\r\n"]) {
      it(`${JSON.stringify(written + newline)} is told wherever it stands, and mended`, () => {
        const text = `${head}${written}\n`.replaceAll("\n", newline);
        const [problem, ...more] = readUnit(text).problems;
        assert.deepEqual([problem?.code, problem?.trap, more.length], ["not-an-activity", undefined, 0]);
        const after = applyEdits(text, problem?.fixes[0]?.edits ?? []);
        assert.equal(after, meant(options).replaceAll("\n", newline));
        assert.deepEqual(readUnit(after).problems, []);
      });
    }
  }

  /** What fixes make of `make loop` in a line of its own, and whether one is done unasked. */
  async function lone(text: string): Promise<(string | boolean)[][]> {
    const { findings } = await readUnitText(text);
    const found = findings.filter(({ code }) => code === "not-an-activity");
    return found.flatMap(({ fixes }) => fixes.map((fix) => [applyEdits(text, fix.edits), fix.preferred === true]));
  }

  it("is told without its colon and further options only where nothing uses the section, and never mended unasked", async () => {
    assert.deepEqual(await lone(`${head}make loop\n`), [[meant("make: loop"), false]]);
    const notes = "## Notas\n\nmake loop\n";
    assert.deepEqual(await lone(notes), [["## Notas\n\n```activity\nmake: loop\n```\n", false]]);
    const used = meant("make: tiles");
    assert.deepEqual(await lone(`${used}\nmake loop\n`), []);
    assert.deepEqual(await lone(`${used}\n${notes}`), []);
    assert.equal((await lone(`${used}\n${head.replace("Oficina", "Casa")}make loop\n`)).length, 1);
  });

  it("is nothing that is written of options in passing", () => {
    for (const text of [
      "Make loop",
      "make loop.",
      "make loops",
      "make loop\nand then go home",
      "First make loop",
      "- make loop",
      "make: haste",
      "Say make: loop, and all is well.",
      "make: loop\nand then go home",
      "```\nmake haste\nactivity\n```",
      "```\nactivity\nmake: haste\n```",
      "~~~\n```activity: loop\n```\n~~~",
    ])
      assert.deepEqual(readUnit(`${head}${text}\n`).problems, [], text);
  });
});

describe("options behind the name of an activity, in the line of its fence", () => {
  for (const [written, wanted] of [
    ["```activity loop\n```", "```activity\nmake: loop\n```"],
    ["``` activity  Loop \n```", "``` activity\nmake: loop \n```"],
    ["```activity make: loop\n```", "```activity\nmake: loop\n```"],
    ["```activity {make: loop, take: 4}\n```", "```activity\nmake: loop\ntake: 4\n```"],
    ["~~~activity title: A\nmake: loop\n~~~", "~~~activity\ntitle: A\nmake: loop\n~~~"],
    ["```stations minutes: 10\nstations: [A, B]\n```", "```stations\nminutes: 10\nstations: [A, B]\n```"],
    [
      "```activity <!-- allow loop-early: so far -->\nmake: loop\n```",
      '```activity\nallow: { loop-early: "so far" }\nmake: loop\n```',
    ],
  ] as const) {
    for (const newline of ["\n", "\r\n"]) {
      it(`${JSON.stringify(written + newline)} are told once, and put below`, async () => {
        const text = `${head}${written}\n`.replaceAll("\n", newline);
        const [problem, ...more] = readUnit(text).problems;
        assert.deepEqual([problem?.code, problem?.trap, more.length], ["unreadable-yaml", undefined, 0]);
        const { findings } = await readUnitText(text);
        assert.ok(!findings.some(({ code }) => code === "no-kind"), text);
        const after = applyEdits(text, problem?.fixes[0]?.edits ?? []);
        assert.equal(after, `${head}${wanted}\n`.replaceAll("\n", newline));
        assert.deepEqual(readUnit(after).problems, []);
      });
    }
  }

  it("are nothing that other programs or people read", () => {
    for (const words of ["{.numbered}", "{#one}", "for Tuesday", "loop the loop", "<!-- mine -->", "A: b"])
      assert.deepEqual(readUnit(`${head}\`\`\`activity ${words}\nmake: loop\n\`\`\`\n`).problems, [], words);
    const twice = `${head}\`\`\`activity loop\nmake: tiles\n\`\`\`\n`;
    assert.deepEqual(readUnit(twice).problems, []);
  });
});
