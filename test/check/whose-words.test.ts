import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

/* What takes words of the writer's out, or only guesses what was meant, is offered and never done unasked. */

const others = "- o selim = the saddle\n- a luz = the light\n- o sino = the bell\n- a bomba = the pump";
const unit = (sections: readonly string[], activity: string): string =>
  `${sections.map((items, i) => `## ${i === 0 ? "Parts" : "Parts again"}\n\n${items}\n`).join("\n")}\n\`\`\`activity\n${activity}\n\`\`\`\n`;

/** For each fix of a code its title, marked where it is done unasked. */
async function offers(text: string, code: string): Promise<string[]> {
  const { findings } = await readUnitText(text);
  return findings
    .filter((finding) => finding.code === code)
    .flatMap(({ fixes }) => fixes.map(({ title, preferred }) => `${title}${preferred ? " *" : ""}`));
}

describe("a pair that stands twice", () => {
  const taken = "Take out “a roda = the wheel”";
  for (const [what, first, second, title] of [
    ["as it is", "", "", `${taken} *`],
    ["with an example", "", "\n  - A roda gira.", taken],
    ["with one more answer", "", " / the hoop", taken],
    ["with an example above", "\n  - A roda gira.", "", taken],
  ] as const)
    it(`${what}`, async () => {
      const text = unit([`- a roda = the wheel${first}\n${others}\n- a roda = the wheel${second}`], "make: tiles");
      assert.deepEqual(await offers(text, "duplicate-answer"), [title]);
    });

  it("in two sections", async () => {
    const text = unit(
      [`- a roda = the wheel\n${others}`, "- a roda = the wheel"],
      "make: tiles\nfrom: [Parts, Parts again]",
    );
    assert.deepEqual(await offers(text, "duplicate-answer"), [taken]);
  });
});

describe("an accepted answer that is another item's as well", () => {
  it("is taken out only where it is asked for", async () => {
    const text = unit([`- o aro = the rim / the ring\n- o anel = the ring\n${others}`], "make: tiles");
    const [first, ...rest] = await offers(text, "duplicate-answer");
    assert.match(first ?? "", /^Take the answer “the ring” out/);
    assert.ok([first, ...rest].every((title) => !title?.endsWith("*")));
  });
});

describe("a statement that stands twice", () => {
  const claims = "- [x] A roda gira.\n- [ ] O sino dorme.\n- [x] A luz arde.";
  for (const [what, again, title] of [
    ["as it is", "", "Take this one out *"],
    ["with a correction", "\n  - O sino toca.", "Take this one out"],
  ] as const)
    it(what, async () => {
      const text = unit([`${claims}\n- [ ] O selim voa.\n- [ ] O sino dorme.${again}`], "make: sort");
      assert.deepEqual(await offers(text, "repeated-statement"), [title]);
    });
});

describe("a name in “from” that no section has", () => {
  const sections = [others, "- o aro = the rim\n- o cabo = the cable\n- a rede = the net\n- o gancho = the hook"];
  for (const [from, wanted] of [
    ["Part", "Change to “Parts” *"],
    ["parts", "Change to “Parts” *"],
    ['"## Parts"', "Change to “Parts” *"],
    ["Shopping", "Change to “Parts”"],
    ["Parts + Shopping", "Change to “Parts again”"],
    ["Parts + Parts again", "Put them in brackets *"],
    ["Parts again and Parts", "Put them in brackets *"],
  ] as const)
    it(from, async () => {
      const text = unit(sections, `make: tiles\nfrom: ${from}`);
      assert.equal((await offers(text, "unknown-section"))[0], wanted);
    });

  it("several names are a list of them", async () => {
    const text = unit(sections, "make: tiles\nfrom: Parts again and Parts");
    const [finding] = (await readUnitText(text)).findings;
    assert.match(applyEdits(text, finding?.fixes[0]?.edits ?? []), /^from: \[Parts again, Parts\]$/m);
  });
});
