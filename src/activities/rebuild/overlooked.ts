import { pieceMark } from "../../base/mark";
import type { Range } from "../../base/range";
import { fold } from "../../match/fold";
import { type LookAlikes, lookAlikes, type Matching, type Worded } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";
import { buildable, type Sentence as Puzzle, rowOf } from "../../prove/orders/orders";
import { partKey } from "../../unit/items";
import { type DealtRebuild, packetOf, type RebuildDeal, type SentenceCard } from "./model";

type Like = (key: MatchKey) => ReadonlySet<MatchKey>;

/** Words of a deal's cards, but for those that its sentences set against one another on purpose. */
export function partTexts({ request }: DealtRebuild, deal: RebuildDeal): Worded[] {
  const texts = deal.dealt.flatMap(({ text, picture }): Worded[] =>
    picture ? [] : [{ key: fold(text), text, lang: request.teaches }],
  );
  const standing = sentencesByWord(deal);
  const taught = new Set(
    lookAlikes(texts).flatMap(({ keys }) => (isTaught(keys, standing, deal.sentences.length) ? keys : [])),
  );
  return texts.filter(({ key }) => !taught.has(key));
}

/** The sentences in which each word of the cards stands. */
function sentencesByWord({ sentences, cards }: RebuildDeal): ReadonlyMap<MatchKey, readonly number[]> {
  const found = new Map<MatchKey, number[]>();
  for (const sentence of sentences)
    for (const key of new Set(cards[sentence]?.map(({ text }) => fold(text)))) {
      const known = found.get(key);
      if (known) known.push(sentence);
      else found.set(key, [sentence]);
    }
  return found;
}

/** Whether two of some words stand side by side in at least two sentences and in half of them: that is the lesson. */
function isTaught(keys: LookAlikes["keys"], standing: ReturnType<typeof sentencesByWord>, sentences: number): boolean {
  const seen = new Set<number>();
  const both = new Set<number>();
  for (const sentence of keys.flatMap((key) => standing.get(key) ?? [])) {
    if (seen.has(sentence)) both.add(sentence);
    seen.add(sentence);
  }
  return both.size > 1 && both.size * 2 >= sentences;
}

/** The different ones of some words that a sentence's cards show. */
function meeting(cards: readonly SentenceCard[], keys: readonly MatchKey[]): MatchKey[] {
  return [...new Set(cards.map(({ text }) => fold(text)))].filter((key) => keys.includes(key));
}

/** Where words stand together in a sentence; where they never do, wherever they stand. */
export function partPlaces(_: DealtRebuild, deal: RebuildDeal, keys: readonly MatchKey[]): Range[] {
  const placesIn = (sentences: readonly number[]): Range[] =>
    sentences.flatMap((sentence) =>
      (deal.cards[sentence] ?? []).flatMap(({ text, source }) => (keys.includes(fold(text)) ? [source] : [])),
    );
  const together = deal.sentences.filter((sentence) => meeting(deal.cards[sentence] ?? [], keys).length > 1);
  return placesIn(together.length > 0 ? together : deal.sentences);
}

/** Codes of the cards with which, under this matching, a sentence can be laid in another order, or another one of the set. */
export function confusedParts(dealt: DealtRebuild, deal: RebuildDeal, { overlooked }: Matching): string[] {
  if (!overlooked) return [];
  const like: Like = (key) => overlooked.like(key);
  const mixed = new Set([
    ...deal.sentences.flatMap((sentence) => exchanged(dealt, deal, sentence, like)),
    ...borrowed(dealt, deal, like),
  ]);
  return deal.dealt.flatMap((card, piece) =>
    mixed.has(card) ? [pieceMark(deal.code, undefined, piece).split("-")[1] ?? ""] : [],
  );
}

/**
 * Cards of a sentence that look alike and of which the exchange makes an order that is not accepted. What only begins or ends the
 * sentence makes no difference: with “A” and “a” exchanged it says the same.
 */
function exchanged({ sentences }: DealtRebuild, { cards }: RebuildDeal, index: number, like: Like): SentenceCard[] {
  const own = cards[index] ?? [];
  const orders = sentences[index]?.orders ?? [];
  const said = spoken(own);
  const accepted = new Set(orders.map((order) => rowOf(said, order)));
  return own.flatMap((one, i) =>
    own.slice(i + 1).flatMap((other): SentenceCard[] => {
      const [a, b] = [fold(one.text), fold(other.text)];
      if (a === b || !like(a).has(b)) return [];
      const swap = (part: number): number => (part === one.part ? other.part : part === other.part ? one.part : part);
      return orders.some((order) => !accepted.has(rowOf(said, order.map(swap)))) ? [one, other] : [];
    }),
  );
}

/** What cards say: without marks at their edges, the first one without its capital. */
function spoken(cards: readonly SentenceCard[]): string[] {
  return cards.map(({ text, part }) =>
    part === 0 ? partKey(text) || text : text.normalize("NFC").replace(/^[\p{P}\s]+|[\p{P}\s]+$/gu, "") || text,
  );
}

/**
 * Cards of a sentence with which another one can be laid in an order that is none of its own: with all of them, or in one packet
 * with some. Where that goes without overlooking anything, it is told as such.
 */
function borrowed({ sentences, packets }: DealtRebuild, deal: RebuildDeal, like: Like): SentenceCard[] {
  const own = deal.sentences.map((index) => ({ index, cards: deal.cards[index] ?? [] }));
  const numbers = classesIn(
    own.flatMap(({ cards }) => cards.map(({ text }) => fold(text))),
    like,
  );
  const puzzleBy = (name: (card: SentenceCard) => string): Puzzle[] =>
    own.map(({ index, cards }) => ({ parts: cards.map(name), accepted: sentences[index]?.orders ?? [] }));
  const plain = buildable(puzzleBy(({ text }) => partKey(text) || text));
  const alike = puzzleBy(({ text }) => numbers.get(fold(text)) ?? text);
  return buildable(alike).flatMap(({ sentence, from, leftOver }): SentenceCard[] => {
    const [here, there] = [own[sentence], own[from]];
    const [to, by] = [alike[sentence], alike[from]];
    if (!here || !there || !to || !by) return [];
    if (plain.some((each) => each.sentence === sentence && each.from === from)) return [];
    if (leftOver > 0 && packetOf(packets, here.index) !== packetOf(packets, there.index)) return [];
    const readings = new Set(by.accepted.map((order) => rowOf(by.parts, order)));
    if (to.accepted.every((order) => readings.has(rowOf(to.parts, order)))) return [];
    const shown = new Set(here.cards.map(({ text }) => fold(text)));
    return there.cards.filter(
      ({ text }) => !shown.has(fold(text)) && to.parts.includes(numbers.get(fold(text)) ?? text),
    );
  });
}

/** For each text a name that it shares with those it is taken for. */
function classesIn(keys: readonly MatchKey[], like: Like): Map<MatchKey, string> {
  const names = new Map<MatchKey, string>();
  const distinct = new Set(keys);
  for (const key of distinct) {
    if (names.has(key)) continue;
    const open = new Set([key]);
    for (const next of open) {
      names.set(next, key);
      for (const other of like(next)) if (distinct.has(other) && !names.has(other)) open.add(other);
    }
  }
  return names;
}
