import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

describe("a gloss that is the word on another cell", () => {
  const unit = (gloss: string): string =>
    `---\nteaches: it\nexplains: en\n---\n\n## Table\n\n- pasta = folder\n- massa = ${gloss}\n- la vite = the screw\n- la ruota = the wheel\n\n\`\`\`activity\nmake: board\nclue: gloss\n\`\`\`\n`;

  it("is called for one cell and stands on another: never one solution", async () => {
    const { activities, findings } = await readUnitText(unit("pasta"));
    assert.ok(activities[0]?.deals.every(({ proof }) => proof.status === "several"));
    assert.ok(findings.some(({ code }) => code === "board-clue-fits-two"));
    const other = await readUnitText(unit("dough"));
    assert.ok(other.activities[0]?.deals.every(({ proof }) => proof.status === "one"));
  });
});
