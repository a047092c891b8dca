import { dealCode } from "../../base/mark";
import { Recent } from "../../base/recent";
import { Random, upTo } from "../../base/seed";
import { finished, type Steps } from "../../base/steps";
import type { LoopProof } from "../../prove/loops/loops";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { blanksText, copiesOf } from "../copies";
import { planCode, streamOf } from "../levels";
import { printJson } from "../printed";
import { pairsOf } from "../supply";
import { plainLevel, planCircles, toCards } from "./circles";
import type { DealtLoop, LoopCard, LoopDeal } from "./model";
import { type LoopOptions, loopOptions } from "./options";
import { proveCards } from "./proof";

/** Circles drawn before the best so far is taken, and orders for dealing and posting. */
const attempts = 40;
const shuffles = 200;

export function dealLoop(request: DealRequest): DealtLoop {
  return finished(dealingLoop(request));
}

/** The same with a pause after each circle drawn. */
export function* dealingLoop(request: DealRequest): Steps<DealtLoop> {
  const options = loopOptions(request.options);
  const pairs = request.sections.flatMap(pairsOf);
  const { plans, choices, uses, leftOut, missingDecoys, fewestDecoys, ...planned } = planCircles(request);
  const base = { request, options, pairs, leftOut, missingDecoys };
  if (plans.length === 0) return { ...base, used: [], deals: [], summary: "loop" };
  const plain = plainLevel(options);
  const copies = setsOf(options, request, plans);
  const circles = new Set<string>();
  const drawn: Drawn[] = [];
  for (const [i, chosen] of choices.entries())
    drawn.push(yield* drawCircle(chosen, pairs, request, `loop/${options.seed}/${i + 1}`, circles));
  const deals: LoopDeal[] = [];
  for (const [i, plan] of plans.entries()) {
    const { level, version } = plan;
    // Levels of one version have the same circle.
    const circle = drawn[version - 1];
    if (!circle) continue;
    yield "dealing the cards";
    const { cards, attempt, proof } = circle;
    const stream = streamOf("loop", options.seed, plan, plain);
    const decoys = planned.decoys[i] ?? [];
    const all = cards.length + decoys.length;
    const dealt = apart(all, cards.length, upTo(all), `${stream}/order`);
    yield "dealing the cards";
    const posting = apart(all, cards.length, dealt, `${stream}/posting`);
    const code = dealCode(seen([...cards, ...decoys], ["loop", planCode(plan, plain), options.size, dealt]));
    const { full, smaller } = proof;
    const own = { number: plans.length > 1 ? i + 1 : undefined, cards, decoys, dealt, posting, proof: full, smaller };
    deals.push({ code, level, version, attempt, copies: copies[i] ?? 1, ...own });
  }
  const shown = new Set(deals.flatMap(({ decoys }) => decoys.flatMap(({ answers, asks }) => [answers, asks])));
  const hasHard = plans.some(({ level }) => level === "hard");
  return {
    ...base,
    used: pairs.filter((pair) => uses.has(pair) || shown.has(pair)),
    deals,
    summary: summaryOf({ request, options }, deals[0]),
    ...(options.levels && hasHard && fewestDecoys === 0
      ? {
          sameLevels: `hard has cards with words that have no partner, and ${options.decoys === 0 ? "`decoys` says that there are none" : "the unit has none besides those of the circle"}`,
        }
      : {}),
  };
}

/** All that can be seen of a deal, as JSON. */
function seen(cards: readonly LoopCard[], rest: readonly unknown[]): string {
  const texts = cards.map(({ answer, prompt }) => `[${printJson(answer)},${printJson(prompt)}]`);
  return `${JSON.stringify(rest).slice(0, -1)},[${texts.join(",")}]]`;
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
 * those the one in which the shortest circle that can close is longest. Not one that an earlier version has, where there is another.
 */
function* drawCircle(
  chosen: readonly Pair[],
  pairs: readonly Pair[],
  request: DealRequest,
  stream: string,
  circles: Set<string>,
): Steps<Drawn> {
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
  yield "a first circle";
  let best = draw(0);
  for (let attempt = 1; attempt < attempts && best.rank < 7000; attempt++) {
    yield `circle ${attempt}`;
    const drawn = draw(attempt);
    if (drawn.rank > best.rank) best = drawn;
  }
  circles.add(best.name);
  return best;
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
