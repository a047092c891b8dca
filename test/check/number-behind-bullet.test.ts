import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

const fixes = async (items: string, kind: string): Promise<readonly (readonly [string, boolean])[]> => {
  const text = `## Monday\n\n${items}\n\n\`\`\`activity\nmake: ${kind}\n\`\`\`\n`;
  const { findings } = await readUnitText(text);
  const found = findings.find(({ code }) => code === "list-in-list");
  return (found?.fixes ?? []).map(({ title, preferred }) => [title, preferred === true] as const);
};

describe("a number behind a bullet", () => {
  const bullets = "- 1. O gato salta.\n- 2. A lata cai.\n- 3. Chove.";

  it("is an event first where only events are used, text elsewhere", async () => {
    assert.deepEqual(await fixes(bullets, "strips"), [
      ["Make a numbered item of it", true],
      ["Write “1\\.”", false],
    ]);
    for (const kind of ["tiles", "sort"]) assert.deepEqual(await fixes(bullets, kind), [["Write “1\\.”", true]]);
  });

  it("may be a note beside numbered events, so that nothing is done unasked", async () => {
    const events = "1. O gato salta.\n2. A lata cai.\n3. Chove.\n\n- 2. Stunde: lesen";
    assert.deepEqual(await fixes(events, "strips"), [
      ["Make a numbered item of it", false],
      ["Write “2\\.”", false],
    ]);
  });
});
