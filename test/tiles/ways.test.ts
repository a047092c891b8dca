import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

describe("the number of ways to lay tiles", () => {
  const unit = (pairs: number): string => {
    const lines = ["chá = tea", "leite = milk", "água = water", "sumo = juice"]
      .slice(0, pairs)
      .map((pair) => `- ${pair}`);
    return `## Drinks\n\n${lines.join("\n")}\n\n\`\`\`activity\nmake: tiles\ngrid: 3 x 3\nfill: blank\n\`\`\`\n`;
  };

  it("is counted to the end where they are few, and told", async () => {
    const { activities, findings } = await readUnitText(unit(2));
    const { status, count, capped } = activities[0]?.deals[0]?.proof ?? {};
    assert.deepEqual({ status, capped }, { status: "several", capped: false });
    assert.ok((count ?? 0) > 2);
    const told = findings.find(({ code }) => code === "several-solutions");
    assert.ok(told?.message.startsWith(`These tiles can be laid in ${count} ways;`), told?.message);
  });
});
