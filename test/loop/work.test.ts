import assert from "node:assert/strict";
import { Random } from "../../src/base/seed";
import { nothingAround } from "../../src/make/workshop";
import { Relation } from "../../src/match/relation";
import { testWorkshop, word } from "../support/units";
import { loopUnit } from "./unit";

/*
 * How much work the check of a large circle is whose answers clash, in orders drawn and questions to the relation: whatever is
 * tried to find fixes draws and asks.
 */

interface Work {
  readonly orders: number;
  readonly questions: number;
  /** The most in one step: the editor cannot stop for breath within one. */
  readonly mostOrders: number;
  readonly mostQuestions: number;
  readonly fixes: number;
}

async function workOf(text: string): Promise<Work> {
  const workshop = await testWorkshop();
  const [{ shuffle }, { fits, partners }] = [Random.prototype, Relation.prototype];
  let [orders, questions, mostOrders, mostQuestions] = [0, 0, 0, 0];
  Random.prototype.shuffle = function <T>(this: Random, items: readonly T[]): T[] {
    orders++;
    return shuffle.call(this, items) as T[];
  };
  Relation.prototype.fits = function (...keys) {
    questions++;
    return fits.apply(this, keys);
  };
  Relation.prototype.partners = function (...key) {
    questions++;
    return partners.apply(this, key);
  };
  try {
    const reading = workshop.reading({ name: "unit", text }, nothingAround);
    for (;;) {
      const before = [orders, questions] as const;
      const step = reading.next();
      mostOrders = Math.max(mostOrders, orders - before[0]);
      mostQuestions = Math.max(mostQuestions, questions - before[1]);
      if (!step.done) continue;
      const fixes = step.value.findings.reduce((sum, finding) => sum + finding.fixes.length, 0);
      return { orders, questions, mostOrders, mostQuestions, fixes };
    }
  } finally {
    Random.prototype.shuffle = shuffle;
    Object.assign(Relation.prototype, { fits, partners });
  }
}

/** So many pairs; of the first some have an answer that the next ones have too. */
function clashing(count: number, options: string, answers: (i: number) => string | undefined): string {
  const pairs = Array.from({ length: count }, (_, i) => `${word(i)}a = ${answers(i) ?? `${word(i)}o`}`);
  return loopUnit(pairs, options);
}

describe("the work of checking a circle whose answers clash", () => {
  const groups = (i: number) => (i < 30 ? `${word(i % 10)}u` : undefined);
  const chain = (i: number) => (i < 20 ? `${word(i)}o / ${word((i * 7 + 3) % 60)}o` : undefined);
  // As measured; trying all fixes by dealing again for each took up to 140,933 orders and 124 million questions, nearly all in one step.
  const cases: readonly (readonly [name: string, text: string, most: Work])[] = [
    [
      "80 cards",
      clashing(80, "", groups),
      { orders: 160, questions: 22_000, mostOrders: 24, mostQuestions: 500, fixes: 19 },
    ],
    [
      "cards that belong nowhere",
      clashing(60, "decoys: 4", groups),
      { orders: 950, questions: 22_000, mostOrders: 30, mostQuestions: 500, fixes: 20 },
    ],
    [
      "levels and versions",
      clashing(80, "versions: 2\nlevels: [gentle, hard]", groups),
      { orders: 5_300, questions: 275_000, mostOrders: 170, mostQuestions: 36_000, fixes: 21 },
    ],
    [
      "alternatives",
      clashing(60, "versions: 2\nlevels: [gentle, hard]", chain),
      { orders: 32_000, questions: 650_000, mostOrders: 710, mostQuestions: 23_000, fixes: 32 },
    ],
  ];
  for (const [name, text, most] of cases) {
    it(`is little: ${name}`, async () => {
      const work = await workOf(text);
      for (const what of ["orders", "questions", "mostOrders", "mostQuestions"] as const)
        assert.ok(work[what] > 0 && work[what] <= most[what], `${what}: ${work[what]}`);
      assert.equal(work.fixes, most.fixes);
    });
  }
});
