import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import path from "node:path";
import { applyEdits, readUnitText } from "../support/units";
import { parseFixture } from "./fixture";
import { items } from "./meaning";

const { text } = parseFixture(readFileSync(path.join(__dirname, "fixtures", "bullets-meant.md"), "utf8"));

/** The messages of what is too few, and the sections as their first fixes leave them. */
async function mended(): Promise<{ readonly messages: readonly string[]; readonly left: string }> {
  const { findings } = await readUnitText(text);
  const edits = findings.flatMap(({ fixes }) => fixes[0]?.edits ?? []);
  return { messages: findings.map(({ message }) => message), left: applyEdits(text, edits) };
}

describe("bullets where an activity finds none of its items", () => {
  it("are named with their number, where they are sentences or have others below them", async () => {
    assert.deepEqual((await mended()).messages, [
      "Strips need at least 3 events (numbered items); “De manhã” has none, but 5 bullets, which have no order.",
      "Strips need at least 3 events (numbered items); “De noite” has none.",
      "Sorting needs at least 4 cards; there is none, but 2 items with 5 bullets below them: a heading names a pile.",
      "Sorting needs at least two piles, headings below the section's own; there is none, but 2 items with 4 bullets below them: a heading names a pile.",
    ]);
  });

  it("become events in their order, or piles with their cards", async () => {
    const { left } = await mended();
    assert.deepEqual(items(left), [
      "## De manhã",
      "1: A Joana abre a oficina.",
      "2: O Tomé chega:",
      "  any com uma roda",
      "  any com um sino",
      "3: Um gato dorme.",
      "4: Chove.",
      "5: O Tomé ri alto.",
      "## De noite",
      "## No porto",
      "pile O mar",
      "pile O cais",
      "## Na rua",
      "pile a ponte",
      "pile o poste",
    ]);
    assert.deepEqual(
      (await readUnitText(left)).findings.map(({ code }) => code),
      ["too-few-events"],
    );
  });

  it("become piles with the cards behind their colons; pairs only where asked", async () => {
    const cards = ["- O mar: barco, vela", "- O cais：grua、saco、rede"];
    const unit = `## No porto\n\n${cards.join("\n")}\n\n\`\`\`activity\nmake: sort\n\`\`\`\n`;
    const { findings } = await readUnitText(unit);
    const sure = findings.flatMap(({ fixes }) => fixes.filter(({ preferred }) => preferred));
    assert.deepEqual(sure, []);
    const fix = findings.flatMap(({ code, fixes }) => (code === "too-few-cards" ? fixes : []));
    const left = applyEdits(unit, fix[0]?.edits ?? []);
    assert.equal(
      left,
      unit.replace(cards.join("\n"), "### O mar\n\n- barco\n- vela\n\n### O cais\n\n- grua\n- saco\n- rede"),
    );
    assert.deepEqual((await readUnitText(left)).findings, []);
  });
});
