import assert from "node:assert/strict";
import fc from "fast-check";
import { Random } from "../../../src/base/seed";
import { anyCycle, strongComponents } from "../../../src/prove/items/components";
import { drawBelow } from "../../../src/prove/items/draw";
import {
  balancedOrder,
  countKeys,
  drawKeys,
  isAssignment,
  isRegular,
  proveAssignment,
  runs,
  runsDistribution,
  runsLimits,
  unclearClues,
} from "../../../src/prove/items/items";
import { maximumMatching, shortageIn } from "../../../src/prove/items/matching";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

/** Every row with so many of both keys. */
function allRows(trues: number, falses: number): boolean[][] {
  if (trues < 0 || falses < 0) return [];
  if (trues + falses === 0) return [[]];
  return [
    ...allRows(trues - 1, falses).map((row) => [true, ...row]),
    ...allRows(trues, falses - 1).map((row) => [false, ...row]),
  ];
}

describe("keys", () => {
  it("runs are counted from their ends", () => {
    assert.deepEqual(runs([]), []);
    assert.deepEqual(runs([1, 1, 2, 1, 1, 1]), [2, 1, 3]);
  });

  it("balanced rows with no run over three", () => {
    const known: [number, bigint, bigint][] = [
      [8, 62n, 70n],
      [10, 194n, 252n],
      [12, 616n, 924n],
      [20, 66_486n, 184_756n],
    ];
    for (const [n, kept, all] of known) {
      const half = { trues: n / 2, falses: n / 2, regular: true };
      assert.equal(countKeys({ ...half, longest: 3 }), kept);
      assert.equal(countKeys({ ...half, longest: n }), all);
    }
  });

  it("agree with trying all", () => {
    for (let trues = 0; trues <= 5; trues++)
      for (let falses = 0; falses <= 5; falses++)
        for (let longest = 1; longest <= 4; longest++) {
          const kept = allRows(trues, falses).filter((row) => Math.max(0, ...runs(row)) <= longest);
          const rule = { trues, falses, longest };
          assert.equal(countKeys({ ...rule, regular: true }), BigInt(kept.length));
          const plain = kept.filter((row) => !isRegular(row));
          assert.equal(countKeys({ ...rule, regular: false }), BigInt(plain.length), JSON.stringify(rule));
        }
  });

  it("are drawn each as likely as the others", () => {
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 6000; seed++) {
      const { keys, longest } = drawKeys(new Random(`keys ${seed}`), 4, 4);
      assert.equal(longest, 3);
      counts.set(keys.join(), (counts.get(keys.join()) ?? 0) + 1);
    }
    // 62 without those that are one half twice: 6 halves of two true and two false, 4 of which repeat a block of four, 2 alternate.
    assert.equal(counts.size, 56);
    for (const count of counts.values()) assert.ok(Math.abs(count - 107) < 62, `${count}`);
    const shown = [...counts.keys()].map((key) => key.replace(/true,?/g, "T").replace(/false,?/g, "F"));
    assert.ok(shown.every((key) => key.slice(0, 4) !== key.slice(4)));
  });

  it("are regular where a block of two to four is repeated all the way, twice at least", () => {
    const row = (text: string): boolean[] => [...text].map((key) => key === "T");
    for (const text of ["FFTTFFTT", "TTFTTF", "TFFTFFT", "TTTFTTTFT", "TFTF", "TFT"])
      assert.ok(isRegular(row(text)), text);
    for (const text of ["FFTTFFTF", "TTFFTTF", "TTFF", "TFFT", "TTFTFF", "TFTFF", "TF", "T", ""])
      assert.ok(!isRegular(row(text)), text);
  });

  it("get longer runs, or alternate, where nothing else is possible", () => {
    assert.equal(drawKeys(new Random("a"), 8, 1).longest, 4);
    assert.equal(drawKeys(new Random("a"), 7, 1).longest, 4);
    assert.equal(drawKeys(new Random("a"), 6, 1).longest, 3);
    assert.deepEqual(drawKeys(new Random("a"), 0, 5).keys, [false, false, false, false, false]);
    assert.deepEqual(drawKeys(new Random("a"), 0, 0).keys, []);
    assert.deepEqual(drawKeys(new Random("a"), 2, 1, 1).keys, [true, false, true]);
    assert.equal(drawKeys(new Random("a"), 1, 1).keys.length, 2);
    // Six true ones and one false in runs of three leave one row.
    assert.deepEqual(drawKeys(new Random("a"), 6, 1).keys, [true, true, true, false, true, true, true]);
  });

  it("order items so that each is taken once", () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { maxLength: 14 }), fc.string(), (keys, seed) => {
        const order = balancedOrder(new Random(seed), keys);
        assert.deepEqual(
          [...order].sort((a, b) => a - b),
          upTo(keys.length),
        );
        const row = order.map((item) => keys[item] ?? false);
        const trues = keys.filter((key) => key).length;
        const { longest } = drawKeys(new Random(""), trues, keys.length - trues);
        assert.ok(Math.max(0, ...runs(row)) <= longest);
      }),
      { numRuns: 500, seed: 1 },
    );
  });
});

