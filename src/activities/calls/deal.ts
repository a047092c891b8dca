import { dealCode } from "../../base/mark";
import { Random } from "../../base/seed";
import { finished, type Steps } from "../../base/steps";
import { fold } from "../../match/fold";
import { countKeys } from "../../prove/items/items";
import { allClaims, supplyClaims, whySameClaims } from "../claim-supply";
import type { DealRequest } from "../contract";
import { planCode, plansOf, streamOf } from "../levels";
import { longestOrder, mixedOrder } from "../mixed-order";
import { told } from "../printed";
import { counted } from "../report";
import type { Claim } from "../statements";
import { proveTruth } from "../truth-proof";
import { madeUnlike } from "../unlike-orders";
import type { CallsDeal, DealtCalls } from "./model";
import { callsOptions } from "./options";

/** Fewer statements than these make no game. Own limit. */
export const fewestStatements = 6;

/** Orders drawn before the best so far is taken. */
const attempts = 400;

/** What calls are without levels. */
const plainLevel = "gentle";

/**
 * A list for each class hour and level: in another order each time, as unlike those of the hours before as it can be, and with
 * other statements where `take` leaves some that no hour before has heard.
 */
export function dealCalls(request: DealRequest): DealtCalls {
  return finished(dealingCalls(request));
}

/** The same with a pause after what is chosen, and after each deal. */
export function* dealingCalls(request: DealRequest): Steps<DealtCalls> {
  const options = callsOptions(request.options);
  const hours = Math.max(1, request.classes.length, options.versions);
  const plans = plansOf({ ...options, versions: hours }, plainLevel);
  const wanted = { ...options, least: fewestStatements, replace: true };
  const supply = supplyClaims(request, wanted, plans);
  yield "arranging";
  const reserve = supply.reserve.map(asCalled);
  const hands = supply.hands.map(({ claims }) => claims.map(asCalled));
  const claims = allClaims(request, hands);
  const missingTwins = Math.max(...supply.hands.map((each) => each.missingTwins));
  const base = {
    request,
    options,
    claims,
    reserve,
    hands,
    missingTwins,
    replace: true as const,
    aloud: true as const,
    used: [],
  };
  const fewest = Math.min(...hands.map(({ length }) => length));
  if (fewest < fewestStatements) return { ...base, summary: "calls", deals: [] };
  const all = [...claims, ...reserve];
  const numbers = (own: readonly Claim[]): number[] =>
    own.map((claim) =>
      all.findIndex(({ item, text, truth }) => item === claim.item && text === claim.text && truth === claim.truth),
    );
  const taken: Taken[] = [];
  const deals: CallsDeal[] = [];
  for (const [i, hand] of hands.entries()) {
    const plan = plans[i] ?? { level: plainLevel, version: 1 };
    const stream = streamOf("calls", options.seed, { ...plan, version: plan.version - 1 }, plainLevel);
    const own = numbers(hand);
    const drawn = drawOrder(hand, own, stream, taken);
    const earlier = deals.filter(({ level }) => level === plan.level).map((deal) => deal.order);
    // What is true changes places with what is true only: the answers stay in their order.
    const truths = new Map(own.map((number, place) => [number, hand[place]?.truth]));
    const order = madeUnlike(drawn.order, earlier, (a, b) => truths.get(a) === truths.get(b));
    taken.push({ order: order.join(" "), key: drawn.key });
    const spare = new Random(`${stream}/reserve`).shuffle(numbers(reserve));
    const print = (claim: Claim | undefined): unknown => [
      claim && told(claim),
      claim?.truth,
      claim?.correction?.runs,
      claim?.by,
    ];
    const printed = [order, spare].map((each) => each.map((index) => print(all[index])));
    deals.push({
      code: dealCode(JSON.stringify(["calls", planCode(plan, plainLevel), order, spare, printed])),
      level: plan.level,
      version: plan.version,
      copies: 1,
      attempt: drawn.attempt,
      proof: proveTruth([...hand, ...reserve]),
      order,
      reserve: spare,
    });
    yield "arranging";
  }
  const same = options.levels && whySameClaims(request, wanted, plans);
  return {
    ...base,
    deals,
    summary: `${counted(hands[0]?.length ?? 0, "statement")} to call`,
    ...(same === undefined ? {} : { sameLevels: same }),
  };
}

/** A claim as it is called: who listens sees no picture. */
function asCalled(claim: Claim): Claim {
  return { ...claim, key: fold(claim.text) };
}

/** What an earlier list has: its order, and its answers in order. */
interface Taken {
  readonly order: string;
  readonly key: string;
}

/**
 * An order without a pattern that no earlier list has, as the claims' numbers, with answers that none has in this order, as long as
 * there are others; then those that the fewest have.
 */
function drawOrder(
  claims: readonly Claim[],
  numbers: readonly number[],
  stream: string,
  taken: readonly Taken[],
): { readonly order: readonly number[]; readonly key: string; readonly attempt: number } {
  const answers = claims.map(({ truth }) => truth);
  const falses = answers.filter((truth) => !truth).length;
  const keys =
    answers.length > longestOrder
      ? Number.POSITIVE_INFINITY
      : Number(countKeys({ trues: answers.length - falses, falses, longest: 3, regular: false }));
  // Once every key is taken, each may be taken again.
  const alike = taken.filter(({ key }) => key.length === answers.length && key.split("F").length - 1 === falses);
  const least = keys === 0 ? taken.length : Math.floor(alike.length / keys);
  const draw = (attempt: number) => {
    const places = mixedOrder(answers, `${stream}/${attempt}`);
    const order = places.flatMap((place) => numbers[place] ?? []);
    const key = places.map((place) => (answers[place] ? "T" : "F")).join("");
    const uses = taken.filter((each) => each.key === key).length;
    const cost = 2 * Math.max(0, uses - least) + (taken.some((each) => each.order === order.join(" ")) ? 1 : 0);
    return { order, key, attempt, cost };
  };
  let best = draw(0);
  for (let attempt = 1; attempt < attempts && best.cost > 0; attempt++) {
    const next = draw(attempt);
    if (next.cost < best.cost) best = next;
  }
  return best;
}
