import type { Assembly, TileEdges, TilePuzzle, Turn } from "./tiles";

/*
 * Checks on given assemblies. They share nothing with the search but the types, so that what the search hands out is
 * looked at by other eyes.
 */

/** `n` quarter turns, any integer, as 0 to 3. */
export function turnOf(n: number): Turn {
  return (n & 3) as Turn;
}

/** The text that a tile turned clockwise by `turn` shows at a side: 0 north, 1 east, 2 south, 3 west. */
export function shownAt(edges: TileEdges, turn: number, side: number): number {
  return edges[turnOf(side - turn)];
}

/** Whether two edge texts may lie against each other. */
export function mayTouch(puzzle: TilePuzzle, a: number, b: number): boolean {
  return (puzzle.partners[a]?.includes(b) || puzzle.partners[b]?.includes(a)) ?? false;
}

/** The frames that count, as [rows, columns]; of two that differ by a quarter turn only one where tiles may be turned. */
export function framesOf(puzzle: TilePuzzle): [rows: number, columns: number][] {
  const { rows, columns, turn } = puzzle;
  const frames: [number, number][] = [[rows, columns]];
  if (!puzzle.frameUntold) return frames;
  const area = rows * columns;
  for (let r = 1; r <= area; r++) {
    const c = area / r;
    const told = (r === rows && c === columns) || (turn === "free" && r === columns && c === rows);
    if (Number.isInteger(c) && !told && (turn === "fixed" || r <= c)) frames.push([r, c]);
  }
  return frames;
}

/** The whole grid turned clockwise by `turn` quarter turns. */
export function turned(assembly: Assembly, turn: Turn): Assembly {
  let result = assembly;
  for (let i = 0; i < turn; i++) {
    const { rows, columns, cells } = result;
    const next = cells.map((_, at) => {
      const row = Math.floor(at / rows);
      const column = at % rows;
      const from = cells[(rows - 1 - column) * columns + row];
      if (!from) throw new RangeError("an assembly needs rows × columns cells");
      return { tile: from.tile, turn: turnOf(from.turn + 1) };
    });
    result = { rows: columns, columns: rows, cells: next };
  }
  return result;
}

/** The texts that a cell shows, clockwise from the top; undefined where there is no such cell or tile. */
function shown(puzzle: TilePuzzle, assembly: Assembly, cell: number): TileEdges | undefined {
  const placed = assembly.cells[cell];
  const edges = placed && puzzle.tiles[placed.tile];
  if (!edges) return undefined;
  const { turn } = placed;
  return [shownAt(edges, turn, 0), shownAt(edges, turn, 1), shownAt(edges, turn, 2), shownAt(edges, turn, 3)];
}

/** Whether an assembly uses every tile once, in a frame and in turns that count, with everything fitting. */
export function isAssembly(puzzle: TilePuzzle, assembly: Assembly): boolean {
  const { rows, columns, cells } = assembly;
  const asTold = rows === puzzle.rows && columns === puzzle.columns;
  const onItsSide = puzzle.turn === "free" && rows === puzzle.columns && columns === puzzle.rows;
  if (!asTold && !onItsSide && !puzzle.frameUntold) return false;
  if (!Number.isInteger(rows) || rows < 1 || !Number.isInteger(columns) || columns < 1) return false;
  if (rows * columns !== cells.length || cells.length !== puzzle.tiles.length) return false;
  if (new Set(cells.map((cell) => cell.tile)).size !== cells.length) return false;
  if (puzzle.turn === "fixed" && cells.some((cell) => cell.turn !== 0)) return false;

  const mayFaceOut = (text: number) => !puzzle.outer || puzzle.outer.includes(text);
  return cells.every((_, at) => {
    const here = shown(puzzle, assembly, at);
    if (!here) return false;
    const [north, east, south, west] = here;
    const column = at % columns;
    const below = shown(puzzle, assembly, at + columns);
    const beside = column + 1 < columns ? shown(puzzle, assembly, at + 1) : undefined;
    return (
      (below ? mayTouch(puzzle, south, below[0]) : mayFaceOut(south)) &&
      (beside ? mayTouch(puzzle, east, beside[3]) : mayFaceOut(east)) &&
      (at >= columns || mayFaceOut(north)) &&
      (column > 0 || mayFaceOut(west))
    );
  });
}

function keyAsItLies(puzzle: TilePuzzle, assembly: Assembly): string {
  const faces = assembly.cells.map((_, at) => shown(puzzle, assembly, at)?.join(","));
  return `${assembly.rows}x${assembly.columns}:${faces.join(";")}`;
}

function turnsOfGrid(puzzle: TilePuzzle): readonly Turn[] {
  return puzzle.turn === "free" ? [0, 1, 2, 3] : [0];
}

/** A text equal for two assemblies exactly when they look the same, up to turning the whole grid where tiles may be turned. */
export function lookOf(puzzle: TilePuzzle, assembly: Assembly): string {
  let least: string | undefined;
  for (const turn of turnsOfGrid(puzzle)) {
    const key = keyAsItLies(puzzle, turned(assembly, turn));
    if (least === undefined || key < least) least = key;
  }
  return least ?? "";
}

/** Whether two assemblies look the same: up to turning the whole grid and exchanging tiles that print alike. */
export function sameAssembly(puzzle: TilePuzzle, a: Assembly, b: Assembly): boolean {
  return lookOf(puzzle, a) === lookOf(puzzle, b);
}

/** For every cell of `b` whether it looks other than the same cell of `a`, both as they lie; all true in another frame. */
function differing(puzzle: TilePuzzle, a: Assembly, b: Assembly): boolean[] {
  const sameFrame = a.rows === b.rows && a.columns === b.columns;
  return b.cells.map((_, at) => !sameFrame || shown(puzzle, a, at)?.join() !== shown(puzzle, b, at)?.join());
}

/** The turn of the whole grid of `assembly` that leaves the fewest cells other than in `model`. */
function bestTurn(puzzle: TilePuzzle, model: Assembly, assembly: Assembly): Turn {
  let best: Turn = 0;
  let fewest = Number.POSITIVE_INFINITY;
  for (const turn of turnsOfGrid(puzzle)) {
    const count = differing(puzzle, model, turned(assembly, turn)).filter(Boolean).length;
    if (count < fewest) [best, fewest] = [turn, count];
  }
  return best;
}

/** `assembly` with its whole grid turned to look as much like `model` as it can. */
export function alignedTo(puzzle: TilePuzzle, model: Assembly, assembly: Assembly): Assembly {
  return turned(assembly, bestTurn(puzzle, model, assembly));
}

/**
 * For every cell of `second`, row by row as it lies, whether it looks other than in `intended`, whose whole grid is turned
 * so that the fewest cells do. All true where no turn gives both the same frame.
 */
export function differences(puzzle: TilePuzzle, intended: Assembly, second: Assembly): boolean[] {
  return differing(puzzle, turned(intended, turnOf(-bestTurn(puzzle, intended, second))), second);
}
