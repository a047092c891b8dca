import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const pairs = (words: string): string =>
  [..."abcd"].map((letter) => `- ${letter}${words} = ${words}${letter}\n`).join("");
const block = (from: string): string => `\n\`\`\`activity\nmake: tiles\ngrid: 2 x 2\nfrom: ${from}\n\`\`\`\n`;

/** What each fix of the finding makes of the text; none is done unasked. */
async function made(text: string): Promise<string[]> {
  const { findings } = await readUnitText(text);
  const [found, ...more] = findings.filter(({ code }) => code === "unknown-section");
  assert.deepEqual(more, []);
  return (found?.fixes ?? []).map(({ edits, preferred }) => {
    assert.notEqual(preferred, true);
    return applyEdits(text, edits);
  });
}

describe("a deeper heading in “from”", () => {
  const text = `## Feira\n\n### Uvas\n\n${pairs("u")}\n### Peras\n\n${pairs("p")}\n## Jogo\n`;

  it("becomes a section with the others of its own, or the section is taken that it stands in", async () => {
    const whole = text + block("Peras");
    assert.deepEqual(await made(whole), [whole.replaceAll("###", "##"), text + block("Feira")]);
  });

  it("stays a heading where another activity has the section, or a further one is deeper still", async () => {
    const taken = text + block("Feira");
    assert.deepEqual(await made(taken + block("Peras")), [taken + block("Feira")]);
    const deep = text.replace("### Peras", "#### Peras");
    assert.deepEqual(await made(deep + block("Peras")), [deep + block("Feira")]);
  });
});
