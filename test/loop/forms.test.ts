import assert from "node:assert/strict";
import { loop } from "../../src/activities/loop/kind";
import type { DealtLoop } from "../../src/activities/loop/model";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";
import { paperPages } from "../support/guide";
import { readUnitText } from "../support/units";

/* A circle of the cells of a forms table, and what belongs nowhere in a circle. */

const table = (rows: readonly string[]): string =>
  `## Forms\n\n|      | medir | fazer | abrir |\n| ---- | ----- | ----- | ----- |\n${rows.join("\n")}\n`;
const persons = [
  "| eu   | meço  | faço  | abro  |",
  "| ela  | mede  | faz   | abre  |",
  "| você | mede  | faz   | abre  |",
  "| nós  | medimos | fazemos | abrimos |",
];
const unit = (rows: readonly string[], options = "", more = ""): string =>
  `---\nteaches: pt\n---\n\n${table(rows)}${more}\n\`\`\`activity\nmake: loop\n${options}\n\`\`\`\n`;

function dealt(text: string): DealtLoop {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request);
  return loop.deal(activity.request);
}

const prompts = (text: string): string[] => dealt(text).deals[0]?.cards.map(({ prompt }) => prompt.text) ?? [];

describe("a loop of forms", () => {
  it("has each form once, whichever person the seed takes, and none closes early", () => {
    const taken = new Set<string>();
    for (let seed = 1; seed <= 30; seed++) {
      const { deals, leftOut } = dealt(unit(persons, `seed: ${seed}`));
      const [deal] = deals;
      assert.ok(deal);
      const answers = deal.cards.map(({ answer }) => answer.text);
      assert.equal(answers.length, 9);
      assert.equal(new Set(answers).size, 9);
      assert.equal(deal.proof.status, "one");
      assert.equal(deal.smaller, undefined);
      assert.equal(leftOut, 3);
      for (const { prompt } of deal.cards) taken.add(prompt.text);
    }
    assert.equal(taken.size, 12, "every cell is dealt by some seed");
  });

  it("has nothing to warn of, and says in the guide what is left out", async () => {
    const { findings } = await readUnitText(unit(persons));
    assert.deepEqual(findings, []);
    const guide = (await paperPages(unit(persons))).join(" ");
    assert.match(guide, /3 forms that read like another are left out of the circle\./);
    const plain = (await paperPages(unit(persons.filter((row) => !row.includes("você"))))).join(" ");
    assert.doesNotMatch(plain, /left out/);
  });

  it("takes the other cells first in a further version", () => {
    const { deals } = dealt(unit(persons, "versions: 2"));
    const [one, two] = deals.map(({ cards }) => new Set(cards.map(({ prompt }) => prompt.text)));
    assert.ok(one && two);
    for (const verb of ["medir", "fazer", "abrir"])
      for (const person of ["ela", "você"])
        assert.notEqual(one.has(`${verb}, ${person}`), two.has(`${verb}, ${person}`));
  });

  it("leaves out no written pair, and a form that a written pair has", () => {
    const written = "\n- o chefe = faz\n- o dono = the boss\n- o patrão = the boss\n";
    for (let seed = 1; seed <= 20; seed++) {
      const own = prompts(unit(persons, `seed: ${seed}`, written));
      for (const word of ["o chefe", "o dono", "o patrão"]) assert.ok(own.includes(word));
      assert.equal(own.filter((text) => /^fazer, (ela|você)$/.test(text)).length, 0);
      assert.equal(own.length, 3 + 8);
    }
  });

  it("keeps all cells where too few would be left, and as many as `take` says", () => {
    const few = ["| eu   | mede  | faz   |  abre |", "| ela  | mede  | faz   | abre  |"];
    assert.equal(prompts(unit(few)).length, 6);
    assert.equal(prompts(unit(persons, "take: 11")).length, 11);
  });
});

describe("cards that belong nowhere in a circle", () => {
  it("have as many words as those of the circle where there are such", () => {
    const single = ["roda = wheel", "selim = saddle", "pedal = pedal", "corrente = chain", "travão = brake"];
    const other = [
      "Onde está a chave grande? = Where is the big spanner?",
      "A corrente está seca. = The chain is dry.",
      "Amanhã abrimos mais cedo. = Tomorrow we open earlier.",
    ];
    const short = ["buzina = horn", "quadro = frame", "raio = spoke", "bomba = pump"];
    const list = (pairs: readonly string[]): string => pairs.map((pair) => `- ${pair}`).join("\n");
    const text = (own: readonly string[], rest: readonly string[], seed: number): string =>
      `---\nteaches: pt\n---\n\n## Own\n\n${list(own)}\n\n\`\`\`activity\nmake: loop\ntake: 4\ndecoys: 2\nseed: ${seed}\n\`\`\`\n\n## Rest\n\n${list(rest)}\n`;
    const decoys = (unitText: string): number[] =>
      (dealt(unitText).deals[0]?.decoys ?? []).flatMap(({ answer, prompt }) =>
        [answer, prompt].map((each) => each.text.split(" ").length),
      );
    for (let seed = 1; seed <= 30; seed++) {
      assert.deepEqual(decoys(text(single, [...other, ...short], seed)), [1, 1, 1, 1], `seed ${seed}`);
      // Where there are none, others are better than nothing.
      assert.equal(
        decoys(text(single.slice(0, 4), [...other, ...other.map((pair) => `${pair}!`)], seed)).length > 0,
        true,
      );
    }
  });
});
