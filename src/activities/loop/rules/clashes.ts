import type { Range } from "../../../base/range";
import { answerKey, type Relation } from "../../../match/relation";
import type { Answer, Pair } from "../../../unit/unit";
import type { DealtLoop, LoopDeal } from "../model";
import { puzzleOf } from "../proof";

/** A card that may come next although another one is meant to. Places in the circle. */
export interface Clash {
  readonly deal: LoopDeal;
  readonly card: number;
  readonly next: number;
  /** The pair whose left side asks, and the one whose right side answers it besides its own. */
  readonly asks: Pair;
  readonly answers: Pair;
}

/** All cards of a deal that may follow where they are not meant to. */
export function clashesOf(deal: LoopDeal, relation: Relation): Clash[] {
  const count = deal.cards.length;
  return puzzleOf(deal.cards, relation).follows.flatMap((list, card) =>
    list.flatMap((next): Clash[] => {
      const [asks, answers] = [deal.cards[card]?.asks, deal.cards[next]?.answers];
      return next === (card + 1) % count || !asks || !answers ? [] : [{ deal, card, next, asks, answers }];
    }),
  );
}

/** How many cards of all deals may follow where they are not meant to. */
export function clashCount({ deals, request }: DealtLoop): number {
  return deals.reduce((sum, deal) => sum + clashesOf(deal, request.relation).length, 0);
}

/** The circle that a clash closes: from the card that comes too early round to the one before it. */
export function closedBy({ deal, card, next }: Clash): number[] {
  const count = deal.cards.length;
  const length = ((card - next + count) % count) + 1;
  return Array.from({ length }, (_, i) => (next + i) % count);
}

export function laterOf({ asks, answers }: Pick<Clash, "asks" | "answers">): Pair {
  return asks.range.start > answers.range.start ? asks : answers;
}

/** An answer that makes two cards fit, where it stands, and the pair and side that have it. */
interface Standing {
  readonly pair: Pair;
  readonly side: "left" | "right";
  readonly index: number;
  readonly answer: Answer;
}

/** What to point at: an alternative that only makes trouble, else what the later pair shares with the earlier, else the whole pair. */
export function causeOf(
  clash: Clash,
  relation: Relation,
): { readonly range: Range; readonly alternative?: Standing; readonly others: readonly Pair[] } {
  const { asks, answers } = clash;
  const [prompt, answer] = [answerKey(asks.left.answers[0]), answerKey(answers.right.answers[0])];
  const find = (pair: Pair, side: Standing["side"], key: string): Standing | undefined => {
    const index = pair[side].answers.findIndex((each) => answerKey(each) === key);
    const found = pair[side].answers[index];
    return found ? { pair, side, index, answer: found } : undefined;
  };
  const shared = [find(asks, "right", answer), find(answers, "left", prompt)];
  const alternative = shared.find((standing) => standing && standing.index > 0);
  const others = relation.because(prompt, answer).filter((pair) => pair !== asks && pair !== answers);
  if (alternative) return { range: alternative.answer.range, alternative, others };
  const later = laterOf(clash);
  const same = shared.find((standing) => standing !== undefined);
  if (!same) return { range: later.range, others };
  return { range: later[same.side].answers[0].range, others };
}
