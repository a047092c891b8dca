import assert from "node:assert/strict";
import type { DealtCalls } from "../../src/activities/calls/model";
import { readUnitText } from "../support/units";

/* Repeated and contradicting statements are judged among those that one list or one set of cards has. */

const fillers = ["O sino toca.", "A boia ri.", "O leme gira.", "A vela nada.", "O mar sobe.", "A rede canta."]
  .concat(["O farol anda.", "O remo parte-se.", "A doca dorme.", "O cabo estica."])
  .map((text, i) => `- [${i % 2 === 0 ? "x" : " "}] ${text}`);

const unit = (own: readonly string[], activity: string, classes = "[20, 22]"): string =>
  `---\nteaches: pt\nexplains: en\nclasses: ${classes}\n---\n\n## Cais\n\n${[...own, ...fillers].join("\n")}\n\n\`\`\`activity\n${activity}\n\`\`\`\n`;

interface Judged {
  readonly severity: string | undefined;
  /** Whether what is said in some hour has both. */
  readonly met: boolean;
  readonly proofs: string;
}

/** What is told of a code where two statements begin with these words. */
async function judged(code: string, text: string, own: string): Promise<Judged> {
  const reading = await readUnitText(text);
  const told = reading.findings.filter((each) => each.code === code);
  assert.ok(told.length <= 1);
  const checked: unknown = "checked" in reading ? reading.checked : undefined;
  assert.ok(Array.isArray(checked));
  const { deals, claims, reserve }: DealtCalls = checked[0].dealt;
  const all = [...claims, ...reserve];
  const said = deals.map((deal) => [...deal.order, ...deal.reserve].map((index) => all[index]?.text ?? ""));
  const met = said.some((texts) => texts.filter((each) => each.startsWith(own)).length > 1);
  const proofs = [...new Set(deals.map(({ proof }) => proof.status))].sort().join(" ");
  return { severity: told[0]?.severity, met, proofs };
}

describe("statements of different class hours", () => {
  const seeds = Array.from({ length: 40 }, (_, i) => i + 1);

  it("are no repetition of each other", async () => {
    const seen = new Set<string>();
    for (const seed of seeds) {
      const text = unit(["- [x] A onda cresce.", "- [x] A onda cresce."], `make: calls\ntake: 6\nseed: ${seed}`);
      const { severity, met } = await judged("repeated-statement", text, "A onda");
      assert.equal(severity, met ? "warning" : undefined, `seed ${seed}`);
      seen.add(`${severity}`);
    }
    assert.deepEqual([...seen].sort(), ["undefined", "warning"]);
  });

  it("are one where they sound the same and are called, and are two on cards", async () => {
    const own = ["- [x] A onda cresce.", "- [x] a onda, cresce!", "- [x] A onda cresce?"];
    for (const make of ["calls", "sort"]) {
      const { findings } = await readUnitText(unit(own, `make: ${make}`, "[20]"));
      const told = findings.filter(({ code }) => code === "repeated-statement").map(({ message }) => message);
      assert.deepEqual(
        told,
        make === "calls" ? ["“a onda, cresce!” sounds like “A onda cresce.”, which is called as well."] : [],
      );
    }
  });

  it("contradict each other only as what is written does: no key is against another", async () => {
    const seen = new Set<string>();
    for (const seed of seeds) {
      const text = unit(["- [x] A onda cresce.", "- [ ] A onda cresce."], `make: calls\ntake: 6\nseed: ${seed}`);
      const { severity, met, proofs } = await judged("contradicting-statements", text, "A onda");
      assert.equal(severity === "error", met, `seed ${seed}: ${severity}`);
      assert.equal(proofs.includes("none"), severity === "error", `seed ${seed}: ${proofs}`);
      seen.add(`${severity}`);
    }
    assert.deepEqual([...seen].sort(), ["error", "warning"]);
  });
});
