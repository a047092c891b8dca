import assert from "node:assert/strict";
import * as fc from "fast-check";
import { plain, type Run } from "../../src/base/run";
import { breaks } from "../../src/text/breaks";
import { type FittedLine, type FittedText, fitAt, largestSize, wrap } from "../../src/text/fit";
import { blockHeight, type Room, type Rows, rectangle, trapezoid } from "../../src/text/space";
import type { Typeface } from "../../src/text/typeface";
import { testTypeface } from "../support/typeface";

const mmPerPoint = 25.4 / 72;
const rows: Rows = { above: 0.9, below: 0.25, leading: 1.2 };
const limits = { smallest: 6, largest: 72, maxLines: 3 };
const texts = (lines: readonly FittedLine[] | undefined): readonly string[] | undefined =>
  lines?.map((line) => plain(line.runs));

/** Every character is one em wide, so that sizes can be worked out by hand. */
const square = { measure: (runs: readonly Run[]): number => [...plain(runs)].length };

/** All ways to set a text in exactly so many lines, by brute force. */
function everyWay(text: string, lines: number): readonly (readonly string[])[] {
  const bounds = [...breaks(text), text.length];
  const from = (start: number, left: number): string[][] => {
    if (left === 1) return [[text.slice(start).trim()]];
    return bounds
      .filter((bound) => bound > start && bound < text.length)
      .flatMap((bound) => from(bound, left - 1).map((rest) => [text.slice(start, bound).trim(), ...rest]));
  };
  return from(0, lines);
}

/** The largest size by trying every quarter point and every way. */
function largestByTrying(text: string, room: Room, maxLines: number): number | undefined {
  for (let size = limits.largest; size >= limits.smallest; size -= 0.25) {
    for (let lines = 1; lines <= maxLines; lines++) {
      const fits = everyWay(text, lines).some((way) =>
        way.every((line, i) => [...line].length * size * mmPerPoint <= room(i, lines, size) + 1e-6),
      );
      if (fits) return size;
    }
  }
  return undefined;
}

/** A text at the largest size that it fits at, in the fewest lines of that size. */
function largest(...[face, runs, room, within]: Parameters<typeof largestSize>): FittedText | undefined {
  const size = largestSize(face, runs, room, within);
  return size === undefined ? undefined : fitAt(face, runs, room, size, within.maxLines);
}

