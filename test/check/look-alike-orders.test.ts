import { expect } from "chai";
import { readUnitText, slice } from "../support/units";

const front = "---\nteaches: pt\nexplains: en\n---\n\n";

/** Look-alikes that are told of a section's lines with an activity: severity, place and what is said. */
async function told(lines: readonly string[], activity: string, after = ""): Promise<string[]> {
  const fence = `\`\`\`activity\n${activity}\n\`\`\`\n`;
  const text = `${front}## Workshop\n\n${lines.join("\n")}\n\n${fence}${after}`;
  const { findings, activities } = await readUnitText(text);
  expect(activities[0]?.deals.length, "deals").to.be.greaterThan(0);
  return findings
    .filter(({ code }) => code === "look-alike")
    .map(({ severity, range, message }) => `${severity} ${slice(text, range)}: ${message}`);
}

const story = ["1. A avó entra.", "2. O pneu está furado.", "3. O avô entra.", "4. A porta fecha.", "5. A roda gira."];

describe("look-alikes among strips", () => {
  it("are told where their exchange makes another story", async () => {
    const [one, ...more] = await told(story, "make: strips");
    expect(more).to.deep.equal([]);
    expect(one).to.match(
      /^information O avô entra\.: .*can put the story in another order.*strips [A-Z] and [A-Z] apart/u,
    );
  });

  it("are silent where the two may be exchanged, or where the strip tells its place", async () => {
    const free = [
      "1. A porta abre.",
      "   - A avó entra.",
      "   - O avô entra.",
      "2. O pneu está furado.",
      "3. A roda gira.",
    ];
    expect(await told(free, "make: strips")).to.deep.equal([]);
    const ends = [...story.slice(0, 2), ...story.slice(3), "6. O avô entra."];
    expect(await told(ends, "make: strips")).to.have.length(1);
    expect(await told(ends, "make: strips\nlevels: [gentle]")).to.deep.equal([]);
  });

  it("are silent where the story is about the difference", async () => {
    const contrast = ["1. A avó entra.", "2. O avô entra.", "3. A avó ri.", "4. O avô ri.", "5. A porta fecha."];
    expect(await told(contrast, "make: strips")).to.deep.equal([]);
  });
});

const others = ["- Onde fica o travão? = Where is the brake?", "- O selim está sujo. = The saddle is dirty."];

describe("look-alikes among the cards of sentences", () => {
  it("are told where their exchange makes another sentence", async () => {
    const [one, ...more] = await told(["- A avó vê o avô. = The granny sees the grandpa.", ...others], "make: rebuild");
    expect(more).to.deep.equal([]);
    expect(one).to.match(/^information avô\.: “avó” and “avô” .*can lay another sentence.*cards \w+ and \w+ apart/u);
  });

  it("are silent where only the beginning of a sentence or a comma tells them apart, or both orders are accepted", async () => {
    const quiet = [
      "- A roda sem travão e a corrente. = a",
      "- Ela vem, quando a mãe vem. = b",
      "- o avô | e | a avó = c\n  - a avó | e | o avô",
    ];
    expect(await told([...quiet, ...others], "make: rebuild")).to.deep.equal([]);
  });

  it("are silent in different sentences, and where most sentences set them side by side", async () => {
    expect(await told(["- A avó ri muito. = a", "- Hoje o avô ri. = b"], "make: rebuild")).to.deep.equal([]);
    const lesson = ["- A avó vê o avô. = a", "- O avô ouve a avó. = b", ...others];
    expect(await told(lesson, "make: rebuild")).to.deep.equal([]);
  });

  const lent = ["- o rapaz | conta | a história | toda = a", "- a história | canta | o rapaz = b", ...others];

  it("are told where they lend another sentence its cards: all of them, or in one packet some", async () => {
    const whole = ["- o rapaz | conta | a história = a", ...lent.slice(1)];
    expect((await told(whole, "make: rebuild"))[0]).to.match(/“conta” and “canta”.*can lay another sentence/u);
    expect(await told(lent, "make: rebuild")).to.deep.equal([]);
    expect(await told(lent, "make: rebuild\npacket: 2")).to.have.length(1);
    // The same sentence but for the letter is misread, not laid otherwise.
    const cards = ["- o rapaz | conta | a história = a", "- O rapaz | conta | a história! = b", ...others];
    expect(await told(cards, "make: rebuild")).to.deep.equal([]);
    const same = ["- o rapaz | conta | a história = a", "- o rapaz | canta | a história = b", ...others];
    expect((await told(same, "make: rebuild")).map((each) => each.split(" ")[0])).to.deep.equal(["hint"]);
  });
});

