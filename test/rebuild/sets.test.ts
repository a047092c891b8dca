import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";
import { sentenceUnit } from "./unit";

/* What is said of sentences is said of sets: versions and levels lie on other tables. */

interface Told {
  readonly message: string;
  readonly titles: readonly string[];
}

async function told(code: string, lines: readonly string[], options: string): Promise<Told[]> {
  const text = sentenceUnit(lines, options);
  const { findings } = await readUnitText(text);
  const before = new Set(findings.map((finding) => finding.code));
  for (const { title, edits } of findings.flatMap(({ fixes }) => fixes)) {
    const after = (await readUnitText(applyEdits(text, edits))).findings;
    const fresh = after.filter((each) => !before.has(each.code) && /error|warning/.test(each.severity));
    assert.deepEqual(
      fresh.map(({ message }) => message),
      [],
      title,
    );
  }
  return findings
    .filter((finding) => finding.code === code)
    .map(({ message, fixes }) => ({ message, titles: fixes.map(({ title }) => title) }));
}

describe("sentences of several versions", () => {
  const same = ["- ela | mede | hoje = one", "- hoje | ela | mede = two"];

  it("have the same cards only where one set has both", async () => {
    assert.equal((await told("same-cards", same, "")).length, 1);
    assert.equal((await told("same-cards", same, "versions: 2")).length, 1);
    assert.equal((await told("same-cards", same, "versions: 2\ntake: 1")).length, 0);
  });

  it("are told of where every order is right in whatever version", async () => {
    const lines = ["- ela | mede | hoje = one", "- um | disco = two", "  - disco | um"];
    for (let seed = 1; seed <= 6; seed++) {
      const found = await told("rebuild-any-order", lines, `versions: 2\ntake: 1\nseed: ${seed}`);
      assert.deepEqual(
        found.map(({ message }) => message),
        ["No order of “um disco” is wrong: all 2 orders of its cards are accepted."],
        `${seed}`,
      );
    }
  });

  it("are told of where every order is right on one level only", async () => {
    const lines = ["- Já | já! = one", "- ela | mede | hoje = two"];
    const [one, ...others] = await told("rebuild-any-order", lines, "levels: [gentle, hard]");
    assert.equal(others.length, 0);
    assert.equal(one?.message, "No order of “Já já!” is wrong: its cards are all the same.");
  });
});

describe("a sentence that is taken out", () => {
  it("leaves levels that differ", async () => {
    const lines = ["- ela | mede = one", "- mede | ela! = two"];
    const [one] = await told("same-cards", lines, "levels: [gentle, hard]");
    assert.deepEqual(one?.titles, []);
    const [two] = await told("same-cards", lines, "");
    assert.deepEqual(two?.titles, ["Take out “mede ela! = two”"]);
  });

  it("is not replaced by another one that has the same cards as one of the set", async () => {
    const lines = ["- ela | mede | a roda = one", "- a roda | mede | ela = two", "- mede | ela | a roda = three"];
    for (let seed = 1; seed <= 8; seed++)
      for (const { titles } of await told("same-cards", lines, `take: 2\nseed: ${seed}`)) assert.deepEqual(titles, []);
  });
});
