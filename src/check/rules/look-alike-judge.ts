import type { Deal, DealRequest, Dealt, Overlooked } from "../../activities/contract";
import { setOption } from "../../activities/edits";
import { optionPlace } from "../../activities/report";
import type { Fix, Report } from "../../base/finding";
import { type LookAlikes, lookAlikes, overlooking } from "../../match/look-alikes";
import type { MatchKey, Relation } from "../../match/relation";
import type { CheckedActivity } from "../context";
import { joined, placesOf, sentence } from "./look-alike-phrases";
import type { Words } from "./look-alike-words";

type Hook = Overlooked<Deal, Dealt<Deal>>;

export interface Judged {
  readonly activity: CheckedActivity;
  /** Groups that nothing else keeps apart. */
  readonly reports: readonly { readonly group: LookAlikes; readonly report: Report }[];
  /** Groups that stand on the pieces of a deal, and those of them that do no harm there, proven. */
  readonly met: readonly LookAlikes[];
  readonly safe: readonly LookAlikes[];
  /** A deal is not settled, with the differences or without them: then nothing is claimed. */
  readonly open: boolean;
}

/** Asks the prover what becomes of an activity's deals when the differences are overlooked. */
export function judge(activity: CheckedActivity, words: Words): Judged {
  const { plan, dealt } = activity;
  const { kind } = plan;
  const hook = kind?.overlooked;
  const reports: { group: LookAlikes; report: Report }[] = [];
  const met: LookAlikes[] = [];
  const safe: LookAlikes[] = [];
  let open = false;
  if (!kind || !hook) return { activity, reports, met, safe, open };
  const { relation } = dealt.request;
  for (const deal of dealt.deals) {
    const groups = harmful(hook, dealt, deal, words);
    met.push(...groups);
    if (deal.proof.status !== "one" && !deal.proof.accepted) {
      open = true;
      continue;
    }
    if (groups.length === 0) continue;
    const confused = (some: readonly LookAlikes[]): readonly string[] | undefined =>
      hook.confused(dealt, deal, overlooking(relation, some));
    const together = confused(groups);
    if (!together) {
      open = true;
      continue;
    }
    if (together.length === 0) {
      safe.push(...groups);
      continue;
    }
    const alone = groups.filter((group) => confused([group])?.length);
    const culprits = alone.length === 0 ? groups : alone;
    for (const group of culprits) {
      const pieces = (alone.length === 0 ? undefined : confused([group])) ?? together;
      const others = alone.length === 0 ? culprits.length - 1 : 0;
      reports.push({ group, report: reportOf(activity, hook, deal, group, { pieces, others }, words) });
    }
  }
  return { activity, reports, met, safe, open };
}

function reportOf(
  { plan: { kind, title }, dealt }: CheckedActivity,
  hook: Hook,
  deal: Deal,
  group: LookAlikes,
  { pieces, others }: { readonly pieces: readonly string[]; readonly others: number },
  words: Words,
): Report {
  const with_ = others > 0 ? ` (with ${others} more such ${others === 1 ? "group" : "groups"} of words)` : "";
  const apart = hook.piece === undefined ? "" : `: nothing else keeps ${counted(pieces, hook.piece)} apart`;
  const place = optionPlace(dealt.request.block);
  const own = hook.places?.(dealt, deal, group.keys) ?? [];
  const stands = own.length > 0 ? [...own].sort((a, b) => a.start - b.start) : placesOf(group, words);
  return {
    range: stands.at(-1) ?? place,
    severity: "information",
    message: `${sentence(group)} Whoever overlooks it ${hook.harm}, in “${title}”${apart}${with_}.`,
    related: [
      ...stands.slice(0, -1).map((range) => ({ range, message: "Easily taken for this" })),
      { range: place, message: "The activity" },
    ],
    fixes: hook.bySeed && kind ? anotherSeed(dealt.request, words, hook, (request) => kind.deal(request)) : [],
  };
}

/** `tiles A and B`, `card C from another`; words stand for themselves. */
function counted(pieces: readonly string[], piece: string): string {
  if (pieces[0]?.startsWith("“")) return joined(pieces);
  return pieces.length === 1 ? `${piece} ${joined(pieces)} and another` : `${piece}s ${joined(pieces)}`;
}

/** Look-alikes among a deal's texts that nobody teaches as a contrast and that do not the same anyway. */
function harmful(hook: Hook, dealt: Dealt<Deal>, deal: Deal, { taught }: Words): readonly LookAlikes[] {
  const answers = answersIn(dealt.request.relation);
  const role = (key: MatchKey): string => hook.role?.(dealt, deal, key) ?? answers(key);
  return lookAlikes(hook.texts(dealt, deal)).filter(
    ({ keys }) => keys.some((key) => !taught.has(key)) && new Set(keys.map(role)).size > 1,
  );
}

/** What answers a text, as one string. */
export function answersIn(relation: Relation): (key: MatchKey) => string {
  return (key) => JSON.stringify([...relation.partners(key)].sort());
}

/** A seed with which the solution stays the only one for those who overlook the difference, among the next three. */
function anotherSeed(
  request: DealRequest,
  words: Words,
  hook: Hook,
  dealAnew: (request: DealRequest) => Dealt<Deal>,
): Fix[] {
  const { options, block, unit, relation } = request;
  for (let seed = options.value.seed + 1; seed <= options.value.seed + 3; seed++) {
    const dealt = dealAnew({ ...request, options: { ...options, value: { ...options.value, seed } } });
    const holds = dealt.deals.every((deal) => {
      const groups = harmful(hook, dealt, deal, words);
      return deal.proof.status === "one" && hook.confused(dealt, deal, overlooking(relation, groups))?.length === 0;
    });
    if (!holds || dealt.deals.length === 0) continue;
    const edits = [setOption(block, unit.text, "seed", String(seed))];
    return [{ title: `Use seed ${seed}: then other words keep them apart`, edits }];
  }
  return [];
}
