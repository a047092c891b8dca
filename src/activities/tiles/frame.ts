/** Rows and columns of the finished layout. */
export interface Frame {
  readonly rows: number;
  readonly columns: number;
}

/** One side of one cell: cells row by row from 0; sides clockwise from the top, 0 north to 3 west. */
export interface Spot {
  readonly cell: number;
  readonly side: 0 | 1 | 2 | 3;
}

/** Inner edges of an R × C frame: R(C − 1) + C(R − 1). */
export function innerCount({ rows, columns }: Frame): number {
  return rows * (columns - 1) + columns * (rows - 1);
}

/** Outer edges: 2(R + C). */
export function outerCount({ rows, columns }: Frame): number {
  return 2 * (rows + columns);
}

/** Whether two layouts have the same rows and columns, as they lie or, where tiles may be turned, after a quarter turn. */
export function isFrameOf(a: Frame, b: Frame, turn: "free" | "fixed"): boolean {
  const asItLies = a.rows === b.rows && a.columns === b.columns;
  return asItLies || (turn === "free" && a.rows === b.columns && a.columns === b.rows);
}

/** The two spots that meet at each inner edge: first those between neighbours in a row, then those between rows. */
export function innerEdges({ rows, columns }: Frame): (readonly [Spot, Spot])[] {
  const edges: (readonly [Spot, Spot])[] = [];
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c + 1 < columns; c++) {
      const cell = r * columns + c;
      edges.push([
        { cell, side: 1 },
        { cell: cell + 1, side: 3 },
      ]);
    }
  }
  for (let r = 0; r + 1 < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const cell = r * columns + c;
      edges.push([
        { cell, side: 2 },
        { cell: cell + columns, side: 0 },
      ]);
    }
  }
  return edges;
}

/** The spots that face out, clockwise from the top left. */
export function outerEdges({ rows, columns }: Frame): Spot[] {
  const spots: Spot[] = [];
  for (let c = 0; c < columns; c++) spots.push({ cell: c, side: 0 });
  for (let r = 0; r < rows; r++) spots.push({ cell: r * columns + columns - 1, side: 1 });
  for (let c = columns - 1; c >= 0; c--) spots.push({ cell: (rows - 1) * columns + c, side: 2 });
  for (let r = rows - 1; r >= 0; r--) spots.push({ cell: r * columns, side: 3 });
  return spots;
}

/**
 * The frame with the most inner edges that `pairs` pairs fill, from 2 × 2 to 12 × 12 and at most twice as wide as high; of
 * equals the one nearest to a square. Undefined for fewer than 4 pairs.
 */
export function largestFrame(pairs: number): Frame | undefined {
  let best: Frame | undefined;
  for (let rows = 2; rows <= 12; rows++) {
    for (let columns = rows; columns <= Math.min(12, 2 * rows); columns++) {
      const frame = { rows, columns };
      const inner = innerCount(frame);
      if (inner > pairs) continue;
      const gain = best ? inner - innerCount(best) : 1;
      if (gain > 0 || (gain === 0 && best && columns - rows < best.columns - best.rows)) best = frame;
    }
  }
  return best;
}
