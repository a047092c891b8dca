import assert from "node:assert/strict";
import { Relation } from "../../src/match/relation";
import { word } from "../support/units";
import { type Work, workOf } from "../support/work";

/*
 * Fixes are tried by dealing again. The editor stays at hand only if a step of that is short: what is counted is the same on
 * every machine.
 */

/** Sections of thirty pairs with an activity each; `pair` writes the i-th of all and the n-th of its section. */
function unit(options: readonly string[], pair: (i: number, n: number) => string): string {
  const sections = options.map((each, s) => {
    const pairs = Array.from({ length: 30 }, (_, n) => `- ${pair(s * 30 + n, n)}`);
    return `## Section ${s + 1}\n\n${pairs.join("\n")}\n\n\`\`\`activity\n${each}\n\`\`\`\n`;
  });
  return sections.join("\n");
}

const times = <Each>(count: number, each: Each): Each[] => Array.from({ length: count }, () => each);

describe("a step of checking", () => {
  const shared = (i: number, n: number) => `${word(i)}a = ${word(n < 12 ? i - (n % 2) : i)}o`;
  const alike = (i: number, n: number) => `${word(n < 10 ? i - (n % 2) : i)}${n % 2 ? "á" : "a"} = ${word(i)}o`;
  // As measured; with all fixes of a rule in one step it was up to 264 orders and 30,096 questions.
  const cases: readonly (readonly [
    name: string,
    text: string,
    most: Pick<Work, "mostOrders" | "mostQuestions" | "fixes">,
  ])[] = [
    [
      "answers that boards share",
      unit(times(6, "make: board\nclue: gloss"), shared),
      { mostOrders: 10, mostQuestions: 1_000, fixes: 32 },
    ],
    [
      "clues that fit two words",
      unit(times(3, "make: board\ngrid: 5 x 6"), shared),
      { mostOrders: 10, mostQuestions: 2_500, fixes: 18 },
    ],
    [
      "words that look alike",
      unit(["make: loop", "make: board", "make: tiles"], alike),
      { mostOrders: 10, mostQuestions: 2_500, fixes: 8 },
    ],
  ];
  for (const [name, text, most] of cases) {
    it(`is short: ${name}`, async () => {
      const work = await workOf(text);
      for (const what of ["mostOrders", "mostQuestions"] as const)
        assert.ok(work[what] > 0 && work[what] <= most[what], `${what}: ${JSON.stringify(work)}`);
      assert.equal(work.fixes, most.fixes);
    });
  }
});

/** How many relations are made, with a pair of `pairs` each, while something is done. */
async function relationsIn(pairs: number, work: () => Promise<unknown>): Promise<number> {
  const { prototype } = Relation as unknown as { prototype: { link: (...all: unknown[]) => void } };
  const { link } = prototype;
  let linked = 0;
  prototype.link = function (...all) {
    linked++;
    link.apply(this, all);
  };
  try {
    await work();
  } finally {
    prototype.link = link;
  }
  // From either side.
  return Math.round(linked / (2 * pairs));
}

describe("an answer that many items share", () => {
  it("has a few of them tried, however many they are", async () => {
    const relations = (count: number): Promise<number> => {
      const pairs = Array.from({ length: count }, (_, i) => `- ${word(i + count)} = ${i % 2 ? "o" : "a"}\n`);
      return relationsIn(count, () => workOf(`## Words\n\n${pairs.join("")}\n\`\`\`activity\nmake: tiles\n\`\`\`\n`));
    };
    for (const count of [60, 120]) {
      const made = await relations(count);
      // Eight at most for each answer, first without a new warning and then with one; one by one they would be more than there are items.
      assert.ok(made > 8 && made < 50, `${made} for ${count} items`);
    }
  });
});

describe("a word that is mended", () => {
  it("asks for no fix of another section again", async () => {
    const text = unit(
      times(4, "make: tiles\ngrid: 4 x 4"),
      (i, n) => `${word(i)}a = ${word(n < 6 ? i - (n % 2) : i)}o`,
    );
    const fixes = (await workOf(text)).fixes;
    const relations = await relationsIn(120, async () => {
      assert.equal((await workOf(text.replace(`${word(119)}a`, `${word(119)}as`))).fixes, fixes);
    });
    assert.ok(fixes > 20);
    // That of the unit itself, and no other.
    assert.equal(relations, 1);
  });
});
