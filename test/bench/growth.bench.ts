/*
 * What an item costs as an activity of each kind grows: read, dealt, proven and checked anew, with text fit and glyphs. Tiles are in
 * `typing.bench.ts`. Run with `npm run bench growth`; prints, asserts nothing.
 */
import { nothingAround, openWorkshop } from "../../src/make/workshop";
import { testAssets } from "../support/typeface";
import { word } from "../support/units";

const scattered = (n: number): string => word(1_728 + ((n * 7_919) % 247_104));
const pair = (i: number): string => `- o ${scattered(i)} = the ${scattered(i)}n`;
const sentence = (i: number): string => `Ela ${scattered(i)} a conta do ${scattered(i + 9)}.`;
const statement = (i: number): string => `- [${i % 2 ? "x" : " "}] ${sentence(i)}`;

const items: Readonly<Record<string, (i: number) => string>> = {
  loop: pair,
  board: pair,
  sort: statement,
  calls: statement,
  strips: (i) => `${i + 1}. ${sentence(i)}`,
  rebuild: (i) => `- Ela ${scattered(i)} | a conta | do ${scattered(i + 9)}. = She ${scattered(i)}s`,
};

async function main(): Promise<void> {
  const workshop = await openWorkshop(testAssets());
  for (const [make, item] of Object.entries(items)) {
    const costs = [100, 1000, 10_000].map((count) => {
      const lines = Array.from({ length: count }, (_, i) => item(i));
      const text = `## Words\n\n${lines.join("\n")}\n\n\`\`\`activity\nmake: ${make}\n\`\`\`\n`;
      const before = process.cpuUsage().user;
      workshop.read({ name: "unit", text }, nothingAround);
      return (process.cpuUsage().user - before) / count;
    });
    const [first = 1, , last = 0] = costs;
    const told = costs.map((cost) => `${cost.toFixed(0)} µs`).join(", ");
    console.log(
      `${make}: an item of 100, 1,000 and 10,000 costs ${told}; 10,000 against 100: ${(last / first).toFixed(2)}`,
    );
  }
}

void main();
