import { Recent } from "../../base/recent";
import { atOnce, type Steps } from "../../base/steps";
import type { Matching } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";
import {
  type Difficulty,
  difficultyOf,
  proveTiles,
  type TileEdges,
  type TileProof,
  type TilePuzzle,
  TileSearch,
} from "../../prove/tiles";
import { looksLike } from "../printed";
import type { Frame } from "./frame";
import { type Edge, intended, type TileFace } from "./model";
import type { TilesOptions } from "./options";

/**
 * The tiles as the prover sees them: printed edges numbered, and which of them fit. Where the inside has blank edges, blank
 * lies against blank. A layout counts only when no word that has a partner is left facing out: the learners are told that each
 * word lies against its answer. Without inner blanks that follows in the frame that is told from the number of edges without
 * a partner.
 */
export function toPuzzle(
  frame: Frame,
  solved: readonly TileFace[],
  relation: Matching,
  options: TilesOptions,
): TilePuzzle {
  const numbers = new Map<string, number>();
  const samples: (Edge | undefined)[] = [];
  const numberOf = (edge: Edge | undefined): number => {
    const print = edge ? looksLike(edge) : "";
    const known = numbers.get(print);
    if (known !== undefined) return known;
    numbers.set(print, samples.length);
    return samples.push(edge) - 1;
  };
  const tiles = solved.map(([n, e, s, w]): TileEdges => [numberOf(n), numberOf(e), numberOf(s), numberOf(w)]);
  const byKey = new Map<MatchKey, number[]>();
  samples.forEach((edge, i) => {
    if (edge) byKey.set(edge.key, [...(byKey.get(edge.key) ?? []), i]);
  });
  const places = tiles.flat();
  // A word that is the same in both languages answers itself, but an edge never lies against itself.
  const alone = (i: number): boolean => places.indexOf(i) === places.lastIndexOf(i);
  const partnersBy = (matching: Pick<Matching, "partners">): number[][] =>
    samples.map((edge, i) => {
      if (!edge) return options.fill === "blank" ? [i] : [];
      const others = [...matching.partners(edge.key)].flatMap((key) => byKey.get(key) ?? []);
      return others.filter((other) => other !== i || !alone(i)).sort((a, b) => a - b);
    });
  const partners = partnersBy(relation);
  const untold = options.frame === "untold";
  // What has no partner may face out, and what is taken for it.
  const { overlooked } = relation;
  const real = overlooked ? partnersBy(overlooked.under) : partners;
  const lone = new Set(samples.flatMap((edge, i) => (edge && real[i]?.length === 0 ? [edge.key] : [])));
  const takenFor = (key: MatchKey): Iterable<MatchKey> => overlooked?.like(key) ?? [key];
  const outer = samples.flatMap((edge, i) =>
    !edge || [...takenFor(edge.key)].some((key) => lone.has(key)) ? [i] : [],
  );
  return {
    ...frame,
    tiles,
    partners,
    turn: options.turn,
    ...(untold || options.fill === "blank" ? { outer } : {}),
    ...(untold ? { frameUntold: true } : {}),
  };
}

/** What is known about an arrangement. */
export interface Verdict {
  readonly proof: TileProof;
  /** Only of arrangements with one solution: else no neighbour can be called wrong. */
  readonly difficulty?: Difficulty;
}

/** Search nodes at a stretch: of the hardest arrangements that were measured about four milliseconds. */
const stretch = 500;

/** Verdicts by puzzle: texts are numbers there, so that mending a word asks for no new search. */
const verdicts = new Recent<Verdict>(1000);

/** The proof of one arrangement, with `budget` search nodes to spend on it, and where it has one solution its difficulty. */
export const judge = atOnce(judging);

/** The same in steps, of so many search nodes at a time; says how many were spent. */
export function* judging(
  frame: Frame,
  solved: readonly TileFace[],
  relation: Matching,
  options: TilesOptions,
  budget: number,
): Steps<Verdict, number> {
  const puzzle = toPuzzle(frame, solved, relation, options);
  const key = `${budget} ${JSON.stringify(puzzle)}`;
  const known = verdicts.find(key);
  if (known) return verdicts.get(key, () => known);
  yield 0;
  const meant = intended(frame);
  const search = new TileSearch(puzzle, { intended: meant, budget });
  do yield search.proof.nodes;
  while (!search.advance(stretch));
  const { proof } = search;
  if (proof.status !== "one") return verdicts.get(key, () => ({ proof }));
  yield proof.nodes;
  const blank = blankIn(puzzle, solved);
  const difficulty = difficultyOf(puzzle, { intended: meant, ...(blank === undefined ? {} : { blank }) });
  return verdicts.get(key, () => ({ proof, difficulty }));
}

/** Ways to lay the tiles that are counted one by one. */
const mostWays = 100;

/** A proof that there are several ways, with their number up to a cap, as far as `budget` search nodes go. */
export function countWays(
  frame: Frame,
  { solved, proof }: { readonly solved: readonly TileFace[]; readonly proof: TileProof },
  relation: Matching,
  options: TilesOptions,
  budget: number,
): TileProof {
  const puzzle = toPuzzle(frame, solved, relation, options);
  const { count, capped, nodes } = proveTiles(puzzle, { intended: intended(frame), cap: mostWays, budget });
  return { ...proof, count: Math.max(count, proof.count), capped, nodes: proof.nodes + nodes };
}

/** The number of the empty edge. */
function blankIn({ tiles }: TilePuzzle, solved: readonly TileFace[]): number | undefined {
  for (const [cell, face] of solved.entries()) {
    const side = face.indexOf(undefined);
    if (side >= 0) return tiles[cell]?.[side];
  }
  return undefined;
}
