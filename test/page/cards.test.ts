import assert from "node:assert/strict";
import * as fc from "fast-check";
import { plain } from "../../src/base/run";
import {
  backBox,
  backsOf,
  cardCuts,
  cardRows,
  cutPiecesOf,
  cutsOf,
  fitCards,
  inset,
  largestCards,
  type PlacedCard,
  packGrid,
  packRows,
  packStrips,
  placeGrid,
  setCard,
  turned,
} from "../../src/page/cards";
import { bodyBox } from "../../src/page/furniture";
import { type Box, papers } from "../../src/page/paper";
import type { LineItem } from "../../src/page/sheet";
import type { Typeface } from "../../src/text/typeface";
import { testTypeface } from "../support/typeface";

const box: Box = { x: 10, y: 16, w: 190, h: 263 };
const mmPerPoint = 25.4 / 72;

function overlap(a: PlacedCard, b: PlacedCard): boolean {
  const e = 1e-6;
  return a.page === b.page && a.x + a.w > b.x + e && b.x + b.w > a.x + e && a.y + a.h > b.y + e && b.y + b.h > a.y + e;
}

function assertApart(places: readonly PlacedCard[]): void {
  places.forEach((a, i) => {
    assert.ok(a.x >= box.x - 1e-6 && a.y >= box.y - 1e-6);
    assert.ok(a.x + a.w <= box.x + box.w + 1e-6 && a.y + a.h <= box.y + box.h + 1e-6, JSON.stringify(a));
    for (const b of places.slice(i + 1)) assert.ok(!overlap(a, b));
  });
}

/** Whether every edge of the cards lies on a cut, and nothing is cut inside a card. */
function assertCutOut(cards: readonly Box[], cuts: readonly LineItem[]): void {
  const e = 1e-3;
  const onCut = (x: number, y: number, upright: boolean): boolean =>
    cuts.some(({ x1, y1, x2, y2 }) =>
      upright
        ? Math.abs(x1 - x2) < e && Math.abs(x1 - x) < e && y1 <= y && y <= y2
        : Math.abs(y1 - y2) < e && Math.abs(y1 - y) < e && x1 <= x && x <= x2,
    );
  for (const { x, y, w, h } of cards) {
    for (const part of [0.01, 0.3, 0.99]) {
      assert.ok(onCut(x + part * w, y, false) && onCut(x + part * w, y + h, false));
      assert.ok(onCut(x, y + part * h, true) && onCut(x + w, y + part * h, true));
    }
    for (const cut of cuts) {
      const inside = (low: number, high: number, from: number, to: number): boolean =>
        Math.min(high, to) - Math.max(low, from) > e;
      const through =
        cut.x1 === cut.x2
          ? cut.x1 > x + e && cut.x1 < x + w - e && inside(y, y + h, cut.y1, cut.y2)
          : cut.y1 > y + e && cut.y1 < y + h - e && inside(x, x + w, cut.x1, cut.x2);
      assert.ok(!through);
    }
  }
}

/** Cards with a gutter between them, a cut line round each. */
function gutters(rows: number, columns: number): LineItem[] {
  return Array.from({ length: rows * columns }, (_, i) =>
    cardCuts([{ x: 20 + (i % columns) * 44, y: 20 + Math.floor(i / columns) * 34, w: 40, h: 30 }]),
  ).flat();
}

