import assert from "node:assert/strict";
import type { Typeface } from "../../src/text/typeface";
import { testTypeface } from "../support/typeface";

type Extent = readonly [number, number, number, number];

/** Extents of a path of M, L and Q commands, [left, bottom, right, top]: of its curve, and of its control points. */
function extents(path: string): { readonly curve: Extent; readonly control: Extent } {
  const curve: [number, number][] = [];
  const control: [number, number][] = [];
  let [x, y] = [0, 0];
  for (const [, command, text] of path.matchAll(/([MLQ])([^MLQZ]*)/g)) {
    const n = (text ?? "").trim().split(" ").map(Number);
    const [endX = 0, endY = 0] = n.slice(-2);
    if (command === "Q") {
      const [midX = 0, midY = 0] = n;
      control.push([midX, midY]);
      for (const turn of turningPoint(x, midX, endX)) curve.push([turn, y]);
      for (const turn of turningPoint(y, midY, endY)) curve.push([x, turn]);
    }
    [x, y] = [endX, endY];
    curve.push([x, y]);
  }
  return { curve: extentOf(curve), control: extentOf([...curve, ...control]) };
}

function extentOf(points: readonly (readonly [number, number])[]): Extent {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

function turningPoint(start: number, control: number, end: number): number[] {
  const t = (start - control) / (start - 2 * control + end);
  return t > 0 && t < 1 ? [(1 - t) ** 2 * start + 2 * t * (1 - t) * control + t * t * end] : [];
}

describe("outlines", () => {
  let typeface: Typeface;
  before(async () => {
    typeface = await testTypeface();
  });

  for (const name of ["regular", "bold", "italic", "boldItalic"] as const) {
    it(`fill the box that the font gives for each glyph: ${name}`, () => {
      const face = typeface.faces[name];
      let drawn = 0;
      for (let glyph = 0; glyph < 3000; glyph++) {
        const box = face.box(glyph);
        const path = face.outline(glyph);
        assert.equal(path === "", box === undefined, `glyph ${glyph}`);
        if (!box) continue;
        drawn++;
        const { curve, control } = extents(path);
        box.forEach((edge, i) => {
          // Some fonts give the box of the control points; whole units may round either way where parts are scaled.
          const off = Math.min(Math.abs(edge - (curve[i] ?? 0)), Math.abs(edge - (control[i] ?? 0)));
          assert.ok(off <= 1, `glyph ${glyph}: ${curve} for ${box}`);
        });
      }
      assert.ok(drawn > 2500);
    });
  }

  it("close every contour", () => {
    const [ring] = typeface.shape([{ text: "O" }]).glyphs;
    assert.ok(ring);
    const path = typeface.faces.regular.outline(ring.id);
    assert.equal(path.match(/M/g)?.length, 2);
    assert.equal(path.match(/Z/g)?.length, 2);
  });
});
