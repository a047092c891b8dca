import assert from "node:assert/strict";
import { applyEdits, readUnitText, testWorkshop } from "../support/units";

/* What is told of pairs that are shown right or wrong, alone and beside statements, and of items that stand twice. */

const unit = (lines: readonly string[], options = ""): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Oficina\n\n${lines.join("\n")}\n\n\`\`\`activity\nmake: sort\n${options}\n\`\`\`\n`;

async function told(text: string): Promise<string[]> {
  const { findings } = await readUnitText(text);
  return findings.map(({ code, message }) => `${code}: ${message}`);
}

const pairs = ["roda = wheel", "mola = spring", "cabo = cable", "sino = bell", "aro = rim", "selim = saddle"].map(
  (line) => `- ${line}`,
);
const fair = ["", "- [x] A mola salta.", "- [ ] O cabo ri."];

describe("pairs that are right or wrong", () => {
  it("are told to be unbalanced where too few wrong partners can be found, whether they were asked for or not", async () => {
    const synonyms = ["roda", "mola", "cabo", "sino", "aro"].map((word) => `- ${word} = part`);
    const text = unit([...synonyms, "- luz = part / lamp", "- selim = part / seat", "- pneu = tyre"]);
    const found = await told(text);
    assert.equal(found.filter((each) => each.startsWith("unbalanced-piles: “Falso” has")).length, 1, found.join("\n"));
    assert.ok((await told(unit(pairs))).every((each) => !each.startsWith("unbalanced")));
  });

  it("are judged by themselves beside statements", async () => {
    assert.deepEqual(await told(unit([...pairs, ...fair], "mispair: 3")), []);
    const text = unit([...pairs, ...fair], "mispair: 1");
    assert.deepEqual(await told(text), [
      "unbalanced-piles: “Falso” has 1 of 6 cards with pairs: learners can guess. At least 2 would be better.",
    ]);
    const { findings } = await readUnitText(text);
    const [fix, ...others] = findings.flatMap(({ fixes }) => fixes);
    assert.deepEqual([fix?.title, others.length], ["Make 3 of them false", 0]);
    assert.deepEqual(await told(applyEdits(text, fix?.edits ?? [])), []);
    // So few say nothing.
    assert.deepEqual(await told(unit([...pairs.slice(0, 3), ...fair], "mispair: 0")), []);
  });
});

describe("pairs with a wrong partner", () => {
  it("make no card twice where several have the same words", async () => {
    const lines = [
      "roda = light",
      "luz = wheel",
      "roda = cable",
      "roda = saddle",
      "mola = wheel",
      "sino = bell",
      "aro = rim",
    ];
    for (let seed = 1; seed <= 60; seed++) {
      const workshop = await testWorkshop();
      const reading = await readUnitText(
        unit(
          lines.map((line) => `- ${line}`),
          `seed: ${seed}`,
        ),
      );
      const [own] = reading.activities;
      const [deal] = own?.deals ?? [];
      assert.ok(own && deal);
      const texts = workshop
        .view(reading, own, deal, "dealt")
        .flatMap(({ items }) =>
          items.flatMap((item) => (item.type === "text" ? [item.runs.map(({ text }) => text).join("")] : [])),
        );
      const cards = texts.filter((text) => text.includes(" = "));
      assert.equal(cards.length, lines.length, texts.join(", "));
      assert.equal(new Set(cards).size, cards.length, `${seed}: ${cards.join(", ")}`);
    }
  });
});

describe("a pair that stands twice", () => {
  it("makes one card, and is told", async () => {
    const text = unit([...pairs, pairs[0] ?? ""]);
    assert.deepEqual(await told(text), ["repeated-card: “roda = wheel” stands twice here; one card is made."]);
    const { activities, findings } = await readUnitText(text);
    assert.equal(activities[0]?.summary, "6 cards for 2 piles");
    assert.equal(findings[0]?.fixes[0]?.preferred, true);
    assert.deepEqual(await told(applyEdits(text, findings[0]?.fixes[0]?.edits ?? [])), []);
  });

  it("is not taken out unasked where it says more than its card", async () => {
    const { findings } = await readUnitText(unit([...pairs, "- roda = wheel / disc"]));
    const [found] = findings.filter(({ code }) => code === "repeated-card");
    assert.deepEqual(
      found?.fixes.map(({ title, preferred }) => [title, preferred ?? false]),
      [["Take this one out", false]],
    );
  });

  it("under two headings is told once, whatever the cards show", async () => {
    const lines = [
      "### um",
      "",
      "- fio = thread",
      "- laço = bow",
      "",
      "### dois",
      "",
      "- pano = cloth",
      "- fio = thread",
    ];
    for (const show of ["left", "right", "both"]) {
      const found = await told(unit([...lines, "- renda = lace"], `show: ${show}`));
      assert.deepEqual(
        found.map((each) => each.split(":")[0]),
        ["card-in-two-piles"],
        show,
      );
    }
  });
});

describe("levels of piles", () => {
  it("are told with the number of cards of each", async () => {
    const lines = ["### um", "", "- fio", "- laço", "- lã", "", "### dois", "", "- pano", "- renda", "- malha"];
    const summary = async (options: string): Promise<string | undefined> =>
      (await readUnitText(unit(lines, options))).activities[0]?.summary;
    assert.equal(await summary(""), "6 cards for 2 piles");
    assert.equal(await summary("levels: [gentle, hard]"), "4–6 cards for 2 piles");
  });
});

describe("a card in two piles", () => {
  it("is not taken out of one where levels would not differ any more", async () => {
    // The second pile alone has a card of its own to show and enough besides.
    const lines = ["### um", "", "- fio", "- laço", "", "### dois", "", "- pano", "- renda", "- fio"];
    const titles = async (options: string): Promise<string[]> => {
      const { findings } = await readUnitText(unit([...lines, "", "### três", "", "- malha"], options));
      assert.deepEqual(
        findings.filter(({ code }) => code === "same-levels"),
        [],
      );
      return findings.flatMap(({ code, fixes }) =>
        code === "card-in-two-piles" ? fixes.map(({ title }) => title) : [],
      );
    };
    assert.deepEqual(await titles(""), ["Let piles overlap", "Take it out here"]);
    assert.deepEqual(await titles("levels: [gentle, hard]"), ["Let piles overlap"]);
  });
});
