import assert from "node:assert/strict";
import { ownSeed } from "../../src/activities/own-seed";
import type { PiecesFile } from "../../src/make/pieces-file";
import { readUnitText, testWorkshop } from "../support/units";
import { type ShapeName, shapes } from "./material";

/*
 * Which seed an activity is dealt from that sets none of its own.
 */

const kinds: readonly (readonly [kind: string, about: ShapeName, options: string])[] = [
  ["tiles", "words", "grid: 3 x 3"],
  ["strips", "events", "take: 6"],
  ["rebuild", "sentences", "take: 4"],
  ["sort", "piles", "take: 8"],
  ["calls", "statements", "take: 12"],
  ["board", "words", "grid: 3 x 3"],
  ["loop", "words", "take: 12"],
];

const block = (make: string, from: string, options: string): string =>
  `\`\`\`activity\nmake: ${make}\nfrom: ${from}\n${options}\n\`\`\`\n`;

/** All codes of each activity of a unit. */
async function codesOf(text: string): Promise<string[]> {
  const { activities } = await readUnitText(text);
  return activities.map(({ deals }) => deals.map(({ code }) => code).join(" "));
}

/** The seeds that the pieces file tells, by title. */
async function seedsOf(text: string): Promise<Map<string, number>> {
  const workshop = await testWorkshop();
  const files = await workshop.make(await readUnitText(text), { trial: true });
  const json = files.find(({ name }) => name.endsWith(".pieces.json"));
  const { deals }: PiecesFile = JSON.parse(new TextDecoder().decode(json?.bytes));
  return new Map(deals.map(({ activity, seed }) => [activity, seed]));
}

describe("the seed of an activity that sets none", () => {
  it("is the unit's for the first of a kind, another one for each later one, in six digits", () => {
    for (const seed of [0, 1, 999_999]) {
      assert.equal(ownSeed(seed, 0), seed);
      const later = Array.from({ length: 200 }, (_, i) => ownSeed(seed, i));
      assert.equal(new Set(later).size, later.length);
      assert.ok(later.every((each) => Number.isInteger(each) && each >= 0 && each <= 999_999));
    }
    assert.notEqual(ownSeed(1, 1), ownSeed(2, 1));
  });

  for (const [make, about, options] of kinds) {
    it(`deals ${make} of the same words in arrangements of their own`, async () => {
      const { text, from } = shapes[about];
      const [first, second, third] = await codesOf(text + block(make, from, options).repeat(3));
      assert.ok(first && second && third);
      assert.equal(new Set([first, second, third]).size, 3);
      assert.deepEqual(await codesOf(text + block(make, from, options)), [first]);
      // A seed of its own is taken as it is, and moves no other activity.
      const seeded = text + block(make, from, `${options}\nseed: 7`) + block(make, from, options);
      const alone = await codesOf(text + block(make, from, `${options}\nseed: 7`));
      assert.deepEqual(await codesOf(seeded), [...alone, second]);
      // Activities of another kind count for themselves.
      const other = make === "tiles" ? "board" : "tiles";
      const mixed = shapes.words.text + (about === "words" ? "" : text) + block(other, "Bench", "grid: 2 x 2");
      assert.equal((await codesOf(mixed + block(make, from, options)))[1], first);
    });
  }

  it("stands in the pieces file, and gives the same where it is written into the block", async () => {
    const { text, from } = shapes.words;
    const two = (options: string): string =>
      text + block("loop", from, "take: 9\ntitle: One") + block("loop", from, `take: 9\ntitle: Two${options}`);
    const seeds = await seedsOf(two(""));
    assert.equal(seeds.get("One"), 1);
    assert.equal(seeds.get("Two"), ownSeed(1, 1));
    assert.deepEqual(await codesOf(two(`\nseed: ${seeds.get("Two")}`)), await codesOf(two("")));
  });

  it("hangs on the front matter's, and on no spelling", async () => {
    const { text, from } = shapes.events;
    const two = text + block("strips", from, "take: 6").repeat(2);
    const [a, b] = (await readUnitText(`---\nseed: 40213\n---\n\n${two}`)).activities;
    const [c, d] = (await readUnitText(two)).activities;
    const order = (activity: typeof a): string => JSON.stringify((activity?.deals[0] as { dealt?: unknown })?.dealt);
    assert.equal(new Set([a, b, c, d].map(order)).size, 4);
    const mended = await readUnitText(two.replace("Chove.", "Chove muito."));
    assert.deepEqual(mended.activities.map(order), [c, d].map(order));
  });
});
