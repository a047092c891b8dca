import assert from "node:assert/strict";
import { readUnitText, testWorkshop } from "../support/units";

describe("words for the blank cells of a board", () => {
  const pairs = ["chá = tea", "leite = milk", "água = water", "sumo = juice", "café = coffee", "vinho = wine"];
  const unit = (options: string): string =>
    `## Drinks\n\n${pairs.map((pair) => `- ${pair}`).join("\n")}\n\n\`\`\`activity\nmake: board\n${options}\`\`\`\n`;

  async function listOf(text: string): Promise<string[]> {
    const reading = await readUnitText(text);
    const [activity] = reading.activities;
    const [deal] = activity?.deals ?? [];
    assert.ok(activity && deal);
    const [sheet] = (await testWorkshop()).view(reading, activity, deal, "papers");
    return (sheet?.items ?? []).flatMap((item) =>
      item.type === "text" ? [item.runs.map(({ text }) => text).join("")] : [],
    );
  }

  it("have a line each on the caller’s list", async () => {
    const plain = await listOf(unit("grid: 2 x 3\n"));
    assert.ok(!plain.some((text) => text.startsWith("For the blank")));
    const own = await listOf(unit("grid: 2 x 4\nblanks: 2\n"));
    assert.ok(own.includes("For the blank cells"));
    const numbers = own.slice(own.indexOf("For the blank cells")).filter((text) => /^\d$/.test(text));
    assert.deepEqual(numbers, ["1", "2"]);
  });
});
