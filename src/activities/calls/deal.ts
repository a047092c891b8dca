import { dealCode } from "../../base/mark";
import { Random } from "../../base/seed";
import { allClaims, supplyClaims, whySameClaims } from "../claim-supply";
import type { DealRequest } from "../contract";
import { planCode, plansOf, streamOf } from "../levels";
import { mixedOrder } from "../mixed-order";
import { told } from "../printed";
import { counted } from "../report";
import type { Claim } from "../statements";
import type { CallsDeal, DealtCalls } from "./model";
import { callsOptions } from "./options";

/** Fewer statements than these make no game. Own limit. */
export const fewestStatements = 6;

/** Orders drawn before one that another hour has is taken. */
const attempts = 20;

/** What calls are without levels. */
const plainLevel = "gentle";

/**
 * A list for each class hour and level: in another order each time, and with other statements where `take` leaves some that no
 * hour before has heard.
 */
export function dealCalls(request: DealRequest): DealtCalls {
  const options = callsOptions(request.options);
  const hours = Math.max(1, request.classes.length, options.versions);
  const plans = plansOf({ ...options, versions: hours }, plainLevel);
  const order = { ...options, least: fewestStatements, replace: true };
  const supply = supplyClaims(request, order, plans);
  const { reserve } = supply;
  const hands = supply.hands.map(({ claims }) => claims);
  const claims = allClaims(request, hands);
  const missingTwins = Math.max(...supply.hands.map((each) => each.missingTwins));
  const base = { request, options, claims, reserve, hands, missingTwins, replace: true as const, used: [] };
  const fewest = Math.min(...hands.map(({ length }) => length));
  if (fewest < fewestStatements) return { ...base, summary: "calls", deals: [] };
  const all = [...claims, ...reserve];
  const numbers = (own: readonly Claim[]): number[] =>
    own.map((claim) =>
      all.findIndex(({ item, text, truth }) => item === claim.item && text === claim.text && truth === claim.truth),
    );
  const taken = new Set<string>();
  const deals = hands.map((hand, i): CallsDeal => {
    const plan = plans[i] ?? { level: plainLevel, version: 1 };
    const stream = streamOf("calls", options.seed, { ...plan, version: plan.version - 1 }, plainLevel);
    const own = numbers(hand);
    const drawn = drawOrder(hand, own, stream, taken);
    taken.add(drawn.order.join(" "));
    const spare = new Random(`${stream}/reserve`).shuffle(numbers(reserve));
    const print = (claim: Claim | undefined): unknown => [
      claim && told(claim),
      claim?.truth,
      claim?.correction?.runs,
      claim?.by,
    ];
    const printed = [drawn.order, spare].map((each) => each.map((index) => print(all[index])));
    return {
      code: dealCode(JSON.stringify(["calls", planCode(plan, plainLevel), drawn.order, spare, printed])),
      level: plan.level,
      version: plan.version,
      copies: 1,
      attempt: drawn.attempt,
      proof: proofOf([...hand, ...reserve]),
      order: drawn.order,
      reserve: spare,
    };
  });
  const same = options.levels && whySameClaims(request, order, plans);
  return {
    ...base,
    deals,
    summary: `${counted(hands[0]?.length ?? 0, "statement")} to call`,
    ...(same === undefined ? {} : { sameLevels: same }),
  };
}

/** An order without a pattern that no earlier hour has, as the claims' numbers. */
function drawOrder(
  claims: readonly Claim[],
  numbers: readonly number[],
  stream: string,
  taken: ReadonlySet<string>,
): { readonly order: readonly number[]; readonly attempt: number } {
  const answers = claims.map(({ truth }) => truth);
  for (let attempt = 0; ; attempt++) {
    const order = mixedOrder(answers, `${stream}/${attempt}`).flatMap((place) => numbers[place] ?? []);
    if (!taken.has(order.join(" ")) || attempt + 1 === attempts) return { order, attempt };
  }
}

/** Each statement has one answer, unless the same text is both true and false: then none is right. */
function proofOf(claims: readonly Claim[]): CallsDeal["proof"] {
  const truths = new Map<string, boolean>();
  const clash = claims.some(({ key, truth }) => {
    const known = truths.get(key);
    truths.set(key, truth);
    return known !== undefined && known !== truth;
  });
  return { status: clash ? "none" : "one", count: clash ? 0 : 1, capped: false, nodes: 0, by: "certificate" };
}
