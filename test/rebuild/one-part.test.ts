import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const unit = (line: string): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Oficina\n\n- ${line}\n- O pneu | perde ar. = The tyre loses air.\n\n\`\`\`activity\nmake: rebuild\n\`\`\`\n`;

/** What the fixes make of a line, by their titles. */
async function offers(line: string): Promise<Record<string, string | undefined>> {
  const text = unit(line);
  const { findings } = await readUnitText(text);
  const [finding] = findings.filter(({ code }) => code === "one-part-sentence");
  assert.ok(finding, line);
  return Object.fromEntries(finding.fixes.map(({ title, edits }) => [title, applyEdits(text, edits).split("\n")[7]]));
}

describe("a sentence of one part", () => {
  const out = { "Take it out": "- O pneu | perde ar. = The tyre loses air." };

  it("is cut at slashes where there are two or more", async () => {
    assert.deepEqual(await offers("Onde / guardas / chaves? = Where do you keep keys?"), {
      "Cut it at the slashes": "- Onde | guardas | chaves? = Where do you keep keys?",
      ...out,
    });
    assert.deepEqual(await offers("Onde / guardas / as / chaves? = Where do you keep the keys?"), {
      "Cut it at the slashes": "- Onde | guardas | as | chaves? = Where do you keep the keys?",
      ...out,
    });
  });

  it("has accepted answers where there is one slash, or none", async () => {
    assert.deepEqual(await offers("Obrigado! / Obrigada! = Thank you!"), out);
    assert.deepEqual(await offers("Obrigado! = Thank you!"), out);
  });

  it("is cut with all others where none is more than one part", async () => {
    const text = unit("Onde / guardas / chaves? = Where do you keep keys?").replace(
      "O pneu | perde ar.",
      "Pneus / perdem / ar.",
    );
    const { findings } = await readUnitText(text);
    const fixes = findings.filter(({ code }) => code === "no-sentences").flatMap((finding) => finding.fixes);
    const cut = fixes.find(({ title }) => title === "Cut the sentences at the slashes");
    assert.deepEqual(
      applyEdits(text, cut?.edits ?? [])
        .split("\n")
        .slice(7, 9),
      ["- Onde | guardas | chaves? = Where do you keep keys?", "- Pneus | perdem | ar. = The tyre loses air."],
    );
  });
});
