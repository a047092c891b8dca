import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

describe("fewer pairs than a grid has inner edges", () => {
  const words = ["pente = comb", "fita = ribbon", "linha = thread", "agulha = needle"];
  const more = ["dedal = thimble", "botão = button", "tesoura = scissors"];
  const unit = (pairs: readonly string[], options: string): string =>
    `## Loja\n\n${pairs.map((pair) => `- ${pair}\n`).join("")}\n\`\`\`activity\nmake: tiles\n${options}\n\`\`\`\n`;

  async function offered(text: string): Promise<string[]> {
    const fixes = (await readUnitText(text)).findings.flatMap((finding) =>
      finding.code === "too-few-pairs" ? finding.fixes : [],
    );
    for (const { title, edits } of fixes) {
      const { findings } = await readUnitText(applyEdits(text, edits));
      assert.deepEqual(
        findings.filter(({ severity }) => severity === "error").map(({ code }) => code),
        [],
        title,
      );
    }
    return fixes.map(({ title }) => title);
  }

  it("is mended by a smaller grid or blank edges", async () => {
    assert.deepEqual(await offered(unit([...words, ...more], "grid: 2 x 4")), [
      "Make 2 × 3 tiles",
      "Leave 3 inner edges blank",
    ]);
  });

  it("is not mended by what leads to several layouts, or to a decoy that answers", async () => {
    assert.deepEqual(await offered(unit(words, "grid: 4 x 4")), ["Make 2 × 2 tiles"]);
    assert.deepEqual(await offered(unit([...words, ...more], "grid: 2 x 4\ndecoys: [comb]")), []);
  });
});
