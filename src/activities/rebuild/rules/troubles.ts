import type { Fix } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { fold } from "../../../match/fold";
import { buildable } from "../../../prove/orders/orders";
import type { Pair } from "../../../unit/unit";
import { withoutItem } from "../../without-item";
import { dealRebuild } from "../deal";
import { type DealtRebuild, packetOf, type RebuildDeal } from "../model";
import { asWords } from "../proof";

/** A sentence that can be laid with the cards of another one of its set, by their indices, and how many of these are left over. */
export interface Couple {
  readonly sentence: number;
  readonly from: number;
  readonly leftOver: number;
}

/** Each couple of sentences of which one can be laid with the other's cards, once. */
export function sameCardCouples(dealt: DealtRebuild): Couple[] {
  if (dealt.deals.length === 0) return [];
  const known = new Set<string>();
  return buildable(dealt.sentences.map(asWords)).filter(({ sentence, from, leftOver }) => {
    const couple = [sentence, from].sort((a, b) => a - b).join(" ");
    if (known.has(couple) || !concerns(dealt, { sentence, from, leftOver })) return false;
    known.add(couple);
    return true;
  });
}

/**
 * Only sentences that one set has; some of another's cards matter only in one packet, and a sentence that stands twice is the
 * matter of `duplicate-answer`.
 */
function concerns({ sentences, packets, deals }: DealtRebuild, { sentence, from, leftOver }: Couple): boolean {
  const text = (index: number): string => fold(sentences[index]?.pair.left.answers[0].text ?? "");
  if (text(sentence) === text(from)) return false;
  if (!deals.some((deal) => deal.sentences.includes(sentence) && deal.sentences.includes(from))) return false;
  return leftOver === 0 || packetOf(packets, sentence) === packetOf(packets, from);
}

/** Sentences of which no order is wrong, by their index, each with the first deal in which it is so. */
export function freeSentences({ deals }: DealtRebuild): ReadonlyMap<number, RebuildDeal> {
  const found = new Map<number, RebuildDeal>();
  for (const deal of deals) for (const index of deal.inOrder) if (!found.has(index)) found.set(index, deal);
  return found;
}

/** In steps: the fix that takes a sentence out, where something is left to deal then and nothing more is wrong with that. */
export function* sparing(dealt: DealtRebuild, pair: Pair, fix: Fix | undefined): Steps<Fix[]> {
  yield "trying a fix";
  const after = dealRebuild(withoutItem(dealt.request, pair));
  const upset = after.sameLevels !== undefined && dealt.sameLevels === undefined;
  const count = (one: DealtRebuild): number => sameCardCouples(one).length + freeSentences(one).size;
  return fix && after.deals.length > 0 && !upset && count(after) < count(dealt) ? [fix] : [];
}
