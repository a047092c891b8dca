import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

/*
 * `from` with another unit and no section of it, or with one that is written otherwise than `other.unit.md#Section`.
 */

const parts = "## Parts\n\n- roda = wheel\n- selim = saddle\n- luz = light\n- sino = bell\n";
const tools = "\n## Tools\n\n- chave = key\n- bomba = pump\n- cola = glue\n- pano = cloth\n";
const unit = (from: string): string => `## Bench\n\n\`\`\`activity\nmake: loop\nfrom: ${from}\n\`\`\`\n`;

async function found(from: string, other: string | undefined): Promise<{ message: string; fixed: string[] }[]> {
  const units = new Map(other === undefined ? [] : [["b.unit.md", other]]);
  const text = unit(from);
  const { findings } = await readUnitText(text, { units });
  return Promise.all(
    findings
      .filter(({ code }) => code === "unknown-section")
      .map(async ({ message, fixes }) => ({
        message,
        fixed: await Promise.all(
          fixes.map(async ({ edits, preferred }) => {
            const after = applyEdits(text, edits);
            const left = (await readUnitText(after, { units })).findings.map(({ code }) => code);
            assert.ok(!left.includes("unknown-section"), after);
            return `${/from: (.*)/.exec(after)?.[1]}${preferred ? " first" : ""}`;
          }),
        ),
      })),
  );
}

describe("a whole unit in “from”", () => {
  const message =
    "This names no section of the unit “b.unit.md”: a section of another unit is written “b.unit.md#Parts”.";

  it("is told with the sections that it has", async () => {
    const only = { message, fixed: ['"b.unit.md#Parts" first'] };
    for (const from of ['"b.unit.md"', "b.unit.md", '"b.unit.md#"', "b.unit.md # Parts", "b.unit.md # the parts"])
      assert.deepEqual(
        (await found(from, parts)).map(({ fixed }) => fixed.map((each) => each.replace(/ # the parts/, ""))),
        [only.fixed],
        from,
      );
    assert.deepEqual(await found("b.unit.md", parts + tools), [
      { message, fixed: ['"b.unit.md#Parts"', '"b.unit.md#Tools"'] },
    ]);
    assert.deepEqual(await found("[b.unit.md]", parts), [{ message, fixed: ['["b.unit.md#Parts"] first'] }]);
  });

  it("is told with the section that stands behind another sign, or in a comment", async () => {
    for (const from of ["b.unit.md # Tools", "b.unit.md/Tools", '"b.unit.md: Tools"', "b.unit.md Tools"])
      assert.deepEqual(
        (await found(from, parts + tools))[0]?.fixed,
        ['"b.unit.md#Tools" first', '"b.unit.md#Parts"'],
        from,
      );
  });

  it("may have white space round the sign", async () => {
    for (const from of ['"b.unit.md # Parts"', '"b.unit.md# Parts"', '"b.unit.md #Parts"'])
      assert.deepEqual(await found(from, parts), [], from);
  });

  it("is told where it is not there, or has no section", async () => {
    assert.deepEqual(await found("b.unit.md", undefined), [
      { message: "There is no unit “b.unit.md” beside this one.", fixed: [] },
    ]);
    assert.deepEqual(await found("b.unit.md", "Notes\n"), [
      { message: "The unit “b.unit.md” has no section that could be used.", fixed: [] },
    ]);
  });

  it("may be the name of a section of this unit", async () => {
    const text = `## b.unit.md\n\n${parts.replace("## Parts\n\n", "")}\n${unit("b.unit.md")}`;
    const { findings } = await readUnitText(text, { units: new Map([["b.unit.md", parts]]) });
    assert.ok(!findings.some(({ code }) => code === "unknown-section"));
  });
});
