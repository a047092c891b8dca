import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

describe("a card that stands under several headings", () => {
  const unit = (um: readonly string[], dois: readonly string[]): string =>
    `## Loja\n\n### um\n\n${um.map((text) => `- ${text}\n`).join("")}\n### dois\n\n${dois.map((text) => `- ${text}\n`).join("")}\n\`\`\`activity\nmake: sort\n\`\`\`\n`;

  const found = async (text: string): Promise<{ titles: string[]; after: (title: string) => Promise<string[]> }> => {
    const { findings } = await readUnitText(text);
    const fixes = findings.filter(({ code }) => code === "card-in-two-piles").flatMap((finding) => finding.fixes);
    const after = async (title: string): Promise<string[]> => {
      const fix = fixes.find((each) => each.title === title);
      assert.ok(fix, title);
      const { findings: left } = await readUnitText(applyEdits(text, fix.edits));
      return left.map(({ code }) => code);
    };
    return { titles: fixes.map(({ title }) => title), after };
  };

  it("is taken out of the second pile, however often it stands there", async () => {
    const once = await found(unit(["pente", "fita", "botão"], ["linha", "agulha", "dedal", "fita"]));
    assert.deepEqual(await once.after("Take it out here"), []);
    const twice = await found(unit(["pente", "fita", "botão", "fita"], ["linha", "agulha", "dedal", "fita", "fita"]));
    assert.deepEqual(await twice.after("Take it out of this pile"), ["repeated-card"]);
  });

  it("stays where the pile would be left with nothing", async () => {
    const { titles } = await found(unit(["pente", "fita", "botão", "linha"], ["fita"]));
    assert.deepEqual(titles, ["Let piles overlap"]);
  });
});
