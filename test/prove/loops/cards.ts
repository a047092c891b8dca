import type { LoopPuzzle } from "../../../src/prove/loops/loops";
import { below, randomFrom } from "../instances";

/** Cards as they are printed: numbers stand for texts. */
export interface Cards {
  readonly prompts: readonly number[];
  readonly answers: readonly number[];
  /** For each prompt the answers that answer it. */
  readonly answered: readonly (readonly number[])[];
}

/** The puzzle that cards make. Cards with both texts the same print alike. */
export function puzzleOf({ prompts, answers, answered }: Cards): Required<LoopPuzzle> {
  const lists = answered.map((known) => answers.flatMap((answer, card) => (known.includes(answer) ? [card] : [])));
  const looks = new Map<string, number>();
  return {
    follows: prompts.map((prompt) => lists[prompt] ?? []),
    look: prompts.map((prompt, card) => {
      const key = `${prompt}/${answers[card]}`;
      if (!looks.has(key)) looks.set(key, looks.size);
      return looks.get(key) ?? -1;
    }),
  };
}

/** Every prompt has the answer of the same number, and no other. */
export function cardsByClass(prompts: readonly number[], answers: readonly number[]): Required<LoopPuzzle> {
  const answered = Array.from({ length: Math.max(...prompts, ...answers) + 1 }, (_, text) => [text]);
  return puzzleOf({ prompts, answers, answered });
}

/** The same with all cards told apart. */
export function plainByClass(prompts: readonly number[], answers: readonly number[]): LoopPuzzle {
  return { follows: cardsByClass(prompts, answers).follows };
}

/**
 * A few cards of any sort: made from a circle or not, texts that recur, cards that print alike, prompts with several answers
 * and answers to several prompts.
 */
export function anyCards(seed: number, most: number, overlap: number): Cards {
  const random = randomFrom(seed);
  const size = 1 + below(random, most);
  const texts = 1 + below(random, size + 1);
  const answered = Array.from({ length: texts }, (_, text) => [text]);
  const extra = Math.floor(overlap * random() * texts);
  for (let i = 0; i < extra; i++) answered[below(random, texts)]?.push(below(random, texts));
  const answers: number[] = [];
  while (answers.length < size) {
    // A stretch that was there before makes cards that print alike.
    if (answers.length > 1 && random() < 0.35) answers.push(...answers.slice(below(random, answers.length)));
    else answers.push(below(random, texts));
  }
  answers.length = size;
  const inCircle = random() < 0.85;
  const prompts = answers.map((_, i) => (inCircle ? (answers[(i + 1) % size] ?? 0) : below(random, texts)));
  return { prompts, answers, answered };
}

/**
 * A loop by classes in the order of its circle, with stretches that recur, so that often there is only one circle that looks
 * different; now and then cards that match alike print differently.
 */
export function longByClass(seed: number): Required<LoopPuzzle> {
  const random = randomFrom(seed);
  const texts = 1 + below(random, 6);
  const stretch = () => Array.from({ length: 1 + below(random, 5) }, () => below(random, texts));
  const often = stretch();
  const answers = [often, often, ...(random() < 0.7 ? [often] : []), ...(random() < 0.7 ? [stretch()] : [])].flat();
  const puzzle = cardsByClass([...answers.slice(1), ...answers.slice(0, 1)], answers);
  const odd = random() < 0.4 ? below(random, answers.length) : -1;
  return { ...puzzle, look: puzzle.look.map((look, card) => (card === odd ? answers.length : look)) };
}
