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

  it("moves the sections below, and keeps them where they stay", () => {
    const before = readUnit(`${three}## vento\n\n### Norte\n\n- a brisa = the breeze\n- o rumo\n\n- [x] Sopra.\n`);
    const there = goingOn(before.text.replace("the leme", "the lems"), before);
    assert.equal(there.sections[2], before.sections[2]);
    assert.equal(there.sections[3], before.sections[3]);
    const moved = goingOn(before.text.replace("the leme", "the tiller"), before).sections[3];
    assert.equal(moved?.heading.start, (before.sections[3]?.heading.start ?? 0) + 2);
    assert.equal(moved?.pairs[0]?.left.answers[0].runs, before.sections[3]?.pairs[0]?.left.answers[0].runs);
    const [pair, text, statement] = moved?.piles[0]?.members ?? [];
    assert.equal(pair?.item, moved?.pairs[0]);
    assert.equal(statement?.item, moved?.statements[0]);
    assert.equal(text?.item.range.start, before.text.indexOf("o rumo") + 2);
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
    [
      "a table further down has a filled corner, and an item above is shorter",
      `${three.replace("the remo", "[eu remo](#remar)")}\n| forms | remar |\n| -- | --- |\n| eu | remo |\n\n${section("mar", "\n| forms | remar |\n| -- | --- |\n| eu | remo |\n")}`,
      (text: string) => text.replace("the leme", "helm"),
    ],
    [
      "a fence begins that ends two sections further down",
      `${three}${section("mar")}\`\`\`\n\n${section("ria")}`,
      (text: string) => text.replace("- o leme", "```\n- o leme"),
    ],
    [
      "an activity loses its end, and another one gives it one",
      `${three}${section("mar", "\n```activity\nmake: tiles\n```\n")}${section("ria", "\n```activity\nmake: loop\n```\n")}`,
      (text: string) => text.replace("tiles\n```", "tiles"),
    ],
    [
      "what shows that an activity has no end goes",
      `${three}\`\`\`activity\nmake: tiles\n\n${section("mar")}${section("ria", "\n```activity\nmake: loop\n```\n")}`,
      (text: string) => text.replace("```activity\nmake: loop", "make: loop").replace(/^- .*mar\n/gmu, ""),
    ],
    [
      "a comment begins that ends in the last section",
      `${three}${section("mar", "\n-->\n")}`,
      (text: string) => text.replace("- o leme", "<!--\n- o leme"),
    ],
    ["a section is taken out", three, (text: string) => text.replace(section("leme"), "")],
    ["a section comes twice", three, (text: string) => text.replace(section("leme"), section("leme").repeat(2))],
    ["a heading is joined to what stands above", three, (text: string) => text.replace("\n## vela", "## vela")],
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
  }).timeout(120_000);
});