describe("fitting", () => {
  let typeface: Typeface;
  before(async () => {
    typeface = await testTypeface();
  });

  it("takes the largest quarter point that fits a rectangle", () => {
    const found = largest(typeface, [{ text: "tigela" }], rectangle(40, 20, rows), limits);
    assert.ok(found);
    assert.deepEqual(texts(found.lines), ["tigela"]);
    const width = typeface.measure([{ text: "tigela" }]);
    const room = (size: number) => width * size * mmPerPoint <= 40 && blockHeight(rows, 1, size) <= 20;
    assert.equal((found.size * 4) % 1, 0);
    assert.ok(room(found.size) && !room(found.size + 0.25), `${found.size} pt`);
  });

  it("is bound by the height where that is less", () => {
    const found = largest(square, [{ text: "ab" }], rectangle(500, 10, rows), limits);
    assert.equal(found?.size, Math.floor((10 / (1.15 * mmPerPoint)) * 4) / 4);
  });

  it("breaks into more lines only where that makes it larger", () => {
    const two = largest(square, [{ text: "aaaa bbbb" }], rectangle(40, 40, rows), limits);
    assert.deepEqual(texts(two?.lines), ["aaaa", "bbbb"]);
    assert.equal(two?.size, Math.floor((10 / mmPerPoint) * 4) / 4);
    const capped = largest(square, [{ text: "aa bb" }], rectangle(400, 400, rows), { ...limits, largest: 20 });
    assert.deepEqual(texts(capped?.lines), ["aa bb"]);
    assert.equal(capped?.size, 20);
  });

  it("sets lines as even as they will go, not as full", () => {
    const found = fitAt(square, [{ text: "aa bb cc dd" }], rectangle(9 * 10 * mmPerPoint, 50, rows), 10, 3);
    assert.deepEqual(texts(found?.lines), ["aa bb", "cc dd"]);
  });

  it("gives the line nearest a tile's edge the most, at either end", () => {
    const shape = { width: 60, depth: 28, taper: 2 } as const;
    const text = "a bb ccc dddd eeeee";
    const down = largest(square, [{ text }], trapezoid({ ...shape, outer: "first" }, rows), limits);
    const up = largest(square, [{ text }], trapezoid({ ...shape, outer: "last" }, rows), limits);
    const lengths = (found: typeof down) => found?.lines.map((line) => line.width) ?? [];
    const [atEdge = 0, next = 0] = lengths(down);
    const [last = 0, before = 0] = lengths(up).reverse();
    assert.ok(atEdge > next && last > before, `${texts(down?.lines)} / ${texts(up?.lines)}`);
  });

  it("never sticks out of a trapezoid", () => {
    const shape = { width: 44, depth: 20, taper: 2, outer: "first" } as const;
    const runs = [{ text: "she puts the coffee on the table" }];
    const found = largest(typeface, runs, trapezoid(shape, rows), limits);
    assert.ok(found);
    found.lines.forEach((line, i) => {
      const inner = blockHeight(rows, i + 1, found.size);
      assert.ok(line.width * found.size * mmPerPoint <= 44 - 2 * inner + 1e-6);
      assert.ok(inner <= 20);
    });
  });

  it("agrees with trying everything", () => {
    const word = fc.integer({ min: 1, max: 7 }).map((length) => "x".repeat(length));
    const sentence = fc.array(word, { minLength: 1, maxLength: 6 }).map((words) => words.join(" "));
    const room = fc.oneof(
      fc
        .tuple(fc.integer({ min: 20, max: 90 }), fc.integer({ min: 8, max: 60 }))
        .map(([w, h]) => rectangle(w, h, rows)),
      fc
        .tuple(fc.integer({ min: 30, max: 90 }), fc.integer({ min: 8, max: 40 }), fc.constantFrom("first", "last"))
        .map(([width, depth, outer]) => trapezoid({ width, depth, taper: 2, outer }, rows)),
    );
    fc.assert(
      fc.property(sentence, room, (text, shape) => {
        assert.equal(largest(square, [{ text }], shape, limits)?.size, largestByTrying(text, shape, 3));
      }),
      { numRuns: 60, seed: 7 },
    );
  });

  it("says so where nothing fits", () => {
    assert.equal(
      largest(typeface, [{ text: "inconstitucionalissimamente" }], rectangle(15, 50, rows), limits),
      undefined,
    );
    assert.equal(fitAt(typeface, [{ text: "tigela" }], rectangle(10, 50, rows), 30, 3), undefined);
  });

  it("keeps styles and drops only the white space at line ends", () => {
    const runs: readonly Run[] = [{ text: "aaaa " }, { text: "bb cc", bold: true }, { text: " dd", italic: true }];
    const found = fitAt(square, runs, rectangle(8 * 10 * mmPerPoint, 50, rows), 10, 3);
    assert.deepEqual(
      found?.lines.map((line) => line.runs),
      [
        [{ text: "aaaa " }, { text: "bb", bold: true }],
        [
          { text: "cc", bold: true },
          { text: " dd", italic: true },
        ],
      ],
    );
  });

  it("draws a soft hyphen only where the line ends at it", () => {
    const runs = [{ text: "Kranken\u00adhaus" }];
    assert.deepEqual(texts(fitAt(square, runs, rectangle(8 * 10 * mmPerPoint, 50, rows), 10, 2)?.lines), [
      "Kranken-",
      "haus",
    ]);
    assert.deepEqual(texts(fitAt(square, runs, rectangle(90, 50, rows), 10, 2)?.lines), ["Krankenhaus"]);
  });

  it("has no lines for a blank text", () => {
    assert.deepEqual(largest(square, [{ text: " \u00ad" }], rectangle(9, 9, rows), limits)?.lines, []);
    assert.deepEqual(wrap(square, [], 10, 50), []);
  });

  it("wraps running text as full as it will go and lets a long word stick out", () => {
    const width = 9 * 10 * mmPerPoint;
    const lines = wrap(square, [{ text: "aa bb cc dd eeeeeeeeeeee ff" }], 10, width);
    assert.deepEqual(texts(lines), ["aa bb cc", "dd", "eeeeeeeeeeee", "ff"]);
  });
});
