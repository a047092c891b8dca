import { Recent } from "../../base/recent";
import type { Matching } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";
import {
  type Difficulty,
  difficultyOf,
  proveTiles,
  type TileEdges,
  type TileProof,
  type TilePuzzle,
} from "../../prove/tiles";
import { looksLike } from "../printed";
import type { Frame } from "./frame";
import { type Edge, intended, type TileFace } from "./model";
import type { TilesOptions } from "./options";

/**
 * The tiles as the prover sees them: printed edges numbered, and which of them fit. Where the inside has blank edges, blank
 * lies against blank, and a layout counts only when no word that has a partner is left facing out: the learners are told
 * that each word lies against its answer. Without inner blanks that follows from the number of edges without a partner.
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
  const partners = samples.map((edge, i) => {
    if (!edge) return options.fill === "blank" ? [i] : [];
    return [...relation.partners(edge.key)].flatMap((key) => byKey.get(key) ?? []).sort((a, b) => a - b);
  });
  const inner = options.fill === "blank";
  const outer = samples.flatMap((edge, i) => (!edge || partners[i]?.length === 0 ? [i] : []));
  return { ...frame, tiles, partners, turn: options.turn, ...(inner ? { outer } : {}) };
}

/** What is known about an arrangement. */
export interface Verdict {
  readonly proof: TileProof;
  /** Only of arrangements with one solution: else no neighbour can be called wrong. */
  readonly difficulty?: Difficulty;
}

/** Verdicts by puzzle: texts are numbers there, so that mending a word asks for no new search. */
const verdicts = new Recent<Verdict>(1000);

/** The proof of one arrangement, with `budget` search nodes to spend on it, and where it has one solution its difficulty. */
export function judge(
  frame: Frame,
  solved: readonly TileFace[],
  relation: Matching,
  options: TilesOptions,
  budget: number,
): Verdict {
  const puzzle = toPuzzle(frame, solved, relation, options);
  return verdicts.get(`${budget} ${JSON.stringify(puzzle)}`, () => {
    const meant = intended(frame);
    const proof = proveTiles(puzzle, { intended: meant, budget });
    if (proof.status !== "one") return { proof };
    const blank = blankIn(puzzle, solved);
    return { proof, difficulty: difficultyOf(puzzle, { intended: meant, ...(blank === undefined ? {} : { blank }) }) };
  });
}

/** The number of the empty edge. */
function blankIn({ tiles }: TilePuzzle, solved: readonly TileFace[]): number | undefined {
  for (const [cell, face] of solved.entries()) {
    const side = face.indexOf(undefined);
    if (side >= 0) return tiles[cell]?.[side];
  }
  return undefined;
}
