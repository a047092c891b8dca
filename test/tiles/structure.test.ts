import assert from "node:assert/strict";
import { planUnit } from "../../src/activities/plan";
import type { TilesOptions } from "../../src/activities/tiles/options";
import { structureKey } from "../../src/activities/tiles/structure";
import { Relation } from "../../src/match/relation";
import { readUnit } from "../../src/unit/read";

const pairs = ["a luz = the light", "o selim = the saddle", "o pneu = the tyre", "a mola = the spring"];

function keyOf(items: readonly string[], options = ""): string | undefined {
  const unit = readUnit(
    `## A\n\n${items.map((item) => `- ${item}\n`).join("")}\n\`\`\`activity\nmake: tiles\n${options}\`\`\`\n`,
  );
  const request = planUnit(unit).activities[0]?.request;
  assert.ok(request);
  return structureKey(request, request.options.value as unknown as TilesOptions);
}

const with0 = (item: string): string[] => [item, ...pairs.slice(1)];

describe("the structure that a deal of tiles hangs on", () => {
  it("is the same however words are spelt", () => {
    assert.equal(keyOf(with0("a lux = the lamp")), keyOf(pairs));
  });

  // Each is another one than that of the pairs above, and than that of all others here.
  const others: readonly (readonly [string, readonly string[], string?])[] = [
    ["as they are", pairs],
    ["another answer on the right", with0("a luz = the light / the lamp")],
    ["another answer on the left", with0("a luz / a lâmpada = the light")],
    ["a second answer that is another item's", with0("a luz = the light / the tyre")],
    ["one more word", with0("a luz fraca = the light")],
    ["one more word on the right", with0("a luz = the weak light")],
    ["one answer for two", with0("a luz = the saddle")],
    ["one text on both sides", with0("a luz = a luz")],
    ["what looks otherwise and is the same", with0("o selim. = the light")],
    ["the same text twice", with0("o selim = the light")],
    ["one item fewer", pairs.slice(1)],
    ["another seed", pairs, "seed: 4\n"],
  ];

  it("is another one where anything else differs", () => {
    const known = new Map<string | undefined, string>();
    for (const [what, items, options] of others) {
      const key = keyOf(items, options);
      assert.notEqual(key, undefined);
      assert.equal(known.get(key), undefined, `${what} is like ${known.get(key)}`);
      known.set(key, what);
    }
  });

  it("is another one too when tens of thousands were met before", () => {
    const request = planUnit(readUnit("## A\n\n- a = b\n- c = d\n- e = f\n\n```activity\nmake: tiles\n```\n"))
      .activities[0]?.request;
    const [section] = request?.sections ?? [];
    assert.ok(request && section);
    const options = request.options.value as unknown as TilesOptions;
    const longer = Array.from({ length: 32 }, (_, i) => " x".repeat(i));
    const keys = new Set<string | undefined>();
    for (const a of longer)
      for (const b of longer)
        for (const c of longer) {
          const own = section.pairs.map((pair, i) => {
            const [first] = pair.left.answers;
            const text = first.text + ([a, b, c][i] ?? "");
            return { ...pair, left: { ...pair.left, answers: [{ ...first, text, runs: [{ text }] }] as const } };
          });
          const changed = { ...request, sections: [{ ...section, pairs: own }], relation: new Relation(own) };
          keys.add(structureKey(changed, options));
        }
    assert.equal(keys.size, longer.length ** 3);
  });
});
