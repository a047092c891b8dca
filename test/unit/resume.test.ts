import assert from "node:assert/strict";
import * as fc from "fast-check";
import { finished } from "../../src/base/steps";
import { readingUnit, readUnit } from "../../src/unit/read";
import type { Unit } from "../../src/unit/unit";
import { changes, edited, seedTexts } from "../fuzz/texts";

const goingOn = (text: string, ...before: readonly Unit[]): Unit => finished(readingUnit(text, before));

/** As plain data: how the lines are indexed is no matter. */
const said = (unit: Unit): unknown => JSON.parse(JSON.stringify(unit));

const section = (name: string, more = ""): string => `## ${name}\n\n- o ${name} = the ${name}\n${more}\n`;
const three = section("remo") + section("leme") + section("vela");

describe("reading on from where an edit is", () => {
  it("keeps the sections above", () => {
    const before = readUnit(three);
    const unit = goingOn(three.replace("the vela", "the sail"), before);
    assert.equal(unit.sections[0], before.sections[0]);
    assert.equal(unit.sections[1], before.sections[1]);
    assert.notEqual(unit.sections[2], before.sections[2]);
  });

  it("keeps no section whose end may be another", () => {
    const before = readUnit(three);
    const unit = goingOn(three.replace("## leme", "### leme"), before);
    assert.deepEqual(
      unit.sections.map(({ pairs }) => pairs.length),
      [2, 1],
    );
  });

  it("takes the reading that is the same for longest, and may take it again", () => {
    const [first, second] = [readUnit(three.replace("## vela", "## quilha")), readUnit(three)];
    for (const before of [
      [first, second],
      [second, first],
    ]) {
      const unit = goingOn(three.replace("a vela", "a proa"), ...before);
      const again = goingOn(`${three}\n${section("proa")}`, unit, ...before);
      assert.equal(again.sections.length, 4);
      assert.equal(again.sections[1], second.sections[1]);
    }
  });

  for (const [what, from, to] of [
    ["a link is defined below", three.replace("the remo", "[the remo][a]"), (text: string) => `${text}\n[a]: #vela\n`],
    [
      "a link is defined no more",
      `${three.replace("the remo", "[the remo][a]")}\n[a]: #vela\n`,
      (text: string) => text.replace(/\n\[a\].*\n/, "\n"),
    ],
    [
      "the first line ends as in Windows, below a trap that adds a line",
      `${section("remo", "\n| remo | oar |\n| leme | helm |\n")}${three}`,
      (text: string) => `${text}\r\n`,
    ],
    [
      "a heading is underlined no more",
      three.replace("## vela", "vela\n---"),
      (text: string) => text.replace("vela\n---\n", "vela\n\n"),
    ],
    [
      "settings that did not end do so",
      `Notes\n\ntitle: Mar\nteaches: pt\n${three}`,
      (text: string) => `${text}\n---\n`,
    ],
    [
      "a table of forms comes that is named above",
      three.replace("the remo", "the remo (#eu)"),
      (text: string) => `${text}\n|    | remar |\n| -- | --- |\n| eu | remo |\n`,
    ],
    ["front matter comes", three, (text: string) => `---\ntitle: Mar\n---\n${text}`],
    [
      "front matter has another value of the same length",
      `---\nteaches: pt\n---\n\n${three}`,
      (text: string) => text.replace("pt", "de"),
    ],
  ] as const) {
    it(`reads the same as anew where ${what}`, () => {
      assert.notEqual(to(from), from);
      assert.deepEqual(said(goingOn(to(from), readUnit(from))), said(readUnit(to(from))));
    });
  }

  it("reads the same as anew after any edits of all fixtures", () => {
    const law = fc.property(
      fc.constantFrom(...seedTexts),
      fc.constantFrom(...seedTexts),
      changes,
      (one, other, made) => {
        let unit = readUnit(`${one}\n\n${other}`);
        for (const change of made) {
          const text = edited(unit.text, change);
          unit = goingOn(text, unit);
          assert.deepEqual(said(unit), said(readUnit(text)));
        }
      },
    );
    fc.assert(law, { seed: Number(process.env["CUTWORK_FUZZ_SEED"] ?? 11), numRuns: 400 });
  });
});
