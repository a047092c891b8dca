import assert from "node:assert/strict";
import { word } from "../support/units";
import { type Work, workOf } from "../support/work";
import { loopUnit } from "./unit";

/*
 * How much work the check of a large circle is whose answers clash, in orders drawn and questions to the relation: whatever is
 * tried to find fixes draws and asks.
 */

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
      { orders: 5_300, questions: 275_000, mostOrders: 170, mostQuestions: 37_000, fixes: 21 },
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
