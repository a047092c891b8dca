import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

/* What is fewer than was asked for is said in numbers that read well: none, one or some. */

const unit = (lines: readonly string[], activity: string): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Workshop\n\n${lines.join("\n")}\n\n\`\`\`activity\n${activity}\n\`\`\`\n`;

async function said(code: string, text: string): Promise<string | undefined> {
  const { findings } = await readUnitText(text);
  return findings.find((finding) => finding.code === code)?.message.split(/: |;/u)[0];
}

describe("fewer than asked for", () => {
  const claims = [
    "- [x] A roda gira.",
    "- [ ] O sino voa.",
    "- [x] O pneu rola.",
    "- [ ] A mola ri.",
    "- [x] O cabo parte.",
    "- [ ] A bomba canta.",
    "- [x] O selim range.",
    "- [ ] O aro nada.",
  ];
  const pairs = [
    "- roda = wheel",
    "- mola = spring",
    "- cabo = cable",
    "- sino = bell",
    "- aro = rim",
    "- selim = saddle",
  ];

  it("is said of statements that are kept for a tie", async () => {
    const calls = async (count: number, reserve: number): Promise<string | undefined> => {
      const text = unit(claims.slice(0, count), `make: calls\ntake: 6\nreserve: ${reserve}`);
      const { findings } = await readUnitText(text);
      return findings.find(({ code }) => code === "short-reserve")?.message;
    };
    assert.equal(await calls(6, 1), "No statement is left for a tie; `reserve` asks for 1.");
    assert.equal(await calls(7, 3), "Only 1 statement is left for a tie; `reserve` asks for 3.");
    assert.equal(await calls(8, 3), "Only 2 statements are left for a tie; `reserve` asks for 3.");
    assert.equal(await calls(8, 2), undefined);
  });

  it("is said of cards that belong nowhere", async () => {
    const loop = (count: number, decoys: number) =>
      said("loop-few-decoys", unit(pairs.slice(0, count), `make: loop\ntake: 4\ndecoys: ${decoys}`));
    assert.match((await loop(4, 1)) ?? "", /^No card can be made/u);
    assert.match((await loop(4, 3)) ?? "", /^None of 3 cards can be made/u);
    assert.match((await loop(6, 3)) ?? "", /^Only 1 of 3 cards can be made/u);
  });

  it("is said of outer edges", async () => {
    const tiles = (count: number, decoys: number) =>
      said("too-few-decoys", unit(pairs.slice(0, count), `make: tiles\ngrid: 2 x 2\ndecoys: ${decoys}`));
    assert.equal(await tiles(4, 1), "No outer edge gets a word without a partner");
    assert.equal(await tiles(4, 8), "None of 8 outer edges gets a word without a partner");
    assert.equal(await tiles(5, 8), "Only 1 of 8 outer edges gets a word without a partner");
    assert.equal(await tiles(6, 8), "Only 2 of 8 outer edges get a word without a partner");
  });

  it("is said of false cards and of twins", async () => {
    const sort = (mispair: number) => said("too-few-mispairs", unit(pairs, `make: sort\nmispair: ${mispair}`));
    assert.equal(await sort(9), "Only 6 of 9 false cards can be made of these pairs.");
    const twins = (count: number) => said("too-few-sort-twins", unit(claims, `make: sort\ntwins: ${count}`));
    assert.equal(await twins(1), "No twin can be made");
    assert.equal(await twins(2), "None of 2 twins can be made");
  });

  it("is said of pairs that are on no tile, the first of them by name", async () => {
    const more = [...pairs, "- luz = lamp", "- raio = spoke", "- pneu = tyre"];
    const tiles = async (count: number): Promise<string> => {
      const { findings } = await readUnitText(unit(more.slice(0, count), "make: tiles\ngrid: 2 x 2"));
      return findings.find(({ code }) => code === "unused-pairs")?.message ?? "";
    };
    assert.match(await tiles(5), /^1 of 5 pairs is not used: .* \(without “[^”]+”\)\.$/u);
    assert.match(await tiles(6), /\(without “[^”]+” and “[^”]+”\)\.$/u);
    assert.match(await tiles(7), /\(without “[^”]+”, “[^”]+” and “[^”]+”\)\.$/u);
    assert.match(await tiles(9), /^5 of 9 pairs are not used: .* \(without “[^”]+”, “[^”]+”, “[^”]+” and 2 more\)\.$/u);
  });

  it("is said of false cards, of which no more are offered than are fair", async () => {
    const sort = async (lines: readonly string[], mispair: number): Promise<readonly string[]> => {
      const { findings } = await readUnitText(unit(lines, `make: sort\nmispair: ${mispair}`));
      const finding = findings.find(({ code }) => code === "too-few-mispairs");
      return [finding?.message ?? "", ...(finding?.fixes.map(({ title }) => title) ?? [])];
    };
    assert.deepEqual(await sort(pairs, 8), [
      "Only 6 of 8 false cards can be made of these pairs.",
      "Ask for 3, so that about half are true",
    ]);
    const alike = ["- mola = part", "- cabo = part", "- sino = part", "- roda = wheel"];
    assert.deepEqual(await sort(alike, 3), ["Only 2 of 3 false cards can be made of these pairs.", "Ask for 2"]);
  });
});
