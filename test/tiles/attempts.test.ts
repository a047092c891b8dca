import assert from "node:assert/strict";
import {
  attemptCost,
  compared,
  glance,
  mostAttempts,
  patienceFor,
  takeAttempt,
} from "../../src/activities/tiles/attempts";
import type { TilesDeal } from "../../src/activities/tiles/model";
import { finished, type Steps } from "../../src/base/steps";
import type { TileProof } from "../../src/prove/tiles";
import { readUnitText, unitOf } from "../support/units";

type Verdict = Pick<TileProof, "status" | "nodes">;

interface Tried {
  readonly attempt: number;
  readonly proof: Verdict;
  readonly difficulty?: { readonly detour: number; readonly nodes: number };
}

/** Arrangements with these verdicts, the last one for all further ones, and the attempts that were asked for. */
function tried(
  verdicts: readonly (Verdict & { readonly detour?: number })[],
  all: number,
  wanted?: "least" | "greatest",
): { taken: number; asked: number[] } {
  const asked: number[] = [];
  const arrange = function* (attempt: number): Steps<Tried, number> {
    asked.push(attempt);
    const { detour, ...proof } = verdicts[attempt] ?? verdicts.at(-1) ?? { status: "none", nodes: 0 };
    yield proof.nodes;
    return { attempt, proof, ...(detour === undefined ? {} : { difficulty: { detour, nodes: 20 } }) };
  };
  return { taken: finished(takeAttempt(arrange, { each: all, all }, 10, wanted)).attempt, asked };
}

describe("attempts at an arrangement", () => {
  const several: Verdict = { status: "several", nodes: 0 };
  const one: Verdict = { status: "one", nodes: 16 };

  it("end with the first that is proven", () => {
    assert.deepEqual(tried([one], 1000), { taken: 0, asked: [0] });
    assert.deepEqual(tried([several, several, one, one], 1000), { taken: 2, asked: [0, 1, 2] });
  });

  it("end when their work is spent, and then leave the first", () => {
    const unsettled: Verdict = { status: "unsettled", nodes: 1000 };
    assert.deepEqual(tried([unsettled, one], 1000), { taken: 0, asked: [0] });
    assert.deepEqual(tried([several], 45), { taken: 0, asked: [0, 1, 2, 3, 4] });
    assert.equal(tried([several], 1_000_000).asked.length, mostAttempts);
  });

  it("look for a level among the first few, and take the first of equals", () => {
    const hard = (detour: number): Verdict & { detour: number } => ({ ...one, detour });
    const list = [several, hard(5), hard(3), hard(9), several, hard(3), hard(9), several, hard(0), hard(99)];
    assert.equal(compared, 8);
    assert.deepEqual(tried(list, 10_000).asked, [0, 1]);
    assert.deepEqual(tried(list, 10_000, "least"), { taken: 2, asked: [0, 1, 2, 3, 4, 5, 6, 7] });
    assert.deepEqual(tried(list, 10_000, "greatest"), { taken: 3, asked: [0, 1, 2, 3, 4, 5, 6, 7] });
    // Where none of them is proven, the first that is.
    const late = [...Array<Verdict>(9).fill(several), hard(4), hard(1)];
    assert.deepEqual(tried(late, 10_000, "least"), { taken: 9, asked: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] });
    // What is measured is work too: 10 for the first, 46 for each further one.
    assert.deepEqual(tried([several, hard(5), hard(3), hard(0)], 50, "least"), { taken: 1, asked: [0, 1] });
  });

  it("have at least what a glance has, so that a glance promises nothing that a deal does not keep", () => {
    for (let deals = 1; deals <= 52; deals++) {
      const { each, all } = patienceFor(deals);
      assert.ok(each >= glance.each && all >= glance.all && each >= all);
    }
    assert.ok(glance.each >= glance.all);
    // All tries of a hopeless large grid together cost no more than two arrangements that are searched to the end.
    assert.ok(52 * patienceFor(52).all <= 4 * 80_000);
    assert.ok(attemptCost({ rows: 12, columns: 12 }) * mostAttempts > patienceFor(1).all);
    assert.ok(attemptCost({ rows: 4, columns: 4 }) * mostAttempts < 1000);
  });

  it("say that a puzzle is not settled when the work ran out", async () => {
    const { activities, findings } = await readUnitText(unitOf(100, "grid: 12 x 12\nfill: blank\nturn: fixed"));
    const [deal] = (activities[0]?.deals ?? []) as unknown as readonly TilesDeal[];
    assert.equal(deal?.proof.status, "unsettled");
    assert.ok(deal.proof.nodes >= patienceFor(1).each && deal.attempt === 0);
    const found = findings.find(({ code }) => code === "unsettled-proof");
    assert.match(found?.message ?? "", new RegExp(`\\(${deal.proof.nodes} steps were tried\\)`));
  });
});
