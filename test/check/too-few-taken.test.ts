import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

/* Where `take` leaves too little, its number is said, and the fewest that do are offered: whatever number of versions there is. */

const claims = ["[x] A mola salta.", "[ ] O cabo ri.", "[x] O aro gira.", "[ ] A roda voa."]
  .concat(["[x] O sino toca.", "[ ] O pneu canta.", "[x] A luz brilha.", "[ ] O selim nada."])
  .map((line) => `- ${line}`);
const pairs = ["roda = wheel", "mola = spring", "cabo = cable", "sino = bell", "aro = rim", "selim = saddle"].map(
  (line) => `- ${line}`,
);
const events = ["Ela entra.", "Ela mede a roda.", "Ela paga.", "Ela sai.", "Ela volta."].map(
  (line, i) => `${i + 1}. ${line}`,
);

const unit = (lines: readonly string[], activity: string): string =>
  `---\nteaches: pt\nexplains: en\nclasses: [20, 22, 24]\n---\n\n## Oficina\n\n${lines.join("\n")}\n\n\`\`\`activity\n${activity}\n\`\`\`\n`;

interface Told {
  readonly message: string;
  readonly titles: readonly string[];
}

/** What the only error says, and what its fixes are called; each of them leaves no error and no warning. */
async function told(code: string, text: string): Promise<Told> {
  const { findings } = await readUnitText(text);
  const [finding, ...others] = findings.filter(({ severity }) => severity === "error");
  assert.ok(finding);
  assert.equal(finding.code, code);
  assert.equal(others.length, 0);
  for (const { title, edits } of finding.fixes) {
    const after = await readUnitText(applyEdits(text, edits));
    const loud = after.findings.filter(({ severity }) => severity === "error" || severity === "warning");
    assert.deepEqual(
      loud.map((each) => each.message),
      [],
      title,
    );
  }
  return { message: finding.message, titles: finding.fixes.map(({ title }) => title) };
}

describe("too little by `take`", () => {
  for (const versions of ["", "\nversions: 2"]) {
    const also = versions === "" ? "" : " in two versions";
    it(`of statements to call${also}`, async () => {
      assert.deepEqual(await told("too-few-statements", unit(claims, `make: calls\ntake: 4${versions}`)), {
        message: "Calls need at least 6 statements; `take` leaves 4 of 8.",
        titles: ["Take 6"],
      });
    });
    it(`of cards to sort${also}`, async () => {
      assert.deepEqual(await told("too-few-cards", unit(claims, `make: sort\ntake: 3${versions}`)), {
        message: "Sorting needs at least 4 cards; `take` leaves 3.",
        titles: ["Take 4"],
      });
    });
    it(`of events${also}`, async () => {
      assert.deepEqual(await told("too-few-events", unit(events, `make: strips\ntake: 2${versions}`)), {
        message: "Strips need at least 3 events; `take` leaves 2 of 5.",
        titles: ["Take 3"],
      });
    });
    it(`of pairs for a circle${also}`, async () => {
      const inTwo = versions === "" ? "" : `${versions}\nsize: mini`;
      assert.deepEqual(await told("loop-too-few", unit(pairs, `make: loop\ntake: 3${inTwo}`)), {
        message: "A loop needs at least 4 pairs; `take` leaves 3 of 6.",
        titles: ["Take 4"],
      });
    });
    it(`of pairs for tiles${also}`, async () => {
      assert.deepEqual(await told("too-few-pairs", unit(pairs, `make: tiles\ngrid: 2 x 2\ntake: 3${versions}`)), {
        message: "2 × 2 tiles have 4 inner edges, one for each pair; `take` leaves 3 of 6.",
        titles: ["Take 4", "Leave 1 inner edge blank"],
      });
    });
  }

  it("is the section's fault where that has too little", async () => {
    const few = await told("too-few-pairs", unit(pairs.slice(0, 3), "make: tiles\ntake: 2"));
    assert.equal(few.message, "Tiles need at least 4 pairs (2 × 2 tiles); “Oficina” has 3.");
    const three = await told("too-few-cards", unit(pairs.slice(0, 3), "make: sort\nversions: 2"));
    assert.equal(three.message, "Sorting needs at least 4 cards; there are 3.");
  });
});

describe("too few pairs for tiles with words outside", () => {
  it("may do with a smaller grid and as many words as are left", async () => {
    const { titles } = await told("too-few-pairs", unit(pairs, "make: tiles\ngrid: 3 x 3\ndecoys: 4"));
    assert.deepEqual(titles, [
      "Make 2 × 2 tiles, with 2 words on the outer edges",
      "Leave 6 inner edges blank, with blank outer edges",
    ]);
  });

  it("may do with blank edges where no word is left", async () => {
    const { titles } = await told("too-few-pairs", unit(pairs.slice(0, 4), "make: tiles\ngrid: 2 x 3\ndecoys: 4"));
    assert.equal(titles[0], "Make 2 × 2 tiles, with blank outer edges");
  });
});
