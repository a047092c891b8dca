import type { Assembly, TilePuzzle } from "../../src/prove/tiles";

/*
 * Wrong neighbours and how far wrong starts survive, the plain way: every two edges are looked at, and tiles are laid on a
 * map of places. Written apart from the measure, after its description, with nothing of it but the types of its input.
 */

type Face = readonly number[];

interface Lying {
  readonly x: number;
  readonly y: number;
  readonly tile: number;
  readonly face: Face;
}

const steps = [
  [0, -1],
  [1, 0],
  [0, 1],
  [-1, 0],
] as const;

/** A face turned so that its edge `from` lies at the side `to`. */
function turnedTo(face: Face, from: number, to: number): Face {
  return [0, 1, 2, 3].map((side) => face[(side - to + from + 8) % 4] ?? -1);
}

export function difficultyNaively(
  puzzle: TilePuzzle,
  intended: Assembly,
  blank: number | undefined,
): { wrongNeighbours: number; survives: number; detour: number } {
  const { turn, partners } = puzzle;
  const onTiles = new Set(puzzle.tiles.flat());
  const matches = (a: number, b: number): boolean => (partners[a] ?? []).includes(b) || (partners[b] ?? []).includes(a);
  const lone = (text: number): boolean => ![...onTiles].some((other) => matches(text, other));
  // A text that fits nothing is told from no other such text.
  const faces: readonly Face[] = puzzle.tiles.map((tile) => tile.map((text) => (lone(text) ? -1 : text)));
  const texts = [...new Set(faces.flat())];

  const shapes: [number, number][] = [];
  for (let rows = 1; rows <= faces.length; rows++) {
    const columns = faces.length / rows;
    if (!Number.isInteger(columns)) continue;
    const told =
      (rows === puzzle.rows && columns === puzzle.columns) ||
      (turn === "free" && rows === puzzle.columns && columns === puzzle.rows);
    if (told || puzzle.frameUntold) shapes.push([rows, columns]);
  }
  const sidesAlone = faces.flat().filter((text) => text === -1).length;
  const rimIsFull = shapes.every(([rows, columns]) => 2 * (rows + columns) === sidesAlone);
  const mustFaceIn = (text: number): boolean =>
    text !== -1 && (rimIsFull || (puzzle.outer !== undefined && !puzzle.outer.includes(text)));

  /** How two tiles look that lie against each other with these edges. */
  const lookOf = (a: Face, edgeA: number, b: Face, edgeB: number): string => {
    if (turn === "fixed") return [`${a} ${edgeA}`, `${b} ${edgeB}`].sort().join(" | ");
    const left = `${turnedTo(a, edgeA, 1)} | ${turnedTo(b, edgeB, 3)}`;
    const right = `${turnedTo(b, edgeB, 1)} | ${turnedTo(a, edgeA, 3)}`;
    return left < right ? left : right;
  };
  const right = new Set<string>();
  intended.cells.forEach((here, cell) => {
    const column = cell % intended.columns;
    for (const [side, other] of [
      [1, column + 1 < intended.columns ? cell + 1 : -1],
      [2, cell + intended.columns],
    ] as const) {
      const there = intended.cells[other];
      if (!there) continue;
      const edges = [(side - here.turn + 4) % 4, ((side + 2) % 4) - there.turn] as const;
      right.add(lookOf(faces[here.tile] ?? [], edges[0], faces[there.tile] ?? [], (edges[1] + 4) % 4));
    }
  });

  const hasRoom = (laid: readonly Lying[]): boolean => {
    const xs = laid.map(({ x }) => x);
    const ys = laid.map(({ y }) => y);
    const box = { north: Math.min(...ys), east: Math.max(...xs), south: Math.max(...ys), west: Math.min(...xs) };
    const closed = [false, false, false, false];
    for (const { x, y, face } of laid) {
      const rims = [box.north, box.east, box.south, box.west];
      for (let side = 0; side < 4; side++) {
        if (face[side] !== -1) continue;
        if ((side % 2 === 0 ? y : x) !== rims[side]) return false;
        closed[side] = true;
      }
    }
    const [high, wide] = [box.south - box.north + 1, box.east - box.west + 1];
    return shapes.some(
      ([rows, columns]) =>
        (closed[0] && closed[2] ? high === rows : high <= rows) &&
        (closed[1] && closed[3] ? wide === columns : wide <= columns),
    );
  };

  /** All looks of tiles that could be laid at a place. */
  const whatFits = (laid: readonly Lying[], x: number, y: number): Lying[] => {
    const found = new Map<string, Lying>();
    faces.forEach((own, tile) => {
      if (laid.some((each) => each.tile === tile)) return;
      for (let to = 0; to < (turn === "free" ? 4 : 1); to++) {
        const face = turnedTo(own, 0, to);
        const touching = laid.every((each) => {
          const side = steps.findIndex(([dx, dy]) => each.x === x + dx && each.y === y + dy);
          return side < 0 || matches(face[side] ?? -1, each.face[(side + 2) % 4] ?? -1);
        });
        const next = { x, y, tile, face };
        if (touching && hasRoom([...laid, next]) && !found.has(String(face))) found.set(String(face), next);
      }
    });
    return [...found.values()];
  };

  const survival = (laid: readonly Lying[]): number => {
    const must = new Map<string, Lying[]>();
    const may = new Map<string, Lying[]>();
    for (const { x, y, face } of laid) {
      steps.forEach(([dx, dy], side) => {
        const text = face[side] ?? -1;
        const [px, py] = [x + dx, y + dy];
        if (text === -1 || laid.some((each) => each.x === px && each.y === py)) return;
        const places = mustFaceIn(text) ? must : may;
        if (!places.has(`${px} ${py}`)) places.set(`${px} ${py}`, whatFits(laid, px, py));
      });
    }
    const forced = [...must.values()];
    const fewest = Math.min(...forced.map((choices) => choices.length));
    const choices = forced.length > 0 ? forced.find(({ length }) => length === fewest) : [...may.values()].flat();
    return Math.max(0, ...(choices ?? []).map((choice) => 1 + survival([...laid, choice])));
  };

  const known = new Map<string, number>();
  const firstLike = (tile: number): number =>
    faces.findIndex((face) =>
      (turn === "free" ? [0, 1, 2, 3] : [0]).some((to) => String(turnedTo(face, 0, to)) === String(faces[tile])),
    );
  let [wrongNeighbours, survives, detour] = [0, 0, 0];
  for (let a = 0; a < faces.length; a++) {
    for (let b = a + 1; b < faces.length; b++) {
      for (let edge = 0; edge < 16; edge++) {
        const [edgeA, edgeB] = [edge >> 2, edge & 3];
        const [faceA = [], faceB = []] = [faces[a], faces[b]];
        const [textA, textB] = [faceA[edgeA] ?? -1, faceB[edgeB] ?? -1];
        if (!texts.includes(textA) || !matches(textA, textB) || textA === blank || textB === blank) continue;
        if (turn === "fixed" && edgeB !== (edgeA + 2) % 4) continue;
        const look = lookOf(faceA, edgeA, faceB, edgeB);
        if (right.has(look)) continue;
        wrongNeighbours++;
        // The tile whose like comes first in the list lies first.
        const swap = firstLike(b) < firstLike(a);
        const [p, pEdge, q, qEdge] = swap ? [b, edgeB, a, edgeA] : [a, edgeA, b, edgeB];
        const side = turn === "free" ? 1 : pEdge;
        const [dx, dy] = steps[side] ?? [0, 0];
        const start: Lying[] = [
          { x: 0, y: 0, tile: p, face: turn === "free" ? turnedTo(faces[p] ?? [], pEdge, 1) : (faces[p] ?? []) },
          { x: dx, y: dy, tile: q, face: turn === "free" ? turnedTo(faces[q] ?? [], qEdge, 3) : (faces[q] ?? []) },
        ];
        const lasts = known.get(look) ?? (hasRoom(start) ? survival(start) : 0);
        known.set(look, lasts);
        survives = Math.max(survives, lasts);
        detour += 1 + lasts;
      }
    }
  }
  return { wrongNeighbours, survives, detour };
}
