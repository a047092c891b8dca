import assert from "node:assert/strict";
import { sizeFor, xHeightAt, xHeightOf, xHeights } from "../../src/page/legibility";
import type { Typeface } from "../../src/text/typeface";
import { testTypeface } from "../support/typeface";

describe("legibility", () => {
  let typeface: Typeface;
  before(async () => {
    typeface = await testTypeface();
  });

  it("is the visual angle of the x-height, as NUREG-0700 has it too: 6.283·D·MA/21600", () => {
    const distances = { desk: 400, board: 600, wall: 6000 } as const;
    for (const use of ["desk", "board", "wall"] as const) {
      const { comfortable, least } = xHeights[use];
      for (const [height, minutes] of [
        [comfortable, 20],
        [least, 16],
      ] as const) {
        const rule = (6.283 * distances[use] * minutes) / 21600;
        assert.ok(Math.abs(height / rule - 1) < 0.003, `${use} ${height} ${rule}`);
        assert.ok(Math.abs(height / xHeightAt(distances[use], minutes) - 1) < 0.003);
      }
    }
    // 12 pt at half size is seen at 9.4′.
    const half = xHeightOf(6, typeface);
    assert.ok(Math.abs(xHeightAt(400, 9.4) - half) < 0.05, `${half}`);
  });

  it("gives the smallest size that fitting can give at which letters are so high", () => {
    const size = sizeFor(2.33, typeface);
    assert.equal((size * 4) % 1, 0);
    assert.ok(xHeightOf(size, typeface) >= 2.33 && xHeightOf(size - 0.25, typeface) < 2.33);
  });
});
