import assert from "node:assert/strict";
import { planUnit } from "../../src/activities/plan";
import { directions, tilesGuide } from "../../src/activities/tiles/guide";
import { tiles } from "../../src/activities/tiles/kind";
import type { DealtTiles, TilesDeal } from "../../src/activities/tiles/model";
import { intended } from "../../src/activities/tiles/model";
import { tilesOptions } from "../../src/activities/tiles/options";
import { toPuzzle } from "../../src/activities/tiles/puzzle";
import type { Sheet } from "../../src/page/sheet";
import { proveTiles } from "../../src/prove/tiles";
import { readUnit } from "../../src/unit/read";
import { dealt as randomDeal } from "../prove/instances";
import { applyEdits, readUnitText, testWorkshop, unitOf } from "../support/units";

const outside = "\n## More\n\n- qq = ww\n- rr = tt\n- yy = uu\n- ii = oo\n- pp = ll\n- kk = jj\n";

function dealt(text: string): DealtTiles {
  const [planned] = planUnit(readUnit(text)).activities;
  assert.ok(planned?.request);
  return tiles.deal(planned.request);
}

/** The only deal of some tiles. */
function dealOf(pairs: number, options: string): { whole: DealtTiles; deal: TilesDeal } {
  const whole = dealt(unitOf(pairs, options) + outside);
  const [deal] = whole.deals;
  assert.ok(deal);
  return { whole, deal };
}

const textsOn = ({ items }: Sheet): string[] =>
  items.flatMap((item) => (item.type === "text" ? [item.runs.map(({ text }) => text).join("")] : []));

