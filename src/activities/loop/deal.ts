import { dealCode } from "../../base/mark";
import { Recent } from "../../base/recent";
import { Random, upTo } from "../../base/seed";
import { answerKey, type MatchKey, type Relation } from "../../match/relation";
import type { LoopProof } from "../../prove/loops/loops";
import { tally } from "../../prove/orders/orders";
import type { Pair } from "../../unit/unit";
import { type Choice, choosePairs } from "../choice";
import type { DealRequest } from "../contract";
import { blanksText, copiesOf } from "../copies";
import { planCode, plansOf, streamOf } from "../levels";
import { printOf, toPrinted } from "../printed";
import { isFormPair, pairsOf } from "../supply";
import { chooseDecoys } from "./decoys";
import type { DealtLoop, LoopCard, LoopDeal } from "./model";
import { type LoopOptions, loopOptions } from "./options";
import { proveCards } from "./proof";

/** Of three cards in a circle each can be found by leaving out the other. */
export const fewestPairs = 4;

/** Circles drawn before the best so far is taken, and orders for dealing and posting. */
const attempts = 40;
const shuffles = 200;

/** A hard circle has a decoy for each so many cards, where nothing says how many. Ours. */
const cardsForDecoy = 6;

export function dealLoop(request: DealRequest): DealtLoop {
  const { decoys = 0, levels, take } = loopOptions(request.options);
  if (!levels?.includes("hard") && decoys === 0) return dealCircles(request, take, 0);
  const pairs = circleSize(request);
  const wanted =
    loopOptions(request.options).decoys ?? Math.max(1, Math.floor(Math.min(take ?? pairs, pairs) / cardsForDecoy));
  const dealt = dealCircles(request, take, wanted);
  // Decoys may have no words but those of the circle, where nothing says how many pairs it takes.
  if (take !== undefined || dealt.missingDecoys === 0) return dealt;
  for (let count = wanted; count > wanted - dealt.missingDecoys; count--) {
    const smaller = dealCircles(request, pairs - 2 * count, count);
    const enough = pairs - 2 * count >= fewestPairs && smaller.missingDecoys === 0;
    if (enough) return { ...smaller, missingDecoys: wanted - count };
  }
  return dealt;
}

function dealCircles(request: DealRequest, take: number | undefined, count: number): DealtLoop {
  const options = loopOptions(request.options);
  const groups = request.sections.map(pairsOf);
  const pairs = groups.flat();
  const wanted = Math.min(take ?? circleSize(request), pairs.length);
  const base = { request, options, pairs, leftOut: take === undefined ? pairs.length - wanted : 0 };
  if (wanted < fewestPairs) return { ...base, used: [], missingDecoys: 0, deals: [], summary: "loop" };
  const plain = options.decoys === undefined || options.decoys === 0 ? "gentle" : "hard";
  const plans = plansOf(options, plain);
  const copies = setsOf(options, request, plans);
  const { choices, uses } = chooseCircles(request, take);
  const circles = new Set<string>();
  const drawn = choices.map((chosen, i) =>
    drawCircle(chosen, pairs, request, `loop/${options.seed}/${i + 1}`, circles),
  );
  const deals = plans.flatMap((plan, i): LoopDeal[] => {
    const { level, version } = plan;
    // Levels of one version have the same circle.
    const circle = drawn[version - 1];
    if (!circle) return [];
    const { cards, attempt, proof } = circle;
    const stream = streamOf("loop", options.seed, plan, plain);
    const decoys = level === "hard" ? chooseDecoys(cards, count, request, `${stream}/decoys`) : [];
    const all = cards.length + decoys.length;
    const dealt = apart(all, cards.length, upTo(all), `${stream}/order`);
    const posting = apart(all, cards.length, dealt, `${stream}/posting`);
    const texts = [...cards, ...decoys].map(({ answer, prompt }) => [printOf(answer), printOf(prompt)]);
    const code = dealCode(JSON.stringify(["loop", planCode(plan, plain), options.size, dealt, texts]));
    const { full, smaller } = proof;
    const own = { number: plans.length > 1 ? i + 1 : undefined, cards, decoys, dealt, posting, proof: full, smaller };
    return [{ code, level, version, attempt, copies: copies[i] ?? 1, ...own }];
  });
  const shown = new Set(deals.flatMap(({ decoys }) => decoys.flatMap(({ answers, asks }) => [answers, asks])));
  const used = pairs.filter((pair) => uses.has(pair) || shown.has(pair));
  const hard = deals.filter(({ level }) => level === "hard");
  const fewest = hard.length === 0 ? count : Math.min(...hard.map(({ decoys }) => decoys.length));
  return {
    ...base,
    used,
    deals,
    missingDecoys: count - fewest,
    summary: summaryOf({ request, options }, deals[0]),
    ...(options.levels && hard.length > 0 && fewest === 0
      ? {
          sameLevels: `hard has cards with words that have no partner, and ${options.decoys === 0 ? "`decoys` says that there are none" : "the unit has none besides those of the circle"}`,
        }
      : {}),
  };
}

/**
 * How many pairs a circle has where nothing says how many: all that are written, and the cells of forms tables, but of cells that
 * could follow each other's prompts one only; all where too few would be left.
 */
function circleSize(request: DealRequest): number {
  const pairs = request.sections.flatMap(pairsOf);
  const size = pairs.filter((pair) => !isFormPair(pair)).length + ownForms(request).size;
  return size < fewestPairs ? pairs.length : size;
}

