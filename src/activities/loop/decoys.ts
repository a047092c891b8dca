import { Random } from "../../base/seed";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { looksLike, type Printed, standsOut, toPrinted } from "../printed";
import { pairsOf } from "../supply";
import type { LoopCard } from "./model";

/**
 * Cards that belong nowhere in a circle: what stands above the line answers no card, and nothing answers what stands under it. Their
 * words are those of pairs that the circle does not use, two pairs for each card: first those of as many words as the circle's,
 * since others say by their length alone that they belong nowhere, and of these first those of the activity's own sections, then
 * of the rest of the unit. As many as can be had, up to `count`.
 */
export function chooseDecoys(
  circle: readonly LoopCard[],
  count: number,
  { sections, relation, teaches, explains }: DealRequest,
  stream: string,
): LoopCard[] {
  const used = new Set(circle.flatMap(({ asks }) => asks));
  const own = sections.flatMap(pairsOf);
  const random = new Random(stream);
  const pool = [own, relation.pairs.filter((pair) => !own.includes(pair))].flatMap((pairs) =>
    random.shuffle(pairs.filter((pair) => !used.has(pair))),
  );
  const answering = byLength(
    pool,
    "right",
    circle.map(({ answer }) => answer),
  );
  const asking = byLength(
    pool,
    "left",
    circle.map(({ prompt }) => prompt),
  );
  const looks = new Set(circle.flatMap(({ answer, prompt }) => [looksLike(answer), looksLike(prompt)]));
  const spent = new Set<Pair>();
  const cards: LoopCard[] = [];
  const free = (word: Printed): boolean => !looks.has(looksLike(word));
  const all = (): readonly LoopCard[] => [...circle, ...cards];
  for (const answers of answering) {
    if (cards.length === count) break;
    const answer = toPrinted(answers.right.answers[0], explains);
    const lonely = all().every(({ prompt }) => !relation.fits(prompt.key, answer.key));
    if (spent.has(answers) || !free(answer) || !lonely) continue;
    const asks = asking.find((pair) => {
      const prompt = toPrinted(pair.left.answers[0], teaches);
      if (pair === answers || spent.has(pair) || !free(prompt) || looksLike(prompt) === looksLike(answer)) return false;
      return [answer, ...all().map((card) => card.answer)].every(({ key }) => !relation.fits(prompt.key, key));
    });
    if (!asks) continue;
    const prompt = toPrinted(asks.left.answers[0], teaches);
    cards.push({ answer, prompt, answers, asks });
    for (const pair of [answers, asks]) spent.add(pair);
    for (const word of [answer, prompt]) looks.add(looksLike(word));
  }
  return cards;
}

/** Pairs in their order, but first those whose text on a side has as many words as some text among others, then by what lacks or exceeds. */
function byLength(pairs: readonly Pair[], side: "left" | "right", others: readonly Printed[]): Pair[] {
  const off = (pair: Pair): number => standsOut(pair[side].answers[0], others);
  return [...pairs].sort((a, b) => off(a) - off(b));
}
