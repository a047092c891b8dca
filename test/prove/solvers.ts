import type { DancingLinks } from "dancing-links";
import Logic from "logic-solver";
import type { TilePuzzle } from "../../src/prove/tiles";

/*
 * The same puzzles put to general solvers. Both give faces as shown in each cell, of every labelled assembly in the frame as
 * told; exchanged alike tiles and turned grids are for the caller to bring together.
 */

type Face = readonly number[];

interface Laying {
  readonly cell: number;
  readonly tile: number;
  readonly face: Face;
}

/** `anchor`: a tile that is held to its turn 0, which leaves one of the grid's four turns where it looks different in each. */
function layings(puzzle: TilePuzzle, anchor?: number): Laying[] {
  const list: Laying[] = [];
  const turns = puzzle.turn === "free" ? 4 : 1;
  for (let cell = 0; cell < puzzle.tiles.length; cell++) {
    puzzle.tiles.forEach((edges, tile) => {
      const looks = new Set<string>();
      for (let turn = 0; turn < (tile === anchor ? 1 : turns); turn++) {
        const face = [0, 1, 2, 3].map((side) => edges.at(side - turn) ?? 0);
        if (looks.has(face.join())) continue;
        looks.add(face.join());
        if (mayLie(puzzle, cell, face)) list.push({ cell, tile, face });
      }
    });
  }
  return list;
}

function outside({ rows, columns }: TilePuzzle, cell: number): boolean[] {
  const column = cell % columns;
  return [cell < columns, column === columns - 1, cell >= (rows - 1) * columns, column === 0];
}

function mayLie(puzzle: TilePuzzle, cell: number, face: Face): boolean {
  const out = outside(puzzle, cell);
  return face.every((text, side) => !out[side] || !puzzle.outer || puzzle.outer.includes(text));
}

function agree(puzzle: TilePuzzle, a: number, b: number): boolean {
  return [puzzle.partners[a]?.includes(b), puzzle.partners[b]?.includes(a)].includes(true);
}

/** Inner edges as [cell, its side, cell]. */
function joints({ rows, columns }: TilePuzzle): [number, 1 | 2, number][] {
  const list: [number, 1 | 2, number][] = [];
  for (let cell = 0; cell < rows * columns; cell++) {
    if ((cell + 1) % columns !== 0) list.push([cell, 1, cell + 1]);
    if (cell + columns < rows * columns) list.push([cell, 2, cell + columns]);
  }
  return list;
}

function grid(puzzle: TilePuzzle, chosen: readonly Laying[]): Face[][] {
  const faces: Face[] = [];
  for (const { cell, face } of chosen) faces[cell] = face;
  return Array.from({ length: puzzle.rows }, (_, r) => faces.slice(r * puzzle.columns, (r + 1) * puzzle.columns));
}

/** Exact cover: every cell and tile once; at each joint and text at most one of "shows it" and "would not go with it". */
export async function exactCover(): Promise<(puzzle: TilePuzzle, most: number, anchor?: number) => Face[][][]> {
  // The package has no CommonJS form, which is what tests are compiled to.
  const { DancingLinks } = await import("dancing-links");
  return (puzzle, most, anchor) => byDancingLinks(new DancingLinks<Laying>(), puzzle, most, anchor);
}

function byDancingLinks(links: DancingLinks<Laying>, puzzle: TilePuzzle, most: number, anchor?: number): Face[][][] {
  const area = puzzle.tiles.length;
  const texts = [...new Set(puzzle.tiles.flat())];
  const bars = new Map<string, number>();
  joints(puzzle).forEach(([a, side, b], joint) => {
    bars.set(`${a} ${side}`, joint);
    bars.set(`${b} ${side ^ 2}`, joint);
  });
  const solver = links.createSolver({
    primaryColumns: 2 * area,
    secondaryColumns: joints(puzzle).length * texts.length,
  });
  const all = layings(puzzle, anchor);
  if (all.length === 0) return [];
  for (const laying of all) {
    const secondary: number[] = [];
    laying.face.forEach((text, side) => {
      const joint = bars.get(`${laying.cell} ${side}`);
      if (joint === undefined) return;
      const first = side === 1 || side === 2;
      texts.forEach((other, i) => {
        if (first ? other === text : !agree(puzzle, other, text)) secondary.push(joint * texts.length + i);
      });
    });
    solver.addSparseConstraint(laying, { primary: [laying.cell, area + laying.tile], secondary });
  }
  return solver.find(most).map((rows) =>
    grid(
      puzzle,
      rows.map((row) => row.data),
    ),
  );
}

/** Satisfiability: a variable for each laying, and at each joint and text "shown here, so one of its partners there". */
export function byLogicSolver(puzzle: TilePuzzle, most: number, anchor?: number): Face[][][] {
  const solver = new Logic.Solver();
  const all = layings(puzzle, anchor);
  const named = (laying: Laying) => `${laying.cell} ${laying.tile} ${laying.face.join()}`;
  for (let i = 0; i < puzzle.tiles.length; i++) {
    solver.require(Logic.exactlyOne(...all.filter((laying) => laying.cell === i).map(named)));
    solver.require(Logic.exactlyOne(...all.filter((laying) => laying.tile === i).map(named)));
  }
  const byCell = puzzle.tiles.map((_, cell) => all.filter((laying) => laying.cell === cell));
  for (const [a, side, b] of joints(puzzle)) {
    const goesWith = new Map<number, string[]>();
    for (const laying of byCell[a] ?? []) {
      const text = laying.face[side] ?? 0;
      const there =
        goesWith.get(text) ?? (byCell[b] ?? []).filter((o) => agree(puzzle, text, o.face[side ^ 2] ?? 0)).map(named);
      goesWith.set(text, there);
      solver.require(Logic.or(Logic.not(named(laying)), ...there));
    }
  }
  const found: Face[][][] = [];
  for (let solution = solver.solve(); solution && found.length < most; solution = solver.solve()) {
    const trues = new Set(solution.getTrueVars());
    const chosen = all.filter((laying) => trues.has(named(laying)));
    found.push(grid(puzzle, chosen));
    solver.forbid(Logic.and(...chosen.map(named)));
  }
  return found;
}
