import assert from "node:assert/strict";
import type { View } from "../../src/activities/contract";
import type { LineItem, Sheet } from "../../src/page/sheet";
import { readUnitText, testWorkshop } from "../support/units";

describe("words that learners write on a board", () => {
  const pairs = ["chá = tea", "leite = milk", "água = water", "sumo = juice", "café = coffee", "vinho = wine"];
  const unit = (options: string): string =>
    `## Drinks\n\n${pairs.map((pair) => `- ${pair}`).join("\n")}\n\n\`\`\`activity\nmake: board\n${options}\`\`\`\n`;

  async function sheetsOf(text: string, view: View): Promise<readonly Sheet[][]> {
    const workshop = await testWorkshop();
    const reading = await readUnitText(text);
    return reading.activities.flatMap((activity) =>
      activity.deals.map((deal) => [...workshop.view(reading, activity, deal, view)]),
    );
  }

  /** Cells of a board without a word, and dotted lines on it. */
  const drawn = (sheet: Sheet | undefined): { readonly empty: number; readonly lines: LineItem[] } => {
    const items = sheet?.items ?? [];
    const cells = items.flatMap((item) => (item.type === "area" ? [item] : []));
    const inside = ({ x, y, w, h }: (typeof cells)[number]): boolean =>
      items.some(
        (item) => item.type === "text" && item.size > 6 && x < item.x && item.x < x + w && y < item.y && item.y < y + h,
      );
    const lines = items.flatMap((item) => (item.type === "line" && item.dash ? [item] : []));
    for (const { x1, y1, x2 } of lines) {
      const cell = cells.find(({ x, y, w, h }) => x < x1 && x2 < x + w && y < y1 && y1 < y + h);
      assert.ok(cell && !inside(cell), "a line stands in a cell without a word");
    }
    return { empty: cells.filter((cell) => !inside(cell)).length, lines };
  };

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
    assert.ok(!plain.some((text) => text.startsWith("For the cells")));
    const own = await listOf(unit("grid: 2 x 4\nblanks: 2\n"));
    assert.ok(own.includes("For the cells to write in"));
    const numbers = own.slice(own.indexOf("For the cells to write in")).filter((text) => /^\d$/.test(text));
    assert.deepEqual(numbers, ["7", "8"]);
  });

  it("have cells with a dotted line, which other cells without a word have not", async () => {
    // Eight cells: four words that are called, two never called at hard, two to write in.
    const text = unit("grid: 2 x 4\ntake: 4\nblanks: 2\nlevels: [gentle, hard]\n");
    const [[gentle] = [], [hard] = []] = await sheetsOf(text, "dealt");
    assert.equal(drawn(gentle).empty, 4);
    assert.equal(drawn(hard).empty, 2);
    // In the same cells, since one list serves both.
    assert.equal(drawn(gentle).lines.length, 2);
    assert.deepEqual(drawn(gentle).lines, drawn(hard).lines);
    const keys = await sheetsOf(text, "solved");
    const words = keys.map(([key]) =>
      (key?.items ?? []).flatMap((item) => (item.type === "text" ? [item.runs.map((run) => run.text).join("")] : [])),
    );
    for (const own of words) assert.equal(own.filter((each) => each === "to write in").length, 2);
    assert.ok(
      words[0]?.some((each) => each.includes("2 cells to write in, 2 cells blank")),
      words[0]?.join("\n"),
    );
    // One line for each of two players who sit opposite.
    const [[opposite] = []] = await sheetsOf(unit("grid: 2 x 4\nblanks: 2\nfacing: opposite\n"), "dealt");
    assert.equal(drawn(opposite).lines.length, 4);
  });

  it("have a row each on the score slip", async () => {
    const text = unit("grid: 2 x 4\nblanks: 2\n");
    const [sheets = []] = await sheetsOf(text, "papers");
    const slip = sheets.at(-1)?.items ?? [];
    const numbers = slip.flatMap((item) => (item.type === "text" ? item.runs.map((run) => run.text) : []));
    for (const number of ["6", "7", "8"]) assert.ok(numbers.includes(number), number);
    assert.ok(!numbers.includes("9"));
  });
});
