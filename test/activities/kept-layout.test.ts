import assert from "node:assert/strict";
import type { Press } from "../../src/activities/contract";
import { keptLayout } from "../../src/activities/kept-layout";
import { finished } from "../../src/base/steps";
import type { Picture } from "../../src/unit/unit";

interface Dealt {
  readonly words: readonly { readonly text: string; readonly lang?: string; readonly picture?: Picture }[];
  readonly margin: number;
}

/** Layouts that are numbered in the order in which they are found. */
function numbered() {
  const found: string[] = [];
  const layoutOf = keptLayout(
    function* ({ words }: Dealt, press: Press) {
      yield;
      found.push(`${words.map(({ text }) => text).join(" ")} in ${press.unitTitle}`);
      return { number: found.length };
    },
    ({ words, margin }) => ({
      words: words.map(({ text, ...rest }) => ({ runs: [{ text }], ...rest })),
      settings: [margin],
    }),
  );
  return { found, numberOf: (dealt: Dealt, press: Press) => finished(layoutOf(dealt, press)).number };
}

const typeface = {};
const titled = (unitTitle: string, face = typeface): Press =>
  ({ unitTitle, pictures: new Map(), typeface: face }) as unknown as Press;
const [harbour, market] = [titled("Harbour"), titled("Market")];

const buoy: Picture = { path: "buoy.png", alt: "a buoy", range: { start: 0, end: 1 } };

describe("a layout that is kept", () => {
  it("is found once for a deal and what it is set with, and with pictures anew where either is another", () => {
    const { found, numberOf } = numbered();
    const drawn = (text: string): Dealt => ({ words: [{ text, picture: buoy }], margin: 8 });
    const [a, b] = [drawn("a"), drawn("b")];
    const asked = [
      [a, harbour],
      [a, harbour],
      [b, harbour],
      [a, market],
      [a, market],
      [drawn("a"), market],
    ] as const;
    assert.deepEqual(
      asked.map(([dealt, press]) => numberOf(dealt, press)),
      [1, 1, 2, 3, 3, 4],
    );
    assert.deepEqual(found, ["a in Harbour", "b in Harbour", "a in Market", "a in Market"]);
  });

  it("is found once for words and settings, whatever deal has them", () => {
    const { found, numberOf } = numbered();
    const dealt = (...words: string[]): Dealt => ({ words: words.map((text) => ({ text, lang: "pt" })), margin: 8 });
    assert.equal(numberOf(dealt("cais", "bóia"), harbour), 1);
    assert.equal(numberOf(dealt("cais", "bóia"), market), 1);
    assert.deepEqual(found, ["cais bóia in Harbour"]);
  });

  it("is found anew where a word, its language, their number, a setting or the typeface is another", () => {
    const { found, numberOf } = numbered();
    const base: Dealt = { words: [{ text: "cais", lang: "pt" }, { text: "bóia" }], margin: 8 };
    const others: Dealt[] = [
      { ...base, words: [{ text: "cais", lang: "pt" }, { text: "boia" }] },
      { ...base, words: [{ text: "cais", lang: "es" }, { text: "bóia" }] },
      { ...base, words: [{ text: "cais", lang: "pt" }] },
      { ...base, words: [...base.words, { text: "mar" }] },
      { ...base, margin: 9 },
    ];
    numberOf(base, harbour);
    for (const other of others) {
      const before = found.length;
      numberOf({ ...base }, harbour);
      numberOf(other, harbour);
      assert.ok(found.length > before, JSON.stringify(other));
    }
    const before = found.length;
    numberOf({ ...base }, titled("Harbour", {}));
    assert.equal(found.length, before + 1);
  });
});
