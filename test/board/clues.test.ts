import { expect } from "chai";
import { applyEdits, readUnitText } from "../support/units";

const unit = (pairs: readonly string[], options: string, after = ""): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Bench\n\n${pairs.map((pair) => `- ${pair}`).join("\n")}\n\n\`\`\`activity\nmake: board\n${options}\n\`\`\`\n${after}`;

/** What is said of clues that fit two words; every fix takes its finding away and brings none of its kind. */
async function told(text: string): Promise<{ message: string; fixes: string[]; related: string[] }[]> {
  const { findings } = await readUnitText(text);
  const own = findings.filter(({ code }) => code === "board-clue-fits-two");
  for (const { fixes, message } of own) {
    for (const { title, edits } of fixes) {
      const after = (await readUnitText(applyEdits(text, edits))).findings.filter(
        ({ code }) => code === "board-clue-fits-two" || code === "board-too-few",
      );
      expect(after.length, `${message} ${title}`).to.be.below(own.length);
      expect(after.map((each) => each.message)).not.to.include(message);
    }
  }
  return own.map(({ message, fixes, related }) => ({
    message,
    fixes: fixes.map(({ title }) => title),
    related: related.map(({ range }) => text.slice(range.start, range.end)),
  }));
}

const pairs = [
  "o aro / a argola = the ring / the hoop",
  "o selim = the saddle",
  "a roda = the wheel",
  "a mola = the spring",
  "o cabo = the cable",
];

const said = [
  "o aro / a argola = the ring / the hoop\n  - O aro é de ferro.",
  "o selim = the saddle\n  - Um selim range.",
  "a roda = the wheel\n  - A roda gira.",
  "a mola = the spring\n  - Uma mola salta.",
  "o cabo = the cable\n  - Um cabo de travão parte.",
];

describe("words of a board that are never called", () => {
  const full = "grid: 2 x 3\ntake: 5\n";

  it("answer no gloss that is called, also as an answer that is not printed or a word of another section", async () => {
    const [hoop, ...none] = await told(unit(pairs, `${full}distractors: [a argola]`));
    expect(none).to.deep.equal([]);
    expect(hoop?.message).to.contain("“the ring” is called for “o aro” and fits “a argola”");
    const key = "\n## Other\n\n- a chave = the ring\n";
    expect(await told(unit(pairs, `${full}distractors: [a chave]`, key))).to.have.length(1);
    expect(await told(unit(pairs, `${full}distractors: [a chave]`))).to.deep.equal([]);
    // The caller says the word itself.
    expect(await told(unit(pairs, `${full}clue: word\ndistractors: [a argola]`))).to.deep.equal([]);
  });

  it("look like no answer of a word that is called", async () => {
    const { findings } = await readUnitText(unit(pairs, `${full}distractors: [A Argola]`));
    const [finding] = findings.filter(({ code }) => code === "look-alike");
    expect(finding?.severity).to.equal("information");
    expect(finding?.message).to.match(
      /“a argola” and “A Argola” differ only in capitals\. .*“o aro” and “A Argola” apart/u,
    );
  });

  it("stand in no sentence that is called, with another article neither, nor answer a word in it", async () => {
    const example = `${full}clue: example\n`;
    for (const word of ["travão", "o travão", "O Travão."]) {
      const [found] = await told(unit(said, `${example}distractors: [${word}]`));
      expect(found?.message, word).to.contain("“Um cabo de travão parte.” is called for “o cabo”");
    }
    const [gloss] = await told(unit(said, `${example}show: gloss\ndistractors: [the hoop]`));
    expect(gloss?.message).to.contain("“O aro é de ferro.” is called for “the ring” and fits “the hoop”");
    expect(await told(unit(said, `${example}distractors: [o trav]`))).to.deep.equal([]);
    expect(await told(unit(said, `${example}show: gloss\ndistractors: [the brake]`))).to.deep.equal([]);
  });

  it("are left out together where one alone brings the next", async () => {
    const found = await told(unit(said, "clue: example\ngrid: 2 x 4\ndistractors: [travão, salta, ferro]"));
    expect(found).to.have.length(3);
    for (const { fixes } of found) expect(fixes).to.have.length(1);
  });
});

describe("a sentence with two words of the board in it", () => {
  it("is told with the pair of the other word", async () => {
    const both = said.map((each) => each.replace("Um selim range.", "O selim pesa como uma roda."));
    const [found] = await told(unit(both, "clue: example\ngrid: 2 x 3\ndistractors: [a luz]"));
    expect(found?.message).to.contain("is called for “o selim” and fits “a roda”");
    expect(found?.related[0]).to.equal("a roda = the wheel");
  });
});
