import { expect } from "chai";
import { applyEdits, readUnitText, slice } from "../support/units";

const unit = (pairs: readonly string[], options = "", make = "tiles"): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Bench\n\n${pairs.map((pair) => `- ${pair}`).join("\n")}\n\n\`\`\`activity\nmake: ${make}\n${options}\`\`\`\n`;

interface Offer {
  readonly title: string;
  /** Findings after the fix, as severity and code. */
  readonly after: readonly string[];
}

async function offers(text: string, code: string): Promise<{ where: string; severity: string; fixes: Offer[] }[]> {
  const { findings } = await readUnitText(text);
  return Promise.all(
    findings
      .filter((finding) => finding.code === code)
      .map(async ({ range, severity, fixes }) => ({
        where: slice(text, range),
        severity,
        fixes: await Promise.all(
          fixes.map(async ({ title, edits }) => {
            const { findings: left } = await readUnitText(applyEdits(text, edits));
            return { title, after: left.map((finding) => `${finding.severity} ${finding.code}`) };
          }),
        ),
      })),
  );
}

const titles = (fixes: readonly Offer[]): string[] => fixes.map(({ title }) => title);

describe("items that share an answer", () => {
  it("are kept apart by other edges where there are edges", async () => {
    const message = async (pairs: readonly string[], make: string): Promise<string> => {
      const { findings } = await readUnitText(unit(pairs, "", make));
      return findings.find(({ code }) => code === "duplicate-answer")?.message ?? "";
    };
    const four = ["o aro = the ring", "o anel = the ring", "a roda = the wheel", "o selim = the saddle"];
    expect(await message(four, "tiles")).to.contain("Other edges keep them apart: the solution is still the only one.");
    const sentences = ["O aro | está | aqui. = a", "O aro está | aqui. = b", "A mola | caiu. = c"];
    expect(await message(sentences, "rebuild")).to.match(/“a” and “b”\. The solution is still the only one\.$/u);
  });
});

describe("fixes of items that share an answer", () => {
  it("take no pair out that an activity needs", async () => {
    const four = ["o aro = the ring", "o anel = the ring", "a roda = the wheel", "o selim = the saddle"];
    expect((await offers(unit(four), "duplicate-answer")).map(({ fixes }) => fixes)).to.deep.equal([[]]);
    const [five] = await offers(unit([...four, "a mola = the spring"], "grid: 2 x 2\n"), "duplicate-answer");
    expect(titles(five?.fixes ?? [])).to.deep.equal(["Take out “o anel = the ring”", "Take out “o aro = the ring”"]);
    for (const { after } of five?.fixes ?? []) expect(after.join()).not.to.contain("error");
    // Another activity about the section may need it too: 2 × 3 tiles have seven inner edges.
    const seven = [...four, "a mola = the spring", "o cabo = the cable", "a bomba = the pump"];
    const two = `${unit(seven, "grid: 2 x 2\n")}\n\`\`\`activity\nmake: tiles\ngrid: 2 x 3\n\`\`\`\n`;
    expect((await offers(two, "duplicate-answer")).map(({ fixes }) => fixes)).to.deep.equal([[]]);
  });

  it("leave no more words in doubt on a board that has some already", async () => {
    // The board takes another “vermelho” in the place of the pair that goes.
    const board = [
      "vermelho = pink",
      "vermelho = red",
      "selim = green",
      "vermelho = pink",
      "roda = green",
      "o cabo = pink",
      "selim = pink",
    ];
    const text = unit(board, "clue: word\nshow: word\ndistractors: [selim, o anel]\n", "board");
    const errors = (codes: readonly string[]): number => codes.filter((each) => each.startsWith("error")).length;
    const { findings } = await readUnitText(text);
    const before = errors(findings.map(({ severity, code }) => `${severity} ${code}`));
    expect(before).to.equal(1);
    const found = await offers(text, "duplicate-answer");
    expect(found.length).to.be.greaterThan(0);
    const fixes = found.flatMap((each) => each.fixes);
    for (const { after, title } of fixes) expect(errors(after), title).to.be.at.most(before);
    expect(titles(fixes)).not.to.contain("Take out “roda = green”");
  });

  it("take no pair out in whose place one comes that a named decoy answers", async () => {
    const five = [
      "o aro = the ring",
      "o anel = the ring",
      "a roda = the wheel",
      "o selim = the saddle",
      "a mola = the spring",
    ];
    const options = (decoy: string): string => `grid: 2 x 2\nfill: words\ndecoys: [${decoy}, b, c, d, e, f, g, h]\n`;
    const [sure] = await offers(unit(five, options("a")), "duplicate-answer");
    expect(titles(sure?.fixes ?? []).length).to.be.greaterThan(0);
    const [found] = await offers(unit(five, options("the spring")), "duplicate-answer");
    expect(found?.fixes.flatMap(({ after }) => after)).not.to.contain("error answering-decoy");
  });

  it("take shared answers out where they are not printed, all of them at once", async () => {
    const shared = [
      "o aro = the ring / the hoop",
      "o anel = the hoop / the ring",
      "a roda = the wheel",
      "a mola = the spring",
    ];
    const [found] = await offers(unit(shared), "duplicate-answer");
    expect(titles(found?.fixes ?? [])).to.deep.equal(["Take “the hoop” and “the ring” out as answers"]);
    expect(found?.fixes[0]?.after).to.deep.equal([]);
    const first = ["o aro = the ring / the hoop", "o anel = the hoop", "a roda = the wheel", "a mola = the spring"];
    const [other] = await offers(unit(first), "duplicate-answer");
    expect(titles(other?.fixes ?? [])).to.deep.equal(["Take the answer “the hoop” out of “o aro = the ring”"]);
    expect(other?.fixes[0]?.after).to.deep.equal([]);
    expect(other?.where).to.equal("the hoop");
  });

  it("of three or more leave the first alone", async () => {
    const three = [
      "o aro = the ring",
      "o anel = the ring",
      "a argola = the ring",
      "a roda = the wheel",
      "o selim = the seat",
      "a mola = the spring",
    ];
    const [found] = await offers(unit(three), "duplicate-answer");
    expect(titles(found?.fixes ?? [])).to.deep.equal(["Take out all of them but the first"]);
    expect(found?.fixes[0]?.after).to.deep.equal([]);
  });

  // Six pairs that fit one another in many ways: the proof finds a second layout for each arrangement of this seed.
  const tangled = [
    "o aro = a bomba",
    "a roda = o aro",
    "a roda = wheel",
    "o aro = o aro / ring",
    "o aro = wheel",
    "o cabo = o aro / ring",
  ];

  it("are shown to leave one solution where there are several, the smallest change first", async () => {
    for (const code of ["duplicate-answer", "ambiguous-edge"]) {
      const found = await offers(unit(tangled, "grid: 2 x 2\n"), code);
      const errors = found.filter(({ severity }) => severity === "error");
      expect(errors, code).to.have.length.above(0);
      for (const { fixes } of errors) {
        expect(fixes, code).to.have.length.above(0);
        expect(new Set(titles(fixes)).size).to.equal(fixes.length);
        for (const { title, after } of fixes) expect(after.join(), title).not.to.contain("error");
        expect(fixes[0]?.title).to.match(/^Use seed/u);
      }
    }
  });
});
