import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import fc from "fast-check";
import { below, randomFrom } from "../../prove/instances";
import { testWorkshop } from "../../support/units";
import type { Section } from "./draws";
import { sectionHolds } from "./holds";
import { openJudge } from "./judge";
import type { Written } from "./written";

/*
 * A clean control: names of emoji in two languages, from Unicode's CLDR (npm `cldr-annotations-full`). Within a language no two
 * have one name, so whoever hears that two of them share an answer hears something false.
 */

const languages = ["de", "el", "en", "es", "fr", "he", "it", "ja", "pl", "pt", "uk"] as const;
const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 20_250_617);
const count = 500;

const { resolve } = createRequire(__filename);

/** Spoken names by emoji. */
function namesIn(language: string): ReadonlyMap<string, string> {
  const file = resolve(`cldr-annotations-full/annotations/${language}/annotations.json`);
  const { annotations } = JSON.parse(readFileSync(file, "utf8")) as {
    annotations: { annotations: Record<string, { tts?: [string] }> };
  };
  return new Map(
    Object.entries(annotations.annotations).flatMap(([sign, { tts }]) =>
      tts && /\p{Extended_Pictographic}/u.test(sign) ? [[sign, tts[0]] as const] : [],
    ),
  );
}

describe(`names of emoji (${count} sections, seed ${seed})`, function () {
  this.timeout(0);
  const names = new Map(languages.map((language) => [language, namesIn(language)]));

  it("are over a thousand a language, and no two of them are the same", () => {
    for (const [language, known] of names) {
      assert.ok(known.size > 1000, language);
      assert.equal(new Set([...known.values()].map((name) => name.normalize("NFC").trim())).size, known.size, language);
    }
  });

  it("are dealt and proven, and nothing false is said of them", async () => {
    const judge = await openJudge();
    const workshop = await testWorkshop();
    const sections = fc.record({
      teaches: fc.constantFrom(...languages),
      explains: fc.constantFrom(...languages),
      chance: fc.noShrink(fc.nat()),
      pairs: fc.integer({ min: 12, max: 18 }),
      make: fc.constantFrom("tiles" as const, "tiles" as const, "tiles" as const, "loop" as const),
      grid: fc.constantFrom("3 x 3" as const, "auto" as const),
      turn: fc.constantFrom("free" as const, "fixed" as const),
      seed: fc.integer({ min: 1, max: 1000 }),
    });
    const met = new Map<string, number>();
    const law = fc.property(sections, ({ teaches, explains, chance, ...draw }) => {
      fc.pre(teaches !== explains);
      const [left, right] = [names.get(teaches), names.get(explains)];
      const signs = [...(left ?? new Map<string, string>()).keys()].filter((sign) => right?.has(sign));
      const random = randomFrom(chance);
      const chosen = new Set<string>();
      while (chosen.size < draw.pairs) chosen.add(signs[below(random, signs.length)] ?? "");
      const pairs = [...chosen].map(
        (sign): Written => ({ left: [left?.get(sign) ?? ""], right: [right?.get(sign) ?? ""] }),
      );
      const section: Section = { ...draw, pairs, fill: "words", frame: "told" };
      const what = sectionHolds(workshop, section, [teaches, explains], judge);
      assert.ok(!what.includes("shared"), "no two share an answer");
      for (const each of what) met.set(each, (met.get(each) ?? 0) + 1);
    });
    fc.assert(law, { seed, numRuns: count, includeErrorInReport: true });
    // The control is clean: each proven to have one solution, and hardly a word that looks like another.
    assert.equal((met.get("tiles with one") ?? 0) + (met.get("loop with one") ?? 0), count);
    assert.ok((met.get("look-alike") ?? 0) < count / 50);
  });
});
