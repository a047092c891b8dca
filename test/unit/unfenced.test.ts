import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";
import { applyEdits } from "../support/units";

/*
 * Activities whose fence is missing, or does not hold their name.
 */

const head = "## Oficina\n\n- roda = wheel\n\n";
const meant = (options: string): string => `${head}\`\`\`activity\n${options}\n\`\`\`\n`;

describe("an activity without its fence, or with its name elsewhere", () => {
  for (const [written, options] of [
    ["make: loop", "make: loop"],
    ["make: loop\ntake: 4", "make: loop\ntake: 4"],
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

  it("is nothing that is written of options in passing", () => {
    for (const text of [
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
