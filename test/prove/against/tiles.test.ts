import assert from "node:assert/strict";
import fc from "fast-check";
import { type Assembly, proveTiles, type TileEdges, type TileProof, type TilePuzzle } from "../../../src/prove/tiles";
import { countNaively, standIn } from "../naive";
import { exactCover } from "../solvers";
import { drawn, forAll, rarely, verdict } from "./runs";

const everything = { cap: Number.POSITIVE_INFINITY, budget: Number.POSITIVE_INFINITY };

const frames = [
  [1, 1],
  [1, 2],
  [2, 1],
  [1, 3],
  [1, 4],
  [2, 2],
  [2, 2],
  [2, 2],
  [1, 5],
  [2, 3],
  [2, 3],
  [3, 2],
] as const;
const most = { cells: 6, joints: 7, texts: 8 };

const of = <T>(value: fc.Arbitrary<T>, length: number) => fc.array(value, { minLength: length, maxLength: length });
const text = fc.nat(most.texts - 1);

/** Text 0 fits nothing; of the others those fit that a link names. */
const recipe = fc.record({
  frame: fc.constantFrom(...frames),
  links: fc.array(fc.tuple(text, text), { minLength: 2, maxLength: 10, size: "max" }),
  /** Which link stands at each joint; where there is none, edges show what they would show outside. */
  solved: fc.oneof(
    { weight: 3, arbitrary: of(fc.nat(), most.joints) },
    { weight: 1, arbitrary: of(fc.option(fc.nat(), { freq: 2 }), most.joints) },
  ),
  edges: of(fc.oneof({ weight: 2, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: text }), 4 * most.cells),
  /** For each tile another one that it is made to be like, or itself. */
  likes: of(fc.option(fc.nat(most.cells - 1), { freq: 2 }), most.cells),
  twins: fc.boolean(),
  turns: of(fc.nat(3), most.cells),
  order: of(fc.nat(), most.cells),
  turn: fc.constantFrom("fixed" as const, "free" as const, "free" as const),
  frameUntold: fc.boolean(),
  outer: rarely(fc.tuple(text, text)),
});

type Recipe = typeof recipe extends fc.Arbitrary<infer R> ? R : never;

const turned = ([n, e, s, w]: TileEdges, turn: number): TileEdges =>
  turn === 0 ? [n, e, s, w] : turned([w, n, e, s], turn - 1);

function built({
  frame: [rows, columns],
  links,
  solved,
  edges,
  likes,
  twins,
  turns,
  order,
  ...rest
}: Recipe): TilePuzzle {
  const cells = rows * columns;
  const shown = edges.slice(0, 4 * cells);
  let joint = 0;
  for (let cell = 0; cell < cells; cell++)
    for (const [other, side] of [
      [cell + 1, 1],
      [cell + columns, 2],
    ] as const) {
      if (side === 1 ? other % columns === 0 : other >= cells) continue;
      const link = solved[joint++];
      const [a, b] = (typeof link === "number" && links[link % links.length]) || [undefined, undefined];
      if (a === undefined || b === undefined) continue;
      // Larger numbers lay the link the other way round.
      const flipped = ((link ?? 0) / Math.max(1, links.length)) & 1;
      shown[4 * cell + side] = flipped ? b : a;
      shown[4 * other + (side ^ 2)] = flipped ? a : b;
    }
  const tiles = Array.from({ length: cells }, (_, cell): TileEdges => {
    const like = twins ? (likes[cell] ?? cell) : cell;
    const from = 4 * (like < cells ? like : cell);
    const [n = 0, e = 0, s = 0, w = 0] = shown.slice(from, from + 4);
    return turned([n, e, s, w], rest.turn === "free" ? (turns[cell] ?? 0) : 0);
  });
  const partners = Array.from({ length: most.texts }, (): number[] => []);
  for (const [a, b] of links) if (a > 0 && b > 0) partners[a]?.push(b);
  const sorted = tiles.map((_, i) => i).sort((a, b) => (order[a] ?? 0) - (order[b] ?? 0));
  return {
    rows,
    columns,
    tiles: sorted.flatMap((i) => tiles.slice(i, i + 1)),
    partners,
    turn: rest.turn,
    frameUntold: rest.frameUntold,
    ...(rest.outer ? { outer: [0, ...rest.outer] } : {}),
  };
}

/** How an assembly looks, as the other solvers tell it. */
function lookOf({ tiles, turn }: TilePuzzle, { rows, columns, cells }: Assembly): string {
  const faces = cells.map((cell) => {
    const edges = tiles[cell.tile] ?? [];
    return [0, 1, 2, 3].map((side) => edges[(side + 4 - cell.turn) % 4] ?? -1);
  });
  const picture = Array.from({ length: rows }, (_, row) => faces.slice(row * columns, (row + 1) * columns));
  return standIn(picture, turn === "free");
}

const puzzles = recipe.map(built);
const kinds = ["one", "several", "none"].flatMap((status) => [
  status,
  `${status}, frame untold`,
  `${status} by search`,
]);

function kindsOf({ frameUntold, tiles }: TilePuzzle, { status, by }: TileProof): string[] {
  const untold = frameUntold && tiles.length > 3 ? [`${status}, frame untold`] : [];
  return [status, `${status} by ${by}`, ...untold];
}

describe(`the tile prover against others (${drawn})`, function () {
  this.timeout(0);

  it("agrees with an exact cover in verdict, number and looks", async () => {
    const byExactCover = await exactCover();
    // Exchanged twins are so many that finding them all says nothing more.
    const enough = 1000;
    forAll(puzzles, kinds, (puzzle) => {
      const area = puzzle.tiles.length;
      const looks = new Set<string>();
      for (let rows = 1; rows <= area; rows++) {
        const told = rows === puzzle.rows;
        if (area % rows !== 0 || !(told || puzzle.frameUntold)) continue;
        const grids = byExactCover({ ...puzzle, rows, columns: area / rows }, enough);
        fc.pre(grids.length < enough);
        for (const grid of grids) looks.add(standIn(grid, puzzle.turn === "free"));
      }
      const met: Assembly[] = [];
      const proof = proveTiles(puzzle, { ...everything, found: (each) => void met.push(each) });
      assert.deepEqual([proof.count, proof.status, proof.capped], [looks.size, verdict(looks.size), false]);
      assert.deepEqual(new Set(met.map((assembly) => lookOf(puzzle, assembly))), looks);
      assert.equal(met.length, looks.size);
      return kindsOf(puzzle, proof);
    });
  });

  it("agrees with laying everything everywhere, and shows a second assembly that is another", () => {
    forAll(puzzles, kinds, (puzzle) => {
      const count = countNaively(puzzle);
      const met: Assembly[] = [];
      const all = proveTiles(puzzle, { ...everything, found: (each) => void met.push(each) });
      assert.deepEqual([all.count, all.status, all.capped], [count, verdict(count), false]);
      assert.equal(proveTiles(puzzle).status, verdict(count));
      const [intended] = met;
      if (!intended) return kindsOf(puzzle, all);
      const { status, second } = proveTiles(puzzle, { intended });
      assert.deepEqual([status, second !== undefined], [verdict(count), count > 1]);
      if (second) {
        const looks = new Set(met.map((assembly) => lookOf(puzzle, assembly)));
        assert.ok(looks.has(lookOf(puzzle, second)) && lookOf(puzzle, second) !== lookOf(puzzle, intended));
      }
      return kindsOf(puzzle, all);
    });
  });
});
