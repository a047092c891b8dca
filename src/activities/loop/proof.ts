import { Recent } from "../../base/recent";
import { upTo } from "../../base/seed";
import type { Matching } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";
import { countCircles, type LoopProof, type LoopPuzzle, proveLoop } from "../../prove/loops/loops";
import { looksLike } from "../printed";
import type { LoopCard } from "./model";

/** Search nodes for one arrangement. */
const budget = 20_000;

/** The cards as the prover sees them: which may come next after which, and which print alike. */
export function puzzleOf(cards: readonly LoopCard[], relation: Matching): LoopPuzzle {
  const places = new Map<MatchKey, number[]>();
  cards.forEach(({ answer: { key } }, i) => {
    const known = places.get(key);
    if (known) known.push(i);
    else places.set(key, [i]);
  });
  const lists = new Map<MatchKey, readonly number[]>();
  const follows = cards.map(({ prompt: { key } }) => {
    const known = lists.get(key);
    if (known) return known;
    const next: number[] = [];
    for (const answer of relation.partners(key)) next.push(...(places.get(answer) ?? []));
    next.sort((a, b) => a - b);
    lists.set(key, next);
    return next;
  });
  const looks = cards.map(({ answer, prompt }) => `${looksLike(answer)}\u0001${looksLike(prompt)}`);
  const first = new Map<string, number>();
  for (const [i, look] of looks.entries()) if (!first.has(look)) first.set(look, i);
  return { follows, look: looks.map((look) => first.get(look) ?? 0) };
}

/** Proofs by puzzle: texts are numbers there, so that mending a word asks for no new proof. */
const proofs = new Recent<LoopProof>(1000);

/** Whether cards make one full circle only, and whether a smaller one can close. */
export function proveCards(cards: readonly LoopCard[], relation: Matching): LoopProof {
  const puzzle = puzzleOf(cards, relation);
  return proofs.get(JSON.stringify(puzzle), () => {
    const proof = proveLoop(puzzle, { intended: upTo(cards.length), budget });
    if (proof.full.status !== "several") return proof;
    // Where answers are classes, the number is known without counting one by one.
    const count = countCircles(puzzle);
    if (count === undefined || count > BigInt(Number.MAX_SAFE_INTEGER)) return proof;
    return { ...proof, full: { ...proof.full, count: Number(count), capped: false } };
  });
}
