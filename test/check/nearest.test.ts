import assert from "node:assert/strict";
import { nearest, surelyMeant } from "../../src/check/nearest";
import { readUnitText, unitOf } from "../support/units";

describe("what is surely meant by a name", () => {
  for (const [word, candidates, meant] of [
    ["Foods", ["Food", "Drinks"], "Food"],
    ["at the  bench", ["At the bench", "At the beach"], "At the bench"],
    ["Weather", ["Verbs", "Water"], undefined],
    ["Verduras", ["Palavras"], undefined],
    ["os", ["as", "um"], undefined],
    ["P", ["Palavras"], undefined],
    ["Part 1", ["Part 2", "Part 3"], undefined],
    ["Palvras", ["Palavras", "Formas"], "Palavras"],
    ["Part 1", ["Part 2"], undefined],
    ["Prat 1", ["Part 1", "Part 2"], "Part 1"],
    ["gird", ["grid", "fill"], "grid"],
    ["words", ["cards"], undefined],
    ["x", [], undefined],
  ] as const)
    it(`“${word}” among ${candidates.join(", ")}`, () => assert.equal(surelyMeant(word, candidates), meant));

  it("nothing else is put in place of a section or an activity unasked, though it is offered", async () => {
    const unit = unitOf(4, "from: Weather");
    const plan = `${unitOf(4, "")}\n\`\`\`stations\nstations: [Shop]\n\`\`\`\n`;
    for (const [text, code] of [
      [unit, "unknown-section"],
      [plan, "wrong-stations"],
    ] as const) {
      const { findings } = await readUnitText(text);
      const [found] = findings.filter((finding) => finding.code === code);
      assert.ok(found && found.fixes.length > 0, code);
      assert.deepEqual(
        found.fixes.filter(({ preferred }) => preferred),
        [],
        code,
      );
    }
  });
});

describe("names that are nearly another one", () => {
  it("are told nearest first, case aside", () => {
    assert.deepEqual(nearest("harbor", ["Market", "Harbour", "Arbor"]), ["Harbour", "Arbor", "Market"]);
  });

  it("are those that go on behind the whole name, before any that only share letters", () => {
    assert.deepEqual(
      nearest("Palavras", ["História {-}", "Palavras {#palavras .big}"])[0],
      "Palavras {#palavras .big}",
    );
  });

  it("are near within half of their length", () => {
    assert.deepEqual(nearest("Harbour", ["Lighthouse", "Barber", "Harbor"], true), ["Harbor", "Barber"]);
  });
});