describe("runs test", () => {
  // Swed & Eisenhart 1943, Ann. Math. Statist. 14:66–87.
  const table: [number, number, number][] = [
    [5, 2, 10],
    [10, 6, 16],
    [12, 7, 19],
    [20, 14, 28],
  ];
  for (const [n, few, many] of table)
    it(`(${n}, ${n}): ${few} or fewer, ${many} or more`, () => assert.deepEqual(runsLimits(n, n), { few, many }));

  it("has the distribution that counting gives", () => {
    for (let a = 0; a <= 5; a++)
      for (let b = 0; b <= 5; b++) {
        const counted = new Array<bigint>(a + b + 1).fill(0n);
        for (const row of allRows(a, b)) counted[runs(row).length] = (counted[runs(row).length] ?? 0n) + 1n;
        assert.deepEqual(runsDistribution(a, b), counted);
      }
  });

  it("has no limits where nothing is rare", () => {
    assert.deepEqual(runsLimits(2, 2), {});
    assert.deepEqual(runsLimits(5, 5, 1000), {});
    assert.deepEqual(runsLimits(0, 4), {});
    // One sort alone makes one run, which only a test that rejects all can reject: as any number up to that of the signs.
    assert.deepEqual(runsLimits(0, 4, 1), { few: 4, many: 1 });
  });
});

describe("clues and targets", () => {
  const relation = fc.integer({ min: 1, max: 6 }).chain((targets) =>
    fc.record({
      targets: fc.constant(targets),
      fits: fc.array(fc.array(fc.nat(targets - 1), { maxLength: 3 }), { maxLength: targets }),
    }),
  );

  it("agree with trying all", () => {
    fc.assert(
      fc.property(relation, (puzzle) => {
        const found: number[][] = [];
        const give = (row: readonly number[]) => {
          if (row.length === puzzle.fits.length) {
            found.push([...row]);
            return;
          }
          for (const target of new Set(puzzle.fits[row.length])) if (!row.includes(target)) give([...row, target]);
        };
        give([]);
        for (const intended of [undefined, found[0], found.at(-1)]) {
          const { status, count, capped, second } = proveAssignment(puzzle, intended);
          assert.deepEqual([count, capped], [Math.min(found.length, 2), found.length > 1]);
          assert.equal(status, found.length === 0 ? "none" : found.length === 1 ? "one" : "several");
          assert.equal(second !== undefined, found.length > 1);
          if (second) assert.ok(isAssignment(puzzle, second) && found.some((row) => row.join() === second.join()));
          if (second && intended) assert.notDeepEqual(second, intended);
        }
      }),
      { numRuns: 2000, seed: 8 },
    );
  });

  it("name clues that fit several targets, or none", () => {
    assert.deepEqual(unclearClues({ targets: 3, fits: [[0], [1, 2], [], [1, 1]] }), [
      { clue: 1, targets: [1, 2] },
      { clue: 2, targets: [] },
    ]);
    assert.throws(() => proveAssignment({ targets: 1, fits: [[1]] }), RangeError);
  });
});