/** Cells of forms tables, in their order, that clash with no written pair and none of these before. */
function ownForms({ sections, relation }: DealRequest): ReadonlySet<Pair> {
  const pairs = sections.flatMap(pairsOf);
  const taken = pairs.filter((pair) => !isFormPair(pair));
  const forms = new Set<Pair>();
  for (const pair of pairs) {
    if (!isFormPair(pair) || taken.some((other) => clashing(pair, other, relation))) continue;
    taken.push(pair);
    forms.add(pair);
  }
  return forms;
}

function clashing(p: Pair, q: Pair, relation: Relation): boolean {
  return mayFollow(p, q, relation) || mayFollow(q, p, relation);
}

/** The pairs of each version's circle, and how often each pair is used. */
function chooseCircles(
  request: DealRequest,
  take: number | undefined,
): { readonly choices: readonly (readonly Pair[])[]; readonly uses: ReadonlyMap<Pair, number> } {
  const { seed, versions } = loopOptions(request.options);
  const groups = request.sections.map(pairsOf);
  const clash = (p: Pair, q: Pair): boolean => clashing(p, q, request.relation);
  const uses = new Map<Pair, number>();
  const choices = upTo(versions).map((i) => {
    const choice = { clash, uses, stream: `loop/${seed}/${i + 1}/choice` };
    const chosen =
      take === undefined ? allButTwins(groups, circleSize(request), choice) : choosePairs(groups, take, choice);
    for (const pair of chosen) uses.set(pair, (uses.get(pair) ?? 0) + 1);
    return chosen;
  });
  return { choices, uses };
}

/** All written pairs, and of the cells of forms tables as many as make up the number, by the seed. */
function allButTwins(groups: readonly (readonly Pair[])[], size: number, choice: Choice): readonly Pair[] {
  const pairs = groups.flat();
  if (size >= pairs.length) return pairs;
  const written = pairs.filter((pair) => !isFormPair(pair));
  const free = (pair: Pair): boolean => isFormPair(pair) && !written.some((other) => choice.clash(pair, other));
  const forms = new Set(
    choosePairs(
      groups.map((group) => group.filter(free)),
      size - written.length,
      choice,
    ),
  );
  return pairs.filter((pair) => !isFormPair(pair) || forms.has(pair));
}

/**
 * How many cards of the circles, or only those with one answer, could follow where they are not meant to, without dealing: a card
 * fits by its pair, wherever it stands. `undefined` where nothing can be dealt, or where cards that belong nowhere have a say in
 * how many pairs are taken.
 */
export function clashesAhead(request: DealRequest, only?: MatchKey): number | undefined {
  const { decoys = 0, levels, take } = loopOptions(request.options);
  const all = request.sections.flatMap(pairsOf).length;
  const wanted = Math.min(take ?? circleSize(request), all);
  if (levels?.includes("hard") || decoys > 0 || wanted < fewestPairs) return undefined;
  return chooseCircles(request, take).choices.reduce((sum, pairs) => {
    const answers = pairs.map((pair) => answerKey(pair.right.answers[0]));
    const times = tally(only === undefined ? answers : answers.filter((answer) => answer === only));
    const clashes = pairs.map((pair, i) => {
      const prompt = answerKey(pair.left.answers[0]);
      let fitting = 0;
      for (const partner of request.relation.partners(prompt)) fitting += times.get(partner) ?? 0;
      const own = answers[i] ?? "";
      return fitting - (times.has(own) && request.relation.fits(prompt, own) ? 1 : 0);
    });
    return sum + clashes.reduce((total, each) => total + each, 0);
  }, 0);
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

/** `12 cards in a circle, 2 that belong nowhere and 3 blank` */
export function summaryOf(
  { request, options }: Pick<DealtLoop, "request" | "options">,
  deal: Pick<LoopDeal, "cards" | "decoys"> | undefined,
): string {
  const blank = blanksText(options, request.classes);
  const decoys = deal?.decoys.length ?? 0;
  const further = [
    ...(decoys > 0 ? [`${decoys} that ${decoys === 1 ? "belongs" : "belong"} nowhere`] : []),
    ...(blank === undefined ? [] : [blank]),
  ];
  const what = `${deal?.cards.length ?? 0} ${options.size === "mini" ? "mini cards" : "cards"} in a circle`;
  return [what, ...further].join(further.length > 1 ? ", " : " and ");
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
 * An order of so many pieces in which no two neighbours, the ends included, are neighbours in a circle; where there is none, one
 * with the fewest. `places` has each piece's place: below `circle` in the circle, else outside of it.
 */
function apart(count: number, circle: number, places: readonly number[], stream: string): readonly number[] {
  const asked = `${stream} ${circle} ${places.join(" ")}`;
  return orders.get(asked, () => drawApart(count, circle, places, stream));
}

/** Drawn of late: they hang on no words. */
const orders = new Recent<readonly number[]>(100);

function drawApart(count: number, circle: number, places: readonly number[], stream: string): readonly number[] {
  let best: { readonly order: readonly number[]; readonly close: number } | undefined;
  for (let attempt = 0; attempt < shuffles; attempt++) {
    const order = new Random(`${stream}/${attempt}`).shuffle(upTo(count));
    const close = order.filter((piece, i) => {
      const [a, b] = [places[piece] ?? 0, places[order[(i + 1) % count] ?? 0] ?? 0];
      return Math.max(a, b) < circle && [1, circle - 1].includes((b - a + circle) % circle);
    }).length;
    if (!best || close < best.close) best = { order, close };
    if (close === 0) break;
  }
  return best?.order ?? upTo(count);
}
