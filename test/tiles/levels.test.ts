import assert from "node:assert/strict";
import { difficultyText } from "../../src/activities/difficulty";
import type { TilesDeal } from "../../src/activities/tiles/model";
import type { Difficulty } from "../../src/prove/difficulty";
import { applyEdits, readUnitText, unitOf, word } from "../support/units";

/** Pairs of which the first `shared` share their glosses in twos, a section with words for the outside, and an activity. */
function unit(pairs: number, shared: number, options: string): string {
  const own = Array.from({ length: pairs }, (_, i) => `- ${word(i)}a = ${word(i < shared ? i - (i % 2) : i)}o`);
  const more = Array.from({ length: 20 }, (_, i) => `- ${word(500 + i)}a = ${word(500 + i)}o`);
  return `## Words\n\n${own.join("\n")}\n\n\`\`\`activity\nmake: tiles\n${options}\n\`\`\`\n\n## More\n\n${more.join("\n")}\n`;
}

async function dealsOf(text: string): Promise<readonly TilesDeal[]> {
  const { activities } = await readUnitText(text);
  return (activities[0]?.deals ?? []) as unknown as readonly TilesDeal[];
}

/** Whether a number that is printed of a hard deal is below that of its gentle one. */
function saysEasier(hard: Difficulty, gentle: Difficulty): boolean {
  const [more = [], less = []] = [hard, gentle].map((each) => (difficultyText(each).match(/\d+/g) ?? []).map(Number));
  return less.some((number, i) => (more[i] ?? 0) < number);
}

