import assert from "node:assert/strict";
import { mixedOrder } from "../../src/activities/mixed-order";

const stretches = (row: readonly boolean[]): number => row.filter((key, i) => i === 0 || key !== row[i - 1]).length;

describe("an order in which answers give nothing away", () => {
  // Swed & Eisenhart 1943, Ann. Math. Statist. 14:66–87: so few stretches or fewer, so many or more, speak against chance.
  for (const [n, few, many] of [
    [5, 2, 10],
    [10, 6, 16],
    [12, 7, 19],
  ] as const)
    it(`has as many stretches of ${n} and ${n} answers as chance lets pass`, () => {
      const answers = Array.from({ length: 2 * n }, (_, i) => i % 2 === 0);
      for (let seed = 0; seed < 200; seed++) {
        const count = stretches(mixedOrder(answers, `runs/${seed}`).map((item) => answers[item] ?? false));
        assert.ok(count > few && count < many, `${seed}: ${count}`);
      }
    });

  it("has all of 12,000 answers, of which a third are true, with both kinds in each part", () => {
    const answers = Array.from({ length: 12_000 }, (_, i) => i % 3 === 0);
    const order = mixedOrder(answers, "long");
    assert.deepEqual(
      [...order].sort((a, b) => a - b),
      answers.map((_, i) => i),
    );
    for (let from = 0; from < order.length; from += 300) {
      const part = order.slice(from, from + 300).filter((item) => answers[item]);
      assert.ok(part.length > 70 && part.length < 130, `${from}: ${part.length}`);
    }
  });
});
