import { Recent } from "../../base/recent";
import { upTo } from "../../base/seed";
import type { Matching } from "../../match/look-alikes";
import { countCircles, type LoopProof, type LoopPuzzle, proveLoop } from "../../prove/loops/loops";
import { looksLike } from "../printed";
import type { LoopCard } from "./model";

/** Search nodes for one arrangement. */
const budget = 20_000;

/** The cards as the prover sees them: which may come next after which, and which print alike. */
export function puzzleOf(cards: readonly LoopCard[], relation: Matching): LoopPuzzle {
  const lists = new Map<string, readonly number[]>();
  const follows = cards.map(({ prompt }) => {
    const known = lists.get(prompt.key);
    if (known) return known;
    const next = upTo(cards.length).filter((i) => relation.fits(prompt.key, cards[i]?.answer.key ?? ""));
    lists.set(prompt.key, next);
    return next;
  });
  const looks = cards.map(({ answer, prompt }) => `${looksLike(answer)}\u0001${looksLike(prompt)}`);
  return { follows, look: looks.map((look) => looks.indexOf(look)) };
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
