import { expect } from "chai";
import { applyEdits, readUnitText } from "../support/units";

const unit = (lines: readonly string[], activity: string, lang = "pt"): string =>
  `---\nteaches: ${lang}\nexplains: en\n---\n\n## Bench\n\n${lines.join("\n")}\n\n\`\`\`activity\n${activity}\n\`\`\`\n`;

/** Titles of the fixes of all findings of a code, each of which leaves no error. */
async function offers(text: string, code: string): Promise<string[]> {
  const { findings } = await readUnitText(text);
  const own = findings.filter((finding) => finding.code === code);
  expect(own, code).to.have.length.above(0);
  for (const { fixes, message } of own) {
    for (const { title, edits } of fixes) {
      const after = (await readUnitText(applyEdits(text, edits))).findings;
      const errors = (list: typeof findings): number => list.filter(({ severity }) => severity === "error").length;
      expect(after.map((each) => each.message)).not.to.include(message, title);
      expect(errors(after), title).to.be.most(errors(findings));
    }
  }
  return own.flatMap(({ fixes }) => fixes.map(({ title }) => title));
}

describe("items that an activity cannot do without", () => {
  const four = ["- [x] O pneu é redondo.", "- [ ] O pneu é redondo.", "- [x] A roda gira.", "- [ ] A corrente voa."];

  it("are statements that are offered for taking out only where enough stay", async () => {
    expect(await offers(unit(four, "make: sort"), "contradicting-statements")).to.deep.equal([]);
    const five = [...four, "- [x] A mola salta.", "- [ ] A mola ri."];
    expect(await offers(unit(five, "make: sort"), "contradicting-statements")).to.deep.equal(["Take this one out"]);
    const twice = [four[0] ?? "", ...four.filter((_, i) => i !== 1), "- [ ] A mola ri."];
    expect(await offers(unit(twice, "make: sort"), "repeated-statement")).to.deep.equal(["Take this one out"]);
    expect(await offers(unit(twice.slice(0, 4), "make: sort"), "repeated-statement")).to.deep.equal([]);
  });

  it("are sentences", async () => {
    const only = ["- a | b = x\n  - b | a"];
    expect(await offers(unit(only, "make: rebuild"), "rebuild-any-order")).to.deep.equal([]);
    const two = [...only, "- o pneu | rola = y"];
    expect(await offers(unit(two, "make: rebuild"), "rebuild-any-order")).to.deep.equal(["Take it out"]);
  });

  it("are pairs with a picture that is not there", async () => {
    const pairs = ["- ![aro](aro.png) = ring", "- roda = wheel", "- mola = spring", "- cabo = cable"];
    expect(await offers(unit(pairs, "make: board"), "missing-picture")).to.deep.equal(["Use the word “aro” instead"]);
    const more = [...pairs, "- sino = bell"];
    expect(await offers(unit(more, "make: board"), "missing-picture")).to.have.length(2);
  });

  it("are letters that are all of a word", async () => {
    const pairs = ["- 橋 = bridge", "- roda 箸 = wheel", "- mola = spring", "- cabo = cable"];
    expect(await offers(unit(pairs, "make: tiles"), "missing-glyph")).to.deep.equal(["Take “箸” out"]);
  });
});

describe("slips under an item", () => {
  it("are taken out with their line: an order that adds nothing, a correction that says the same", async () => {
    const order = [
      "- eu | como | pão = I eat bread\n  - eu | como | pão\n  - pão | como | eu",
      "- ela | ri = she laughs",
    ];
    const text = unit(order, "make: rebuild");
    expect(await offers(text, "idle-order")).to.deep.equal(["Take this order out"]);
    const { findings } = await readUnitText(text);
    const [fix] = findings.flatMap(({ code, fixes }) => (code === "idle-order" ? fixes : []));
    expect(applyEdits(text, fix?.edits ?? [])).to.equal(text.replace("  - eu | como | pão\n", ""));
    const claims = [
      "- [x] A roda gira.",
      "- [ ] A corrente voa.\n  - A corrente voa.",
      "- [x] O pneu rola.",
      "- [ ] A mola ri.",
      "- [ ] O cabo ri.",
    ];
    expect(await offers(unit(claims, "make: sort"), "same-correction")).to.deep.equal([
      "Mark the statement true",
      "Take the correction out",
    ]);
    // A third copy that is false says the contrary of what would then be true.
    expect(await offers(unit([...claims, "- [ ] A corrente voa."], "make: sort"), "same-correction")).to.deep.equal([
      "Take the correction out",
    ]);
  });
});

describe("what is told once", () => {
  it("is a pair the other way round, as such", async () => {
    const pairs = ["- o aro = a roda", "- a roda = o aro", "- a mola = spring", "- o cabo = cable"];
    const { findings } = await readUnitText(unit(pairs, "make: tiles"));
    const [edge, ...more] = findings.filter(({ code }) => code === "ambiguous-edge");
    expect(more).to.deep.equal([]);
    expect(edge?.message).to.contain("“o aro = a roda” stands here the other way round");
  });

  it("is that too few cards can be made, and not that pairs share answers that the kind tells of", async () => {
    const pairs = ["- o aro = x / y", "- a roda = y / x", "- a mola = x / y"];
    const { findings } = await readUnitText(unit(pairs, "make: sort"));
    expect(findings.map(({ code }) => code)).to.deep.equal(["too-few-cards"]);
  });
});
