import assert from "node:assert/strict";
import { unitReport } from "../../src/cli/report";
import { proofLines } from "../../src/cli/text";
import type { Sheet } from "../../src/page/sheet";
import { heldCount } from "../../src/prove/proof";
import { readUnitText, testWorkshop, word } from "../support/units";

/* A number of ways is said exactly, or as at least so many: never rounded. */

const most = "9007199254740991";
const front = "---\nteaches: pt\nexplains: en\n---\n\n";
const block = (options: string): string => `\n\`\`\`activity\n${options}\n\`\`\`\n`;
const words = (count: number): string[] => Array.from({ length: count }, (_, i) => word(i));

async function said(text: string): Promise<string> {
  const reading = await readUnitText(front + text);
  return proofLines(unitReport("unit.unit.md", reading)).join("\n").split(": ").at(-1) ?? "";
}

describe("large numbers of right ways", () => {
  it("are held as far as a number is exact", () => {
    const limit = BigInt(Number.MAX_SAFE_INTEGER);
    assert.deepEqual(heldCount(1n), { count: 1, capped: false });
    assert.deepEqual(heldCount(limit), { count: Number(most), capped: false });
    assert.deepEqual(heldCount(limit + 1n), { count: Number(most), capped: true });
    assert.deepEqual(heldCount(10n ** 30n), { count: Number(most), capped: true });
  });

  it("are said of cards in several piles", async () => {
    const piles = (count: number): string =>
      ["um", "dois", "três"]
        .map(
          (name) =>
            `### ${name}\n\n${words(count)
              .map((each) => `- ${each}\n`)
              .join("")}`,
        )
        .join("\n");
    const sort = (count: number): Promise<string> => said(`## Oficina\n\n${piles(count)}${block("make: sort")}`);
    // 3 to the power of 33 is 5,559,060,566,555,523.
    assert.equal(await sort(33), "5559060566555523 right ways");
    assert.equal(await sort(34), `at least ${most} right ways`);
  });

  it("are said of events in any order", async () => {
    const strips = (count: number): Promise<string> =>
      said(
        `## Manhã\n\n1. Ela entra.\n2. Ela pinta:\n${words(count)
          .map((each) => `   - ${each}\n`)
          .join("")}3. Ela sai.\n${block("make: strips")}`,
      );
    // 18 factorial, and more than a number holds.
    assert.equal(await strips(18), "6402373705728000 right ways");
    assert.equal(await strips(19), `at least ${most} right ways`);
  });
});

/** Lines of a sheet, words one behind the other. */
function readOn({ items }: Sheet): string {
  return items.flatMap((item) => (item.type === "text" ? item.runs.map(({ text }) => text) : [])).join(" ");
}

describe("the key of a board", () => {
  it("says of each level what is proven of it", async () => {
    const pairs = [
      "a mola = the spring",
      "o cabo = the cable",
      "o sino = the bell",
      "o aro = the rim",
      "a luz = the lamp",
    ];
    const text = `${front}## Oficina\n\n${pairs.map((pair) => `- ${pair}\n`).join("")}- a fita = the strap / the lamp\n${block(
      "make: board\ngrid: 2 x 3\nlevels: [gentle, hard]\ndistractors: [a fita]",
    )}`;
    const workshop = await testWorkshop();
    const reading = await readUnitText(text);
    const [activity] = reading.activities;
    assert.ok(activity);
    const told = activity.deals.map((deal) => [
      deal.level,
      deal.proof.status,
      workshop
        .view(reading, activity, deal, "solved")
        .map(readOn)
        .some((each) => each.includes("Each fits one word on the board, proven.")),
    ]);
    assert.deepEqual(told, [
      ["gentle", "one", true],
      ["hard", "several", false],
    ]);
  });

  it("claims of sentences no more than what is compared", async () => {
    const pairs = [
      "a mola = spring\n  - Salta.",
      "o cabo = cable\n  - Parte.",
      "o sino = bell\n  - Toca.",
      "o aro = rim\n  - Os sinos!",
    ];
    const text = `${front}## Oficina\n\n${pairs.map((pair) => `- ${pair}\n`).join("")}\n${block("make: board\nclue: example")}`;
    const workshop = await testWorkshop();
    const reading = await readUnitText(text);
    const [activity] = reading.activities;
    const [deal] = activity?.deals ?? [];
    assert.ok(activity && deal);
    const key = workshop.view(reading, activity, deal, "solved").map(readOn).join(" ");
    assert.match(key, /as it is written there, proven; other forms of words are not compared/);
  });
});
