import type { Relation } from "../../match/relation";
import { proveTiles, type TileEdges, type TileProof, type TilePuzzle } from "../../prove/tiles";
import type { Frame } from "./frame";
import { type Edge, intended, type TileFace } from "./model";
import type { TilesOptions } from "./options";

/** Search nodes for one arrangement; see the bench for what that covers. */
const budget = 20_000;

/** The tiles as the prover sees them: printed edges numbered, and which of them fit. Blank edges fit each other only where the inside has blanks. */
export function toPuzzle(
  frame: Frame,
  solved: readonly TileFace[],
  relation: Relation,
  options: TilesOptions,
): TilePuzzle {
  const numbers = new Map<string, number>();
  const samples: (Edge | undefined)[] = [];
  const numberOf = (edge: Edge | undefined): number => {
    const print = edge ? `${edge.picture?.path ?? ""}\u0000${edge.text}` : "";
    const known = numbers.get(print);
    if (known !== undefined) return known;
    numbers.set(print, samples.length);
    return samples.push(edge) - 1;
  };
  const tiles = solved.map(([n, e, s, w]): TileEdges => [numberOf(n), numberOf(e), numberOf(s), numberOf(w)]);
  const partners = samples.map((edge) =>
    samples.flatMap((other, i) => {
      const fits = edge && other ? relation.fits(edge.key, other.key) : !edge && !other && options.fill === "blank";
      return fits ? [i] : [];
    }),
  );
  return { ...frame, tiles, partners, turn: options.turn };
}

export function proveDeal(
  frame: Frame,
  solved: readonly TileFace[],
  relation: Relation,
  options: TilesOptions,
): TileProof {
  return proveTiles(toPuzzle(frame, solved, relation, options), { intended: intended(frame), budget });
}
