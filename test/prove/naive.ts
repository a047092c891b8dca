import type { TilePuzzle } from "../../src/prove/tiles";

/*
 * Counts visible assemblies the plain way: lay every tile in every turn cell by cell, look at what is laid, and tell
 * pictures apart as texts. Written apart from the prover, with nothing of it but the type of a puzzle.
 */

type Face = readonly number[];
type Picture = readonly (readonly Face[])[];

const turnedFace = ([n = 0, e = 0, s = 0, w = 0]: Face): Face => [w, n, e, s];

function turnedPicture(picture: Picture): Picture {
  const width = picture[0]?.length ?? 0;
  return Array.from({ length: width }, (_, column) =>
    [...picture].reverse().map((row) => turnedFace(row[column] ?? [])),
  );
}

/** The look that stands for a picture and, where the grid may be turned, its turned likenesses. */
export function standIn(picture: Picture, free: boolean): string {
  const likenesses = [picture];
  while (free && likenesses.length < 4) likenesses.push(turnedPicture(likenesses.at(-1) ?? []));
  return likenesses.map((likeness) => JSON.stringify(likeness)).sort()[0] ?? "";
}

function fits(puzzle: TilePuzzle, a: number | undefined, b: number | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  return (puzzle.partners[a] ?? []).includes(b) || (puzzle.partners[b] ?? []).includes(a);
}

function inFrame(puzzle: TilePuzzle, rows: number, columns: number, looks: Set<string>): void {
  const free = puzzle.turn === "free";
  const laid: Face[] = [];
  const used = new Set<number>();
  const next = () => {
    const cell = laid.length;
    if (cell === rows * columns) {
      looks.add(
        standIn(
          Array.from({ length: rows }, (_, r) => laid.slice(r * columns, (r + 1) * columns)),
          free,
        ),
      );
      return;
    }
    const row = Math.floor(cell / columns);
    const column = cell % columns;
    const outside = [row === 0, column === columns - 1, row === rows - 1, column === 0];
    puzzle.tiles.forEach((edges, tile) => {
      if (used.has(tile)) return;
      let face: Face = edges;
      for (let turn = 0; turn < (free ? 4 : 1); turn++, face = turnedFace(face)) {
        if (row > 0 && !fits(puzzle, laid[cell - columns]?.[2], face[0])) continue;
        if (column > 0 && !fits(puzzle, laid[cell - 1]?.[1], face[3])) continue;
        if (puzzle.outer && face.some((text, side) => outside[side] && !puzzle.outer?.includes(text))) continue;
        used.add(tile);
        laid.push(face);
        next();
        laid.pop();
        used.delete(tile);
      }
    });
  };
  next();
}

/** The number of visible assemblies of a small puzzle. */
export function countNaively(puzzle: TilePuzzle): number {
  const looks = new Set<string>();
  const area = puzzle.tiles.length;
  for (let rows = 1; rows <= area; rows++) {
    const columns = area / rows;
    if (!Number.isInteger(columns)) continue;
    if ((rows === puzzle.rows && columns === puzzle.columns) || puzzle.frameUntold)
      inFrame(puzzle, rows, columns, looks);
  }
  return looks.size;
}