describe("cards", () => {
  let typeface: Typeface;
  before(async () => {
    typeface = await testTypeface();
  });

  it("stand in a grid, as many a page as fit, on as many pages as needed", () => {
    const grid = packGrid(box, { w: 60, h: 40 }, 40);
    assert.deepEqual(grid, { columns: 3, rows: 6, pages: 3, w: 60, h: 40 });
    const places = placeGrid(box, grid, 40);
    assertApart(places);
    assert.deepEqual(
      places.map(({ card, page }) => [card, page]).filter(([card]) => card === 17 || card === 18 || card === 39),
      [
        [17, 0],
        [18, 1],
        [39, 2],
      ],
    );
    assert.deepEqual([places[0]?.x, places[1]?.x, places[3]?.x, places[3]?.y], [15, 75, 15, 56]);
    assert.equal(packGrid(box, { w: 191, h: 40 }, 3), undefined);
    assert.deepEqual(packStrips(box, 26.3, 12), { columns: 1, rows: 10, pages: 2, w: 190, h: 26.3 });
  });

  it("of equally large ones stand where they take fewer cuts", () => {
    const limits = { minW: 40, minH: 25, maxW: 60, maxH: 40 };
    // Six in one column take 9 cuts, 2 × 3 take 7; four in one column 7, 2 × 2 take 6.
    for (const [count, columns, rows] of [
      [6, 2, 3],
      [4, 2, 2],
    ] as const) {
      const [grid] = largestCards(box, count, limits);
      assert.deepEqual(grid, { columns, rows, pages: 1, w: 60, h: 40 });
    }
  });

  it("are as large as the pages allow, and more pages only for larger ones", () => {
    const limits = { minW: 40, minH: 25, maxW: 90, maxH: 60 };
    const choices = largestCards(box, 20, limits);
    assert.ok(choices.length >= 2);
    // Each choice against trying all sizes to the half millimetre.
    for (const { pages, w, h, columns, rows } of choices) {
      assert.equal(pages, Math.ceil(20 / (columns * rows)));
      let best = 0;
      for (let tw = limits.minW; tw <= limits.maxW; tw += 0.5) {
        for (let th = limits.minH; th <= limits.maxH; th += 0.5) {
          if (packGrid(box, { w: tw, h: th }, 20)?.pages === pages) best = Math.max(best, tw * th);
        }
      }
      assert.equal(w * h, best, `${pages} pages`);
    }
    choices.slice(1).forEach((choice, i) => {
      const before = choices[i];
      assert.ok(before && choice.pages > before.pages && choice.w * choice.h > before.w * before.h);
    });
    for (const { w, h } of largestCards(box, 20, { ...limits, ratio: 1.5 })) assert.ok(Math.abs(w / h - 1.5) < 1e-9);
    const between = largestCards(box, 20, { ...limits, ratio: [1.4, 1.6] });
    assert.ok(between.length > 0);
    for (const { w, h } of between) assert.ok(w / h > 1.37 && w / h <= 1.6 + 1e-9, `${w} × ${h}`);
    assert.deepEqual(largestCards(box, 20, { ...limits, minW: 300 }), []);
  });

  it("of different widths are packed into few rows, each a strip", () => {
    const widths = fc.array(fc.double({ min: 8, max: 190, noNaN: true }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(widths, fc.double({ min: 12, max: 60, noNaN: true }), (all, height) => {
        const packed = packRows(box, all, height);
        assert.ok(packed);
        assertApart(packed.places);
        packed.places.forEach((place, card) => {
          assert.deepEqual([place.card, place.w, place.h], [card, all[card], height]);
        });
        const rows = new Set(packed.places.map(({ page, y }) => `${page} ${y.toFixed(4)}`)).size;
        // The widths need at least so many rows; less than twice as many are used, since no two would go into one.
        const fewest = Math.ceil(all.reduce((sum, w) => sum + w, 0) / box.w - 1e-9);
        assert.ok(rows >= fewest && rows < Math.max(2, 2 * fewest));
        assert.equal(packed.pages, Math.ceil(rows / Math.floor(box.h / height + 1e-6)));
        for (let page = 0; page < packed.pages; page++) {
          const here: readonly PlacedCard[] = packed.places.filter((place) => place.page === page);
          assertCutOut(here, cardCuts(here));
          assert.equal(cutPiecesOf({ items: cardCuts(here) }), here.length);
        }
      }),
      { numRuns: 80, seed: 9 },
    );
    // Worked by hand: in order they would take three rows, widest first two.
    const packed = packRows(box, [60, 100, 130, 90], 30);
    assert.deepEqual(
      packed?.places.map(({ x, y }) => [x, y]),
      [
        [140, 16],
        [10, 46],
        [10, 16],
        [110, 46],
      ],
    );
    assert.equal(packRows(box, [60, 200], 30), undefined);
  });

  it("share their cut lines", () => {
    const grid = packGrid(box, { w: 60, h: 40 }, 12);
    assert.ok(grid);
    const places = placeGrid(box, grid, 12);
    const cuts = cardCuts(places);
    assert.equal(cuts.length, 4 + 1 + 3 + 1);
    assertCutOut(places, cuts);
    assert.ok(cuts.every(({ role, weight }) => role === "cut" && weight === 0.25));
  });

  it("take R + C + 2 cuts with shared edges and 2(R + C) with gutters", () => {
    const grid = { columns: 4, rows: 3, pages: 1, w: 40, h: 30 };
    const shared = cardCuts(placeGrid(box, grid, 12));
    assert.equal(cutsOf({ items: shared }), 9);
    // However the lines are cut up: here a line round each card.
    assert.equal(cutsOf({ items: placeGrid(box, grid, 12).flatMap((card) => cardCuts([card])) }), 9);
    assert.equal(cutsOf({ items: gutters(3, 4) }), 14);
    assert.equal(cutsOf({ items: gutters(4, 3) }), 14);
    assert.equal(cutPiecesOf({ items: shared }), 12);
    assert.equal(cutPiecesOf({ items: gutters(4, 3) }), 12);
    assert.equal(cutPiecesOf({ items: cardCuts(placeGrid(box, grid, 7)) }), 7);
    // Rules and marks are not cut.
    assert.equal(cutsOf({ items: shared.map((line) => ({ ...line, role: "rule" as const })) }), 0);
    // Two lines that are far apart on one straight line are two cuts; one drawn backwards is the same cut.
    const cut = { type: "line", role: "cut", weight: 0.25, y1: 50, y2: 50 } as const;
    assert.equal(
      cutsOf({
        items: [
          { ...cut, x1: 10, x2: 50 },
          { ...cut, x1: 80, x2: 50 },
          { ...cut, x1: 120, x2: 160 },
        ],
      }),
      2,
    );
  });

  describe("on the back", () => {
    const numbers = (places: readonly PlacedCard[]): number[][] => {
      const rows = new Map<number, number[]>();
      for (const { card, y } of [...places].sort((a, b) => a.y - b.y || a.x - b.x))
        rows.set(y, [...(rows.get(y) ?? []), card + 1]);
      return [...rows.values()];
    };
    const layout = (paper: { width: number; height: number }, columns: number, rows: number, count: number) => {
      const grid = { columns, rows, pages: Math.ceil(count / (columns * rows)), w: 50, h: 40 };
      return placeGrid(bodyBox(paper, 10), grid, count);
    };
    const flat = turned(papers.A4);

    it("mirror left and right about the upright edge", () => {
      const expected = [
        [3, 2, 1],
        [6, 5, 4],
        [9, 8, 7],
        [12, 11, 10],
      ];
      const backs = backsOf(layout(papers.A4, 3, 4, 12), "long", papers.A4);
      assert.deepEqual(numbers(backs), expected);
      assert.deepEqual([...new Set(backs.map(({ turn }) => turn))], [0]);
      assert.deepEqual(numbers(backsOf(layout(flat, 3, 4, 12), "short", flat)), expected);
    });

    it("change top and bottom about the lying edge, upside down", () => {
      const expected = [
        [10, 11, 12],
        [7, 8, 9],
        [4, 5, 6],
        [1, 2, 3],
      ];
      const backs = backsOf(layout(papers.A4, 3, 4, 12), "short", papers.A4);
      assert.deepEqual(numbers(backs), expected);
      assert.deepEqual([...new Set(backs.map(({ turn }) => turn))], [2]);
      assert.deepEqual(numbers(backsOf(layout(flat, 3, 4, 12), "long", flat)), expected);
    });

    it("lie behind their fronts, also on a page that is not full", () => {
      for (const paper of [papers.A4, papers.Letter, flat])
        for (const duplex of ["long", "short"] as const) {
          const fronts = layout(paper, 3, 4, 14);
          const backs = backsOf(fronts, duplex, paper);
          const upright = backs[0]?.turn === 0;
          fronts.forEach((front, i) => {
            const back = backs[i];
            assert.ok(back && back.card === front.card && back.page === front.page);
            // A pin through a card's middle comes out at the mirrored place.
            const pin = [front.x + front.w / 2, front.y + front.h / 2] as const;
            const out = upright ? [paper.width - pin[0], pin[1]] : [pin[0], paper.height - pin[1]];
            assert.ok(Math.abs(back.x + back.w / 2 - (out[0] ?? 0)) < 1e-9);
            assert.ok(Math.abs(back.y + back.h / 2 - (out[1] ?? 0)) < 1e-9);
          });
          const again = backsOf(backs, duplex, paper);
          again.forEach((place, i) => {
            assert.ok(Math.abs(place.x - (fronts[i]?.x ?? 0)) < 1e-9 && Math.abs(place.y - (fronts[i]?.y ?? 0)) < 1e-9);
          });
        }
    });

    it("keep their content 3 mm inside", () => {
      assert.deepEqual(backBox({ x: 10, y: 20, w: 50, h: 40 }), { x: 13, y: 23, w: 44, h: 34 });
    });
  });

  describe("carry words", () => {
    const faces = ["o copo", "a tigela de barro", "o guardanapo de papel"].map((text) => ({ runs: [{ text }] }));
    const limits = { smallest: 6, largest: 60, maxLines: 3 };
    const room = { x: 30, y: 40, w: 52, h: 30 };
    const inRoom = (face: (typeof faces)[number], size: number) => setCard(face, room, size, typeface, { maxLines: 3 });

    it("of one size, the largest at which all fit", () => {
      const size = fitCards(faces, room, typeface, limits);
      assert.ok(size !== undefined);
      for (const face of faces) assert.ok(inRoom(face, size));
      assert.ok(faces.some((face) => inRoom(face, size + 0.25) === undefined));
      const own = fitCards(faces, [room, room, { w: 30, h: 30 }], typeface, limits);
      assert.ok(own !== undefined && own < size);
      assert.equal(
        fitCards([{ runs: [{ text: "Donaudampfschifffahrt" }] }], { w: 5, h: 9 }, typeface, limits),
        undefined,
      );
      assert.equal(fitCards([{ runs: [] }], room, typeface, limits), 60);
    });

    it("inside the box, in its middle", () => {
      const size = fitCards(faces, room, typeface, limits) ?? 0;
      for (const face of faces) {
        const items = inRoom(face, size) ?? [];
        for (const item of items) {
          assert.ok(item.type === "text");
          const half = (typeface.measure(item.runs) * size * mmPerPoint) / 2;
          assert.ok(item.x - half >= room.x - 0.01 && item.x + half <= room.x + room.w + 0.01);
          const ink = typeface.ink(item.runs);
          assert.ok(item.y - ink.top * size * mmPerPoint >= room.y - 0.01);
          assert.ok(item.y - ink.bottom * size * mmPerPoint <= room.y + room.h + 0.01);
        }
      }
      // One line: half the x-height above the middle, half below.
      const [one] = setCard({ runs: [{ text: "nove" }] }, room, 20, typeface, { maxLines: 1 }) ?? [];
      assert.ok(one?.type === "text");
      assert.ok(Math.abs(one.y - (typeface.xHeight / 2) * 20 * mmPerPoint - 55) < 0.1);
    });

    it("upside down for a back that stands so", () => {
      const face = faces[1] ?? { runs: [] };
      const upright = setCard(face, room, 20, typeface, { maxLines: 3 }) ?? [];
      const over = setCard(face, room, 20, typeface, { maxLines: 3, turn: 2 }) ?? [];
      assert.ok(upright.length >= 2);
      over.forEach((item, i) => {
        const same = upright[i];
        assert.ok(item.type === "text" && same?.type === "text");
        assert.equal(item.turn, 2);
        assert.equal(plain(item.runs), plain(same.runs));
        assert.ok(Math.abs(item.x + same.x - 2 * 56) < 1e-9 && Math.abs(item.y + same.y - 2 * 55) < 1e-9);
      });
    });

    it("and pictures in their own proportions, over the words", () => {
      const picture = { key: "a.png", alt: "a spoon", ratio: 2 };
      const [alone, ...none] = setCard({ runs: [], picture }, room, 20, typeface, { maxLines: 2 }) ?? [];
      assert.ok(alone?.type === "picture" && none.length === 0);
      assert.deepEqual([alone.x, alone.y, alone.w, alone.h], [30, 42, 52, 26]);
      const face = { runs: [{ text: "a colher" }], picture };
      const size = fitCards([face], room, typeface, limits) ?? 0;
      const [above, words] = setCard(face, room, size, typeface, { maxLines: 2 }) ?? [];
      assert.ok(above?.type === "picture" && words?.type === "text");
      assert.ok(Math.abs(above.w / above.h - 2) < 1e-9);
      assert.ok(above.y >= room.y - 1e-9);
      const under = above.y + above.h;
      assert.ok(Math.abs(words.y - cardRows.above * size * mmPerPoint - under - 1) < 1e-6);
      assert.ok(words.y - typeface.ink(words.runs).top * size * mmPerPoint >= above.y + above.h);
      assert.ok(words.y + 0.24 * size * mmPerPoint <= room.y + room.h + 1e-6);
    });
  });

  it("lose their padding side by side", () => {
    assert.deepEqual(inset(box, { top: 2, left: 5 }), { x: 15, y: 18, w: 185, h: 261 });
    assert.deepEqual(inset({ x: 0, y: 0, w: 4, h: 4 }, 3), { x: 3, y: 3, w: 0, h: 0 });
  });
});
