import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const unit =
  "## Words\n\n- o sol = the sun\n- o mar = the sea\n\n### Waves\n\n- a onda = the wave\n- a rede = the net\n- o cais = the quay\n- o mastro = the mast\n\n```activity\nmake: tiles\ngrid: 2 x 2\nfrom: Waves\n```\n";

describe("a section that is named by a heading within another one", () => {
  it("is told as such, with both that may be meant", async () => {
    const found = (await readUnitText(unit)).findings.filter(({ code }) => code === "unknown-section");
    assert.deepEqual(
      found.map(({ message, range }) => [message, unit.slice(range.start, range.end)]),
      [["“Waves” is a heading within the section “Words”: a section has two number signs.", "Waves"]],
    );
    const fixed = (found[0]?.fixes ?? []).map(({ edits }) => applyEdits(unit, edits));
    assert.deepEqual(fixed, [unit.replace("from: Waves", "from: Words"), unit.replace("### Waves", "## Waves")]);
    for (const text of fixed)
      assert.ok(!(await readUnitText(text)).findings.some(({ severity }) => severity === "error"), text);
  });

  /** What each fix of the finding makes of the text; none is done unasked. */
  async function made(text: string): Promise<string[]> {
    const [found] = (await readUnitText(text)).findings.filter(({ code }) => code === "unknown-section");
    return (found?.fixes ?? []).map(({ edits, preferred }) => {
      assert.notEqual(preferred, true);
      return applyEdits(text, edits);
    });
  }

  const two = unit.replace("\n```", "\n### Ships\n\n- a vela = the sail\n- o leme = the rudder\n\n```");

  it("becomes one with the headings beside it, where these are as deep", async () => {
    assert.deepEqual(await made(two), [two.replace("from: Waves", "from: Words"), two.replaceAll("###", "##")]);
    const deep = two.replace("### Ships", "#### Ships");
    assert.deepEqual(await made(deep), [deep.replace("from: Waves", "from: Words")]);
  });

  it("becomes none where another activity has all of the section", async () => {
    const taken = `${unit}\n\`\`\`activity\nmake: loop\nfrom: Words\n\`\`\`\n`;
    assert.deepEqual(await made(taken), [taken.replace("from: Waves", "from: Words")]);
  });

  it("is told of another unit too, with the section that is there", async () => {
    const text = unit
      .slice(unit.indexOf("```"))
      .replace("from: Waves", 'from: ["b.unit.md#Waves", "b.unit.md # Wavs"]');
    const own = `## Here\n\n${text}`;
    const units = new Map([["b.unit.md", unit.slice(0, unit.indexOf("```"))]]);
    const found = (await readUnitText(own, { units })).findings.filter(({ code }) => code === "unknown-section");
    assert.deepEqual(
      found.map(({ message, range }) => [message, own.slice(range.start, range.end)]),
      [
        [
          "“Waves” is a heading within a section of that unit, “b.unit.md#Words”: a section has two number signs.",
          '"b.unit.md#Waves"',
        ],
        ["No section is called “b.unit.md # Wavs”. The nearest is “b.unit.md#Words”.", '"b.unit.md # Wavs"'],
      ],
    );
    const [fix, ...more] = found[0]?.fixes ?? [];
    assert.deepEqual([fix?.preferred, more], [undefined, []]);
    assert.equal(applyEdits(own, fix?.edits ?? []), own.replace("#Waves", "#Words"));
  });
});
