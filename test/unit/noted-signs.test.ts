import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";

/* Which dashes and colons among pairs are put right without being asked for. */

const phrased = ["- a casa = the house", "- o mar = the sea", "- o rio = the river"];
const bare = ["- sal = salt", "- mel = honey", "- ovo = egg"];

/** Whether the fix of the item is done unasked; undefined where nothing is told of it. */
function isSure(item: string, pairs: readonly string[]): boolean | undefined {
  const { problems } = readUnit(`## A\n\n${[...pairs, item].join("\n")}\n`);
  const found = problems.find(({ code }) => code === "meant-as-pair");
  return found && !found.fixes[0]?.unsure;
}

describe("a dash or a colon among pairs", () => {
  for (const [item, pairs, sure] of [
    ["- a luz – the light", phrased, true],
    ["- a luz: the light", phrased, true],
    ["- amanhã: repaso", phrased, false],
    ["- dr Nowak – poniedziałek", phrased, false],
    ["- Who am I? – guessing", phrased, false],
    ["- chá – tea", bare, false],
    ["- chá: tea", bare, false],
    ["- amanhã: teste", bare, false],
    ["- mar → mares", bare, undefined],
    ["- göz → gözler", bare, false],
    ["- dr Nowak – poniedziałek", bare, false],
    ["- Quem sou? – jogo", bare, false],
    ["- Sal – Salz", ["- Mehl = farinha", "- Ei = ovo", "- Brot = pão"], false],
    ["- ovo – egg", ["- chá – tea", "- sal – salt"], true],
    ["- beau / bel / belle", bare, undefined],
    ["- his/her", phrased, undefined],
    ["- ser ≠ estar", bare, undefined],
    ["- casa / mar", phrased, undefined],
    ["- casa: mar", phrased, undefined],
    ["- Gruppe A: Salz", bare, undefined],
    ["\n- Gruppe A: Fenster", ["- das Haus = the house", "- das Meer = the sea", "- der Fluss = the river"], undefined],
    ["- **Gruppe B** – Mehl", bare, undefined],
    ["- Kapitel II: Wasser", bare, undefined],
    ["- Vitamin C: vitamina C", bare, false],
    ["- chá / tea", bare, false],
    ["- риба – fish", ["- сіль = salt", "- чай = tea", "- мед = honey"], true],
  ] as const) {
    const what = sure === undefined ? "left alone" : sure ? "put right" : "only where it is asked for";
    it(`${item} among ${pairs[0]}: ${what}`, () => {
      assert.equal(isSure(item, pairs), sure);
    });
  }

  // Notes stand below the pairs.
  for (const [item, sure] of [
    ["- chá – tea", true],
    ["- chá: tea", true],
    ["- göz → gözler", false],
    ["- dr Nowak – poniedziałek", false],
    ["- chá: tea\n", false],
  ] as const)
    it(`${JSON.stringify(item)} above pairs: ${sure ? "put right" : "only where it is asked for"}`, () => {
      assert.equal(isSure([item, ...bare].join("\n"), bare), sure);
    });

  it("what somebody says in the line below is no other side", () => {
    assert.equal(isSure("- Aqui está o chá.\n— Muito obrigado!", bare), undefined);
    assert.equal(isSure("- o chá\n  – the tea", bare), false);
  });
});
