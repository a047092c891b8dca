import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import { answerKey, type Relation } from "../../match/relation";
import type { LoopProof } from "../../prove/loops/loops";
import type { Pair } from "../../unit/unit";
import { choosePairs } from "../choice";
import type { DealRequest } from "../contract";
import { copiesOf } from "../copies";
import { printOf, toPrinted } from "../printed";
import { pairsOf } from "../supply";
import type { DealtLoop, LoopCard, LoopDeal } from "./model";
import { type LoopOptions, loopOptions } from "./options";
import { proveCards } from "./proof";

/** Of three cards in a circle each can be found by leaving out the other. */
export const fewestPairs = 4;

/** Circles drawn before the best so far is taken, and orders for dealing and posting. */
const attempts = 40;
const shuffles = 200;

export function dealLoop(request: DealRequest): DealtLoop {
  const options = loopOptions(request.options);
  const groups = request.sections.map(pairsOf);
  const pairs = groups.flat();
  const wanted = Math.min(options.take ?? pairs.length, pairs.length);
  if (wanted < fewestPairs) return { request, options, pairs, used: [], deals: [], summary: "loop" };
  const plans = upTo(options.versions).map((i) => ({ level: "gentle", version: i + 1 }));
  const copies = setsOf(options, request, plans);
  const clash = (p: Pair, q: Pair): boolean => mayFollow(p, q, request.relation) || mayFollow(q, p, request.relation);
  const uses = new Map<Pair, number>();
  const circles = new Set<string>();
  const deals = plans.map(({ level, version }, i): LoopDeal => {
    const stream = `loop/${options.seed}/${version}`;
    const chosen = choosePairs(groups, wanted, { clash, uses, stream: `${stream}/choice` });
    for (const pair of chosen) uses.set(pair, (uses.get(pair) ?? 0) + 1);
    const { cards, attempt, proof } = drawCircle(chosen, pairs, request, stream, circles);
    const dealt = apart(cards.length, upTo(cards.length), `${stream}/order`);
    const posting = apart(cards.length, dealt, `${stream}/posting`);
    const texts = cards.map(({ answer, prompt }) => [printOf(answer), printOf(prompt)]);
    const code = dealCode(JSON.stringify(["loop", version, options.size, dealt, texts]));
    const { full, smaller } = proof;
    return { code, level, version, attempt, copies: copies[i] ?? 1, cards, dealt, posting, proof: full, smaller };
  });
  const used = pairs.filter((pair) => uses.has(pair));
  return { request, options, pairs, used, deals, summary: summaryOf(options, wanted) };
}

/** Whether the prompt of one pair is answered by the other's answer, so that the other's card could come next. */
function mayFollow(p: Pair, q: Pair, relation: Relation): boolean {
  return relation.fits(answerKey(p.left.answers[0]), answerKey(q.right.answers[0]));
}

/** One set of each version for the room; for tables as many as the groups of the largest class. */
function setsOf(
  options: LoopOptions,
  { classes }: DealRequest,
  plans: readonly { readonly level: string }[],
): ReturnType<typeof copiesOf> {
  if (options.size === "room" && options.copies === undefined) return plans.map(() => 1);
  return copiesOf(options, classes, plans);
}

export function summaryOf({ size, blanks }: Pick<LoopOptions, "size" | "blanks">, cards: number): string {
  const what = `${cards} ${size === "mini" ? "mini cards" : "cards"} in a circle`;
  return blanks > 0 ? `${what} and ${blanks} blank` : what;
}

interface Drawn {
  readonly cards: readonly LoopCard[];
  readonly attempt: number;
  readonly proof: LoopProof;
}

/**
 * A circle with one full way round and no smaller one; where the words allow none, one with a single full way round, and of
 * those the one whose shortest early close is longest. Not one that an earlier version has, where there is another.
 */
function drawCircle(
  chosen: readonly Pair[],
  pairs: readonly Pair[],
  request: DealRequest,
  stream: string,
  circles: Set<string>,
): Drawn {
  const draw = (attempt: number): Drawn & { readonly rank: number; readonly name: string } => {
    const order = new Random(`${stream}/circle/${attempt}`).shuffle(chosen);
    const name = nameOf(order.map((pair) => pairs.indexOf(pair)));
    const cards = toCards(order, request);
    const proof = proveCards(cards, request.relation);
    const { full, smaller } = proof;
    // First a circle of its own, then one way round, then none that closes early.
    const rank = (circles.has(name) ? 0 : 4000) + (full.status === "one" ? 2000 : 0) + (smaller?.length ?? 1000);
    return { cards, attempt, proof, rank, name };
  };
  let best = draw(0);
  for (let attempt = 1; attempt < attempts && best.rank < 7000; attempt++) {
    const drawn = draw(attempt);
    if (drawn.rank > best.rank) best = drawn;
  }
  circles.add(best.name);
  return best;
}

/** Each pair asks on one card and answers on the next. */
function toCards(order: readonly Pair[], { teaches, explains }: DealRequest): LoopCard[] {
  return order.flatMap((asks, i): LoopCard[] => {
    const answers = order[(i + order.length - 1) % order.length];
    if (!answers) return [];
    const answer = toPrinted(answers.right.answers[0], explains);
    const prompt = toPrinted(asks.left.answers[0], teaches);
    return [{ answer, prompt, answers, asks }];
  });
}

/** Equal for one circle wherever it starts. */
function nameOf(order: readonly number[]): string {
  const start = order.indexOf(Math.min(...order));
  return [...order.slice(start), ...order.slice(0, start)].join(" ");
}

/**
 * An order of pieces in which no two neighbours, the ends included, are neighbours in the circle; where there is none, one
 * with the fewest. `places` has each piece's place in the circle.
 */
function apart(count: number, places: readonly number[], stream: string): readonly number[] {
  let best: { readonly order: readonly number[]; readonly close: number } | undefined;
  for (let attempt = 0; attempt < shuffles; attempt++) {
    const order = new Random(`${stream}/${attempt}`).shuffle(upTo(count));
    const close = order.filter((piece, i) => {
      const [a, b] = [places[piece] ?? 0, places[order[(i + 1) % count] ?? 0] ?? 0];
      return [1, count - 1].includes((b - a + count) % count);
    }).length;
    if (!best || close < best.close) best = { order, close };
    if (close === 0) break;
  }
  return best?.order ?? upTo(count);
}