describe("matchings and components", () => {
  const digraph = fc
    .integer({ min: 1, max: 7 })
    .chain((size) =>
      fc.array(fc.uniqueArray(fc.nat(size - 1), { maxLength: 3 }), { minLength: size, maxLength: size }),
    );

  it("a matching is as large as one can be", () => {
    fc.assert(
      fc.property(digraph, fc.boolean(), (fits, started) => {
        const largest = (left: number, taken: readonly number[]): number => {
          if (left === fits.length) return taken.length;
          const free = (fits[left] ?? []).filter((right) => !taken.includes(right));
          return Math.max(largest(left + 1, taken), ...free.map((right) => largest(left + 1, [...taken, right])));
        };
        const start = fits.map((list, left) => (left % 2 === 0 ? (list[0] ?? -1) : -1));
        const { ofLeft, ofRight, size } = maximumMatching(fits, fits.length, started ? start : undefined);
        assert.equal(size, largest(0, []));
        assert.equal([...ofLeft].filter((right) => right >= 0).length, size);
        ofLeft.forEach((right, left) => {
          if (right >= 0) assert.ok(fits[left]?.includes(right) && ofRight[right] === left);
        });
        const shortage = shortageIn(fits, fits.length);
        assert.equal(shortage === undefined, size === fits.length);
        if (!shortage) return;
        assert.ok(shortage.lefts.length > shortage.rights.length);
        for (const left of shortage.lefts)
          for (const right of fits[left] ?? []) assert.ok(shortage.rights.includes(right));
      }),
      { numRuns: 1000, seed: 9 },
    );
  });

  it("components are those that reach each other; a cycle is there iff some vertex reaches itself", () => {
    fc.assert(
      fc.property(digraph, (arcs) => {
        const reached = arcs.map((list) => {
          const found = new Set(list);
          for (const vertex of found) for (const next of arcs[vertex] ?? []) found.add(next);
          return found;
        });
        const component = strongComponents(arcs);
        for (const a of upTo(arcs.length))
          for (const b of upTo(arcs.length)) {
            const together = a === b || ((reached[a]?.has(b) ?? false) && (reached[b]?.has(a) ?? false));
            assert.equal(component[a] === component[b], together);
            // Numbered before those from which it can be reached.
            if (reached[a]?.has(b)) assert.ok((component[b] ?? 0) <= (component[a] ?? 0));
          }
        const cycle = anyCycle(arcs);
        assert.equal(
          cycle !== undefined,
          reached.some((found, vertex) => found.has(vertex)),
        );
        if (!cycle) return;
        assert.equal(new Set(cycle).size, cycle.length);
        cycle.forEach((vertex, i) => {
          assert.ok(arcs[vertex]?.includes(cycle[(i + 1) % cycle.length] ?? -1));
        });
      }),
      { numRuns: 1000, seed: 10 },
    );
  });
});

describe("draws below large numbers", () => {
  it("stay below and reach everything", () => {
    for (const bound of [1n, 2n, 7n]) {
      const drawn = new Set<bigint>();
      const random = new Random(`below ${bound}`);
      for (let i = 0; i < 200; i++) drawn.add(drawBelow(random, bound));
      assert.equal(BigInt(drawn.size), bound);
      assert.ok([...drawn].every((value) => value >= 0n && value < bound));
    }
    const random = new Random("large");
    const bound = 3n * 2n ** 70n;
    const values = upTo(300).map(() => drawBelow(random, bound));
    assert.ok(values.every((value) => value < bound));
    // Each third of the range gets about a third.
    for (const third of [0n, 1n, 2n]) {
      const count = values.filter((value) => value / 2n ** 70n === third).length;
      assert.ok(count > 60 && count < 140, `${count}`);
    }
  });
});
