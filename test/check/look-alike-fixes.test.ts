import { expect } from "chai";
import { applyEdits, readUnitText } from "../support/units";

const front = "---\nteaches: pt\nexclaimss: en\n---\n\n";

const unit = (lines: readonly string[], activity: string): string =>
  `${front}## Workshop\n\n${lines.join("\n")}\n\n\`\`\`activity\n${activity}\n\`\`\`\n`;

/** Titles of the fixes of the first look-alike; each takes it away, and nothing worse than a hint comes instead. */
async function offers(lines: readonly string[], activity: string): Promise<string[]> {
  const text = unit(lines, activity);
  const { findings } = await readUnitText(text);
  const [finding] = findings.filter(({ code }) => code === "look-alike");
  expect(finding, activity).not.to.equal(undefined);
  for (const { title, edits } of finding?.fixes ?? []) {
    const after = (await readUnitText(applyEdits(text, edits))).findings;
    expect(
      after.map(({ message }) => message),
      title,
    ).not.to.include(finding?.message);
    const fresh = after.filter(({ code }) => !findings.some((each) => each.code === code));
    expect(
      fresh.map(({ code }) => code),
      title,
    ).to.deep.equal([]);
  }
  return finding?.fixes.map(({ title }) => title) ?? [];
}

const meant = "Say here that the difference is meant";

const story = ["1. A avó entra.", "2. O pneu está furado.", "3. O avô entra.", "4. A porta fecha.", "5. A roda gira."];

const claims = [
  "- [x] O avô tem um selim.",
  "- [x] A roda gira.",
  "- [x] O pneu rola.",
  "- [ ] A corrente é de papel.",
  "- [ ] A bomba canta.",
  "- [ ] O avó tem um selim.\n  - O avô tem um selim.",
];

describe("fixes of look-alikes", () => {
  it("take one of two events out, where strips enough stay, or say that it is meant", async () => {
    const both = [meant, "Take out “O avô entra.”", "Take out “A avó entra.”"];
    expect(await offers(story, "make: strips")).to.deep.equal(both);
    expect(await offers(story.slice(0, 3), "make: strips")).to.deep.equal([meant]);
  });

  it("part packets, or take a sentence out", async () => {
    const others = ["- Onde fica o travão? = Where is the brake?", "- O selim está sujo. = The saddle is dirty."];
    const lent = ["- o rapaz | conta | a história | toda = a", "- a história | canta | o rapaz = b", ...others];
    expect(await offers(lent, "make: rebuild\npacket: 2")).to.deep.equal([
      "Put one sentence into each packet",
      meant,
      "Take out “a história canta o rapaz = b”",
      "Take out “o rapaz conta a história toda = a”",
    ]);
    const inside = ["- A avó vê o avô. = The granny sees the grandpa.", ...others];
    expect(await offers(inside, "make: rebuild")).to.deep.equal([
      meant,
      "Take out “A avó vê o avô. = The granny sees the grandpa.”",
    ]);
  });

  it("take a statement out where enough stay to be sorted or called", async () => {
    const both = [meant, "Take out “O avó tem um selim.”", "Take out “O avô tem um selim.”"];
    expect(await offers(claims, "make: sort")).to.deep.equal(both);
    expect(await offers(claims, "make: calls")).to.deep.equal([meant]);
    const more = [...claims, "- [x] O cabo parte.", "- [ ] O cabo ri."];
    expect(await offers(more, "make: calls")).to.deep.equal(both);
  });

  it("take another seed where that chooses others", async () => {
    const more = [...claims.slice(0, 5), "- [ ] O avó tem um selim.", "- [x] O cabo parte.", "- [ ] O cabo ri."];
    const found: string[] = [];
    for (let seed = 1; seed < 40 && found.length === 0; seed++) {
      const { findings } = await readUnitText(unit(more, `make: sort\ntake: 4\nseed: ${seed}`));
      if (!findings.some(({ code, severity }) => code === "look-alike" && severity === "information")) continue;
      found.push(...(await offers(more, `make: sort\ntake: 4\nseed: ${seed}`)));
    }
    expect(found[0]).to.match(/^Use seed \d+: then they do not meet$/u);
  });

  it("leave other look-alikes as they are, and mend one of three alike only with all", async () => {
    const two = [...story, "6. O travão range.", "7. O sino toca.", "8. O trovão range."];
    expect(await offers(two, "make: strips")).to.deep.equal([
      meant,
      "Take out “O avô entra.”",
      "Take out “A avó entra.”",
    ]);
    const three = [...story, "6. A avô entra."];
    expect(await offers(three, "make: strips")).to.deep.equal([meant]);
  });

  it("say in the activity what is meant of its own words", async () => {
    const pairs = ["- coco = coconut", "- roda = wheel", "- rua = street", "- pneu = tyre"];
    expect(await offers(pairs, "make: tiles\ngrid: 2 x 2\ndecoys: [cocó]")).to.deep.equal([meant]);
    expect(
      await offers(pairs, "make: tiles\ngrid: 2 x 2\ndecoys: [cocó]\nallow: {too-few-decoys: one is enough}"),
    ).to.deep.equal([]);
  });

  it("stand at items of a table, of a pile and with a writer", async () => {
    const table = [
      "| a | b |",
      "| -- | -- |",
      "| coco | coconut |",
      "| cocó | dirt |",
      "| roda | wheel |",
      "| rua | street |",
    ];
    expect(await offers(table, "make: board\ngrid: 2 x 2\nclue: gloss")).to.deep.equal([meant]);
    const piles = [
      "### At home",
      "- coco",
      "- mesa",
      "- cadeira",
      "### Outside",
      "- cocó <!-- by: K7 -->",
      "- rua",
      "- ponte",
    ];
    expect(await offers(piles, "make: sort")).to.deep.equal([meant, "Take out “cocó”", "Take out “coco”"]);
  });
});
