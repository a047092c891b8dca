import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import type { DealRequest } from "../contract";
import { mixedOrder } from "../mixed-order";
import { told } from "../printed";
import { counted } from "../report";
import { areTwins, type Claim, supplyClaims } from "../statements";
import type { CallsDeal, DealtCalls } from "./model";
import { callsOptions } from "./options";

/** Fewer statements than these make no game. Own limit. */
export const fewestStatements = 6;

/** Orders drawn before one that another hour has is taken. */
const attempts = 20;

/** A list for each class hour: the same statements, each time in another order. */
export function dealCalls(request: DealRequest): DealtCalls {
  const options = callsOptions(request.options);
  const { claims, reserve, missingTwins } = supplyClaims(request, { ...options, least: fewestStatements });
  const base = { request, options, claims, reserve, missingTwins, used: [] };
  if (claims.length < fewestStatements) return { ...base, summary: "calls", deals: [] };
  const hours = Math.max(1, request.classes.length, options.versions);
  const taken = new Set<string>();
  const deals = upTo(hours).map((hour): CallsDeal => {
    const { order, attempt } = drawOrder(claims, `calls/${options.seed}/${hour}`, taken);
    taken.add(order.join(" "));
    const spare = new Random(`calls/${options.seed}/${hour}/reserve`).shuffle(upTo(reserve.length));
    const print = (claim: Claim | undefined): unknown => [
      claim && told(claim),
      claim?.truth,
      claim?.correction?.runs,
      claim?.by,
    ];
    const printed = [order.map((i) => print(claims[i])), spare.map((i) => print(reserve[i]))];
    return {
      code: dealCode(JSON.stringify(["calls", hour + 1, order, spare, printed])),
      level: "gentle",
      version: hour + 1,
      copies: 1,
      attempt,
      proof: proofOf([...claims, ...reserve]),
      order,
      reserve: spare,
    };
  });
  return { ...base, deals, summary: `${counted(claims.length, "statement")} to call` };
}

/** An order without a pattern that no earlier hour has. */
function drawOrder(
  claims: readonly Claim[],
  stream: string,
  taken: ReadonlySet<string>,
): { readonly order: readonly number[]; readonly attempt: number } {
  const answers = claims.map(({ truth }) => truth);
  const together = (a: number, b: number): boolean => areTwins(claims[a], claims[b]);
  for (let attempt = 0; ; attempt++) {
    const order = mixedOrder(answers, `${stream}/${attempt}`, together);
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