const claims = [
  "- [x] O avô tem um selim.",
  "- [x] A roda gira.",
  "- [x] O pneu rola.",
  "- [ ] A corrente é de papel.",
  "- [ ] A bomba canta.",
];

describe("look-alikes among statements", () => {
  const half = [...claims, "- [ ] O avó tem um selim."];

  it("are told where one is true and the other false, on cards and in calls", async () => {
    const [card, ...more] = await told(half, "make: sort");
    expect(more).to.deep.equal([]);
    expect(card).to.match(/^information O avó tem um selim\.: .*can sort the cards in another way.*cards \w+ and \w+/u);
    expect((await told(half, "make: calls"))[0]).to.match(
      /takes a false call for a true one, in “Workshop – calls”\.$/u,
    );
  });

  it("are a warning in calls where they sound the same, and not where a question is heard", async () => {
    const calls = [...claims, "- [x] O cabo range."];
    const [comma] = await told([...calls, "- [ ] o avô, tem um selim!"], "make: calls");
    expect(comma).to.match(/^warning .*Whoever listens cannot hear that and takes a false call for a true one/u);
    const [question] = await told([...calls, "- [ ] O avô tem um selim?"], "make: calls");
    expect(question).to.match(/^information .*Whoever overlooks it takes a false call/u);
    expect((await told([...calls, "- [ ] o avô, tem um selim!"], "make: sort"))[0]).to.match(/^information /u);
  });

  it("are told where only the accent of an article or its capital tells them apart", async () => {
    const accent = ["- [x] À noite chove.", "- [ ] A noite chove.", ...claims.slice(1)];
    expect((await told(accent, "make: sort"))[0]).to.match(
      /“À noite chove” and “A noite chove” differ only in an accent\./u,
    );
    const capital = ["- [x] A roda.", "- [ ] a roda.", ...claims.slice(2), "- [x] O sino toca."];
    expect((await told(capital, "make: sort"))[0]).to.match(/“A roda” and “a roda” differ only in capitals\./u);
  });

  it("are silent where both are true, and quiet where no deal has both", async () => {
    expect(await told([...claims, "- [x] O avó tem um selim."], "make: sort")).to.deep.equal([]);
    const found = await Promise.all([1, 2, 3, 4].map((seed) => told(half, `make: sort\ntake: 4\nseed: ${seed}`)));
    const apart = found.flat().filter((each) => each.startsWith("hint"));
    expect(apart.length).to.be.greaterThan(0);
    expect(apart[0]).to.match(/: “O avô tem um selim” and “O avó tem um selim” differ only in an accent\.$/u);
    // In a section of which no statement is dealt nothing is said.
    const pairs = ["- roda = wheel", "- selim = saddle", "- pneu = tyre", "- bomba = pump"];
    expect(await told([...pairs, ...half], "make: loop")).to.deep.equal([]);
  });

  it("are silent where they differ in a form, written or made", async () => {
    const table =
      "\n## Verbs\n\n|      | limpar | furar |\n| ---- | ----- | ----- |\n| tu | limpas | furas |\n| ela | limpa | fura |\n";
    const forms = ["- [x] Tu limpas o selim.", "- [ ] Tu limpa o selim.", ...claims.slice(1)];
    expect(await told(forms, "make: sort")).to.have.length(1);
    expect(await told(forms, "make: sort", table)).to.deep.equal([]);
    const tied = ["- [x] Tu [limpas](#limpar) o selim.", ...claims.slice(1)];
    expect(await told(tied, "make: sort\ntwins: 1", table)).to.deep.equal([]);
    // Twins hide nothing of a statement that is one letter off in another word.
    const both = [...tied, "- [ ] Tu [limpas](#limpar) o selem."];
    expect(await told(both, "make: sort\ntwins: 1", table)).to.have.length(1);
    expect(
      await told(
        ["- [x] Tu [limpas](#limpar) o selim.", "- [ ] Tu limpas o selem.", ...claims.slice(1)],
        "make: calls",
        table,
      ),
    ).to.have.length(1);
  });

  it("are silent where half of the statements are about the difference", async () => {
    const lesson = [
      "- [x] O avô ri.",
      "- [ ] O avó ri.",
      "- [x] Bebo água de coco.",
      "- [ ] Bebo água de cocó.",
      claims[1] ?? "",
    ];
    expect(await told(lesson, "make: sort")).to.deep.equal([]);
  });
});