describe("levels of tiles", function () {
  this.timeout(120_000);

  it("ask for the least and the greatest difficulty: hard is never easier than gentle", async () => {
    let harder = 0;
    for (const [pairs, shared, options] of [
      [12, 2, "grid: 3 x 3"],
      [12, 6, "grid: 3 x 3"],
      [12, 12, "grid: 3 x 3"],
      [17, 8, "grid: 3 x 4\ndecoys: 5"],
      [24, 8, "grid: 4 x 4"],
      [24, 8, "grid: 4 x 4\nturn: fixed"],
      [24, 24, "grid: 4 x 4"],
    ] as const) {
      for (let seed = 1; seed <= 8; seed++) {
        const deals = await dealsOf(
          unit(pairs, shared, `${options}\nseed: ${seed}\nversions: 2\nlevels: [gentle, hard]`),
        );
        for (const version of [1, 2]) {
          const [gentle, hard] = deals.filter((deal) => deal.version === version);
          assert.ok(gentle?.difficulty && hard?.difficulty);
          assert.deepEqual([gentle.level, hard.level], ["gentle", "hard"]);
          assert.ok(hard.difficulty.detour >= gentle.difficulty.detour, `${options}, seed ${seed}, version ${version}`);
          assert.ok(!saysEasier(hard.difficulty, gentle.difficulty), difficultyText(hard.difficulty));
          if (hard.difficulty.detour > gentle.difficulty.detour) harder++;
        }
      }
    }
    assert.ok(harder > 90, String(harder));
  });

  it("are in order where blank edges lie inside, or a finding says that they are not", async () => {
    let [upset, deals] = [0, 0];
    for (const [pairs, shared, options] of [
      [8, 4, "grid: 3 x 3"],
      [10, 6, "grid: 3 x 3"],
      [10, 10, "grid: 3 x 3"],
    ] as const) {
      for (let seed = 1; seed <= 15; seed++) {
        const text = unit(pairs, shared, `${options}\nfill: blank\nseed: ${seed}\nlevels: [gentle, hard]`);
        const { activities, findings } = await readUnitText(text);
        const [gentle, hard] = activities[0]?.deals ?? [];
        if (!gentle?.difficulty || !hard?.difficulty) continue;
        const easier = hard.difficulty.detour < gentle.difficulty.detour;
        assert.equal(saysEasier(hard.difficulty, gentle.difficulty), easier);
        const told = findings.filter(({ code }) => code === "same-levels");
        assert.deepEqual(
          told.map(({ message }) => message.slice(0, 29)),
          easier ? ["The hard tiles are measured e"] : [],
        );
        upset += easier ? 1 : 0;
        deals++;
      }
    }
    // Among the first eight arrangements alone more than half would be.
    assert.ok(deals > 40 && upset > 0 && upset < 12, `${upset} of ${deals}`);
  });

  it("are in order over all versions, or a finding says which are not", async () => {
    let [upset, mended, units] = [0, 0, 0];
    for (const [pairs, shared, options] of [
      [12, 4, "grid: 3 x 3"],
      [12, 12, "grid: 3 x 3"],
      [10, 10, "grid: 3 x 3\nfill: blank"],
    ] as const) {
      for (let seed = 1; seed <= 8; seed++) {
        const text = unit(pairs, shared, `${options}\nversions: 4\nseed: ${seed}\nlevels: [gentle, hard]`);
        const { activities, findings } = await readUnitText(text);
        const deals = activities[0]?.deals ?? [];
        const of = (wanted: string): number[] =>
          deals.flatMap(({ level, difficulty }) => (level === wanted && difficulty ? [difficulty.detour] : []));
        const easier = Math.min(...of("hard")) < Math.max(...of("gentle"));
        const told = findings.filter(({ code }) => code === "same-levels");
        assert.equal(told.length, easier ? 1 : 0, `${options}, seed ${seed}`);
        for (const { message, fixes } of told) {
          const [, hard, gentle] =
            /^The hard tiles of version (\d) .* the gentle ones of version (\d): /u.exec(message) ?? [];
          const measured = (level: string, version: string | undefined): number =>
            deals.find((deal) => deal.level === level && String(deal.version) === version)?.difficulty?.detour ??
            Number.NaN;
          assert.ok(measured("hard", hard) < measured("gentle", gentle), message);
          // Levels of one version are compared first: learners who have both see those side by side.
          const ofOne = ["1", "2", "3", "4"].some((each) => measured("hard", each) < measured("gentle", each));
          assert.equal(hard === gentle, ofOne, message);
          for (const { edits, title } of fixes) {
            const after = await readUnitText(applyEdits(text, edits));
            assert.deepEqual(
              after.findings.filter(({ code }) => code === "same-levels"),
              [],
              title,
            );
            mended++;
          }
        }
        upset += easier ? 1 : 0;
        units++;
      }
    }
    assert.ok(units === 24 && upset > 0 && upset < 16 && mended >= upset, `${upset} of ${units}, ${mended} fixes`);
  });

  it("take the first arrangement, with one inside for both, where no word fits a further one", async () => {
    for (let seed = 1; seed <= 5; seed++) {
      const [alone] = await dealsOf(unit(12, 0, `grid: 3 x 3\nseed: ${seed}`));
      const [gentle, hard] = await dealsOf(unit(12, 0, `grid: 3 x 3\nseed: ${seed}\nlevels: [gentle, hard]`));
      assert.ok(alone && gentle && hard);
      assert.deepEqual([gentle.attempt, hard.attempt], [0, 0]);
      assert.deepEqual([gentle.code, gentle.difficulty?.wrongNeighbours], [alone.code, 0]);
      const words = ({ solved }: TilesDeal): unknown =>
        solved.map((face) => face.map((edge) => (hard.decoys.edges.includes(edge as never) ? undefined : edge?.text)));
      assert.deepEqual(words(hard), words(gentle));
    }
  });

  it("are not asked for where the unit names no levels", async () => {
    for (let seed = 1; seed <= 10; seed++) {
      const [deal] = await dealsOf(unit(24, 8, `grid: 4 x 4\nseed: ${seed}\nouter: decoys`));
      assert.deepEqual([deal?.level, deal?.attempt, deal?.proof.status], ["hard", 0, "one"]);
    }
  });

  it("keep every piece in its place when a word is mended", async () => {
    const text = unit(24, 8, "grid: 4 x 4\nlevels: [gentle, hard]");
    const before = await dealsOf(text);
    const after = await dealsOf(text.replaceAll(`${word(2)}o`, "mended").replace(`${word(510)}a`, "other"));
    assert.equal(before.length, 2);
    before.forEach((deal, i) => {
      const mended = after[i];
      assert.ok(mended);
      assert.deepEqual([mended.tiles, mended.attempt, mended.difficulty], [deal.tiles, deal.attempt, deal.difficulty]);
      assert.notEqual(mended.code, deal.code);
    });
  });

  it("say no difficulty where there is more than one solution", async () => {
    const words = ["rapido", "veloz", "ligero", "raudo", "presto", "pronto", "agil"];
    const items = words.map((own, i) => `- ${own} = ${[...words.slice(i + 1), ...words.slice(0, i)].join(" / ")}`);
    const [deal] = await dealsOf(`## S\n\n${items.join("\n")}\n\n\`\`\`activity\nmake: tiles\n\`\`\`\n`);
    assert.equal(deal?.proof.status, "several");
    assert.equal(deal.difficulty, undefined);
  });

  it("count no blank edge as a wrong neighbour", async () => {
    const [deal] = await dealsOf(unitOf(10, "grid: 3 x 3\nfill: blank"));
    assert.deepEqual([deal?.proof.status, deal?.difficulty?.wrongNeighbours], ["one", 0]);
  });
});
