import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import fc from "fast-check";
import { below, randomFrom } from "../../prove/instances";
import { readUnitText, testWorkshop } from "../../support/units";
import type { Section } from "./draws";
import { sectionHolds } from "./holds";
import { openJudge } from "./judge";
import { alike, namedAlike, type Written } from "./written";

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

  it("are hardly ever taken for one another as events of a story, cards of piles, statements or parts of a sentence", async () => {
    const random = randomFrom(seed);
    let told = 0;
    for (let i = 0; i < count; i++) {
      const language = languages[below(random, languages.length)] ?? "en";
      const known = [...(names.get(language) ?? new Map<string, string>()).values()];
      const chosen = new Set<string>();
      while (chosen.size < 12) chosen.add((known[below(random, known.length)] ?? "").replace(/[|=/[\]*_:]/gu, " "));
      const { findings } = await readUnitText(unitOf([...chosen], language));
      const found = findings.filter(({ code }) => code === "look-alike");
      told += found.length > 0 ? 1 : 0;
      for (const { message } of found)
        for (const [first = "", ...others] of namedAlike(message))
          assert.ok(others.length > 0 && others.every((other) => alike(first, other)), message);
    }
    assert.ok(told < count / 50, `${told} of ${count}`);
  });
});

/** Names as events, cards of two piles, true and false statements, and parts of sentences. */
function unitOf(chosen: readonly string[], language: string): string {
  const half = chosen.length / 2;
  const lines = (before: (i: number) => string, some = chosen): string =>
    some.map((each, i) => before(i) + each).join("\n");
  const front = `---\nteaches: ${language}\nexplains: ${language === "en" ? "fr" : "en"}\n---\n`;
  const fence = (make: string): string => `\n\n\`\`\`activity\nmake: ${make}\n\`\`\`\n`;
  return [
    front,
    `## Story\n\n${lines((i) => `${i + 1}. `)}${fence("strips")}`,
    `## Piles\n\n### One\n\n${lines(() => "- ", chosen.slice(0, half))}\n\n### Two\n\n${lines(() => "- ", chosen.slice(half))}${fence("sort")}`,
    `## Said\n\n${lines((i) => (i % 2 === 0 ? "- [x] " : "- [ ] "))}${fence("calls")}`,
    `## Parts\n\n${[0, 1, 2].map((i) => `- ${chosen.slice(4 * i, 4 * i + 4).join(" | ")} = ${i}`).join("\n")}${fence("rebuild")}`,
  ].join("\n");
}