describe("tiles whose frame is not told", () => {
  const lone = "grid: 2 x 2\nfill: blank\nturn: free\nseed: 5\ndecoys: 1";

  it("have a second solution where the same tiles fill another rectangle", () => {
    const told = dealOf(1, lone);
    const { deal } = dealOf(1, `${lone}\nframe: untold`);
    assert.equal(told.deal.proof.status, "one");
    assert.deepEqual(
      deal.solved.map((face) => face.map((edge) => edge?.text)),
      told.deal.solved.map((face) => face.map((edge) => edge?.text)),
    );
    assert.equal(deal.proof.status, "several");
    const { second } = deal.proof;
    assert.deepEqual([second?.rows, second?.columns], [1, 4]);
    // Looked at by the words alone: all four tiles in a row, the pair together, the decoy and no other word at the rim.
    const cells = second?.cells ?? [];
    const shown = cells.map(({ tile, turn }) =>
      [0, 1, 2, 3].map((side) => deal.solved[tile]?.[(side - turn + 4) % 4]?.text),
    );
    assert.equal(new Set(cells.map(({ tile }) => tile)).size, 4);
    const seams = [0, 1, 2].map((i) => [shown[i]?.[1] ?? "", shown[i + 1]?.[3] ?? ""].sort().join("|"));
    assert.deepEqual(seams.sort(), ["debaa|debao", "|", "|"].sort());
    const rim = shown.flatMap(([n, e, s, w], i) => [n, s, ...(i === 0 ? [w] : []), ...(i === 3 ? [e] : [])]);
    assert.equal(rim.filter((text) => text !== undefined).length, 1);
  });

  it("are dealt so that no other rectangle is a solution, where an arrangement allows it", () => {
    const options = "grid: 2 x 6\nfill: blank\nseed: 6\ndecoys: 3";
    const told = dealOf(8, options);
    const untold = dealOf(8, `${options}\nframe: untold`);
    assert.deepEqual([told.deal.proof.status, untold.deal.proof.status], ["one", "one"]);
    assert.ok(untold.deal.attempt > told.deal.attempt);
    const { request } = untold.whole;
    const prove = ({ deal, whole }: typeof told, frame: "told" | "untold") =>
      proveTiles(toPuzzle(deal.frame, deal.solved, request.relation, { ...whole.options, frame }), {
        intended: intended(deal.frame),
      });
    assert.equal(prove(told, "told").status, "one");
    const { status, second } = prove(told, "untold");
    assert.equal(status, "several");
    assert.ok(second && second.rows * second.columns === 12 && ![2, 6].includes(second.rows));
    assert.equal(prove(untold, "untold").status, "one");
  });

  it("of other rows and columns have no room where every inner edge has a pair", () => {
    for (let seed = 1; seed <= 6; seed++) {
      const shared = unitOf(17, `grid: 3 x 4\nseed: ${seed}`).replace(/ = \w+o$/gm, (word, at: number) =>
        at % 3 ? word : " = same",
      );
      const [told, untold] = [shared, shared.replace("grid:", "frame: untold\ngrid:")].map(
        (text) => dealt(text).deals[0],
      );
      assert.ok(told && untold);
      assert.deepEqual(
        [untold.code, untold.proof.status, untold.proof.nodes],
        [told.code, told.proof.status, told.proof.nodes],
      );
    }
  });

  it("that keep their turn may also stand upright", () => {
    const options = "grid: 2 x 3\nfill: blank\nturn: fixed\nseed: 3\ndecoys: 2";
    assert.equal(dealOf(2, options).deal.proof.status, "one");
    const { second } = dealOf(2, `${options}\nframe: untold`).deal.proof;
    assert.deepEqual([second?.rows, second?.columns], [3, 2]);
  });

  it("that keep their turn lie in another frame when they stand upright", async () => {
    const upright = "grid: 2 x 3\nfill: blank\nturn: fixed\nseed: 3\ndecoys: 2\nframe: untold";
    const { findings } = await readUnitText(`${unitOf(2, upright)}${outside}`);
    assert.match(findings.find(({ code }) => code === "several-solutions")?.message ?? "", /also be laid as 3 × 2/);
  });

  it("take no more search where only their frame has edges enough for its rim", () => {
    for (let seed = 1; seed <= 3; seed++) {
      const { puzzle, intended: meant } = randomDeal({ rows: 6, columns: 6, seed, repeat: 20, blank: true });
      const outer = puzzle.tiles.flat().filter((text) => (puzzle.partners[text] ?? []).length === 0);
      const told = proveTiles({ ...puzzle, outer }, { intended: meant });
      assert.deepEqual(proveTiles({ ...puzzle, outer, frameUntold: true }, { intended: meant }), told);
      assert.equal(told.by, "search");
    }
  });

  it("are shown as they lie, and the finding says why and how to help it", async () => {
    const text = `${unitOf(1, `${lone}\nframe: untold`)}${outside}`;
    const reading = await readUnitText(text);
    const found = reading.findings.find(({ code }) => code === "several-solutions");
    assert.match(found?.message ?? "", /can also be laid as 1 × 4, since learners are not told rows and columns/);
    const fix = found?.fixes.find(({ preferred }) => preferred);
    assert.equal(fix?.title, "Tell learners rows and columns");
    const mended = await readUnitText(applyEdits(text, fix.edits));
    assert.ok(!mended.findings.some(({ code }) => code === "several-solutions"));
    const [activity] = reading.activities;
    const [deal] = activity?.deals ?? [];
    assert.ok(activity && deal);
    const [sheet] = (await testWorkshop()).view(reading, activity, deal, "second");
    assert.ok(sheet);
    const areas = sheet.items.flatMap((item) => (item.type === "area" ? [item] : []));
    assert.deepEqual([areas.length, new Set(areas.map(({ y }) => y)).size], [4, 1]);
    assert.ok(areas.every(({ differs }) => !differs));
    assert.ok(textsOn(sheet).some((line) => /2 × 2 tiles.*Here they are laid as 1 × 4\.$/.test(line)));
  });

  it("have directions and a guide that keep rows and columns from learners", () => {
    for (const [lang, steps] of Object.entries(directions)) {
      const { whole } = dealOf(12, "grid: 3 x 3");
      const untold = dealt(unitOf(12, "grid: 3 x 3\nframe: untold"));
      assert.ok(steps(whole).join(" ").includes("3 × 3"), lang);
      assert.ok(!/\d/.test(steps(untold).join(" ")), lang);
      assert.equal(steps(untold).length, steps(whole).length);
      assert.ok(!tilesGuide(whole).summary.includes("not told") && tilesGuide(untold).summary.includes("not told"));
      assert.equal(tilesOptions(whole.request.options).frame, "told");
    }
  });
});