describe("look-alikes among cards of piles", () => {
  const piles = (a: readonly string[], b: readonly string[]): string[] => [
    "### At home",
    ...a.map((each) => `- ${each}`),
    "### Outside",
    ...b.map((each) => `- ${each}`),
  ];

  it("are told where they belong to different piles, but for articles and endings", async () => {
    const [one, ...more] = await told(piles(["coco", "mesa", "cadeira"], ["cocó", "rua", "ponte"]), "make: sort");
    expect(more).to.deep.equal([]);
    expect(one).to.match(/“cocó” and “coco”.*cards \w+ and \w+ apart/u);
    expect(await told(piles(["coco", "cocó", "cadeira"], ["praça", "rua", "ponte"]), "make: sort")).to.deep.equal([]);
    expect(await told(piles(["aluno", "gatos", "o guia"], ["aluna", "gato", "a guia"]), "make: sort")).to.deep.equal(
      [],
    );
    expect(await told(piles(["conta", "mesa", "cadeira"], ["canta", "rua", "ponte"]), "make: sort")).to.have.length(1);
  });

  it("are told where a wrong pair is right for its like", async () => {
    const pairs = ["- coco = coconut", "- cocó = dirt", "- roda = wheel", "- rua = street", "- pneu = tyre"];
    const [apart, mixed] = await Promise.all([1, 16].map((seed) => told(pairs, `make: sort\nseed: ${seed}`)));
    expect(apart?.[0]).to.match(/^hint .*Other words keep them apart/u);
    expect(mixed?.[0]).to.match(/^information .*nothing else keeps cards? .* apart/u);
  });
});

describe("decoys that are named", () => {
  it("have a quiet hint where they look like a word and do no harm", async () => {
    const pairs = ["- coco = coconut", "- roda = wheel", "- rua = street", "- pneu = tyre"];
    const [one, ...more] = await told(pairs, "make: tiles\ngrid: 2 x 2\ndecoys: [cocó, luz]");
    expect(more).to.deep.equal([]);
    expect(one).to.match(/^hint decoys: .*“cocó” differ only in an accent\. Other words keep them apart/u);
    expect(await told(pairs, "make: tiles\ngrid: 2 x 2\ndecoys: [luz]")).to.deep.equal([]);
  });

  it("are compared with the words of both languages", async () => {
    const pairs = ["- coco = coconut", "- roda = wheel", "- rua = street", "- pneu = tyre"];
    const said = (await told(pairs, "make: tiles\ngrid: 2 x 2\ndecoys: [Coconut, the wheel, Rua, luz, Luz]")).join(
      "\n",
    );
    expect(said).to.contain("“rua” and “Rua” differ only in capitals");
    expect(said).to.contain("“coconut” and “Coconut” differ only in capitals");
    // The article of that language.
    expect(said).to.contain("“wheel” and “the wheel” differ only in the article");
    expect(said).not.to.contain("“luz”");
  });
});
