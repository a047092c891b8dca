import { setOption } from "../../activities/edits";
import { optionPlace } from "../../activities/report";
import type { Fix, Report } from "../../base/finding";
import { type Steps, sifted } from "../../base/steps";
import type { CheckContext, CheckedActivity } from "../context";
import { helping, itemsAt, meantFix, type StaysApart, takingOutOne } from "./look-alike-fixes";
import { type Cause, type Harm, type Hook, type Judged, mended } from "./look-alike-judge";
import { joined, nameOf, sentences } from "./look-alike-phrases";
import type { Words } from "./look-alike-words";
import { areMore, sparing, troublesOf } from "./spare";

/* What is told of look-alikes that nothing else keeps apart, and what helps. */

/** Changes that are dealt anew for one activity: so many groups of words are more than anybody mends one by one. Ours. */
const mostTries = 30;

/** One finding for each cause and place, which names every activity where it does harm; as loud as the loudest of them. */
export function reportsOf(judged: readonly Judged[], context: CheckContext, words: Words): Report[] {
  const byCause = new Map<string, Map<CheckedActivity, Cause>>();
  for (const cause of judged.flatMap(({ causes }) => causes)) {
    const name = [cause.places.at(-1)?.start, ...cause.groups.map(nameOf).sort()].join();
    const same = byCause.get(name) ?? new Map<CheckedActivity, Cause>();
    // Of the deals of one activity the last one speaks, if none is worse.
    const known = same.get(cause.activity);
    if (isLoud(cause) || !known || !isLoud(known)) same.set(cause.activity, cause);
    byCause.set(name, same);
  }
  const tries = new Map(judged.map(({ activity }) => [activity, { left: mostTries }]));
  return [...byCause.values()].map((same) => reportOf([...same.values()], context, words, tries));
}

/** Something of it is said aloud and sounds the same. */
function isLoud({ unheard, within }: Cause): boolean {
  return unheard || within !== undefined;
}

type Tries = ReadonlyMap<CheckedActivity, { left: number }>;

/** What is told of one cause, where `causes` has it once for each activity. */
function reportOf(causes: readonly Cause[], context: CheckContext, words: Words, tries: Tries): Report {
  const loud = causes.find(isLoud);
  const blocks = causes.map(({ activity }) => optionPlace(activity.dealt.request.block));
  const places = causes[0]?.places ?? [];
  const place = loud?.within?.places.at(-1) ?? places.at(-1) ?? blocks[0] ?? { start: 0, end: 0 };
  const meant = loud ? undefined : meantFix(context.unit, place);
  const fixes = function* (): Steps<Fix[], unknown> {
    const each = causes.map((cause) => ({ cause, staysApart: trying(cause, context, words, tries) }));
    return [...(yield* dealtOtherwise(each)), ...(meant ? [meant] : []), ...(yield* withoutItem(each, context))];
  };
  return {
    range: place,
    severity: loud ? "warning" : "information",
    message: [...told(causes, ({ within }) => within), ...told(causes, (cause) => cause)].join(" "),
    related: [
      ...places.filter((each) => each !== place).map((range) => ({ range, message: "Easily taken for this" })),
      ...blocks.map((range) => ({ range, message: "The activity" })),
    ],
    fixes,
  };
}

/** What is to be said of some groups and what comes of them, the worst first: one sentence where it is the same in several activities. */
function told(causes: readonly Cause[], harmIn: (cause: Cause) => Harm | undefined): string[] {
  const said = new Map<string, string[]>();
  const harms = causes.flatMap((cause) => {
    const harm = harmIn(cause);
    return harm ? [{ ...cause, ...harm }] : [];
  });
  const [first] = harms;
  if (!first) return [];
  for (const { activity, hook, pieces, unheard } of harms.sort((a, b) => Number(b.unheard) - Number(a.unheard))) {
    const who = unheard ? "listens cannot hear that and" : "overlooks it";
    const apart = hook.piece === undefined ? "" : `: ${untold(pieces, hook.piece, hook)}`;
    const name = JSON.stringify([`Whoever ${who} ${hook.harm}`, apart]);
    said.set(name, [...(said.get(name) ?? []), `“${activity.plan.title}”`]);
  }
  const all = [...said].map(([name, titles]) => {
    const [harm, apart] = JSON.parse(name) as [string, string];
    return `${harm}, in ${joined(titles)}${apart}.`;
  });
  return [sentences(first.groups), ...all];
}

/** What nothing but the difference tells of some pieces. */
function untold(pieces: readonly string[], piece: string, { alone }: Hook): string {
  const [first = "", ...others] = pieces;
  return others.length === 0 && alone ? alone(first) : `nothing else keeps ${counted(pieces, piece)} apart`;
}

/** `tiles A and B`, `card C from another`; words stand for themselves. */
function counted(pieces: readonly string[], piece: string): string {
  if (pieces[0]?.startsWith("“")) return joined(pieces);
  return pieces.length === 1 ? `${piece} ${joined(pieces)} and another` : `${piece}s ${joined(pieces)}`;
}

interface Tried {
  readonly cause: Cause;
  readonly staysApart: StaysApart;
}

function trying(cause: Cause, { press }: CheckContext, words: Words, tries: Tries): StaysApart {
  const { plan, dealt } = cause.activity;
  const left = tries.get(cause.activity) ?? { left: 0 };
  let before: ReadonlyMap<string, number> | undefined;
  return function* (request) {
    const after = left.left-- > 0 ? yield* mended(cause, words, request) : undefined;
    if (!after) return false;
    before ??= yield* troublesOf(plan.kind, dealt, press);
    return !areMore(yield* troublesOf(plan.kind, after, press), before);
  };
}

/** Other options with which the words stay apart; where several activities are concerned, one for each of them at once. */
function* dealtOtherwise(each: readonly Tried[]): Steps<Fix[], unknown> {
  const own: Fix[][] = [];
  for (const { cause, staysApart } of each) {
    const fixes = [...(yield* anotherSeed(cause, staysApart)), ...(yield* otherOptions(cause, staysApart))];
    if (fixes.length === 0) return [];
    own.push(fixes);
  }
  if (own.length === 1) return own[0] ?? [];
  const first = own.flatMap((fixes) => fixes.slice(0, 1));
  const title = first.map((fix, i) => `“${each[i]?.cause.activity.plan.title}”: ${fix.title}`).join("; ");
  return [{ title, edits: first.flatMap(({ edits }) => edits) }];
}

/** Takes out one of the items that look alike where that helps each of the activities, and no other one needs it. */
function* withoutItem(each: readonly Tried[], context: CheckContext): Steps<Fix[], unknown> {
  const { unit } = context;
  let items = itemsAt(unit, each[0]?.cause.places ?? []);
  for (const { cause, staysApart } of each) items = yield* helping(cause.activity, items, staysApart);
  const asked = each.map(({ cause }) => cause.activity);
  return (yield* sifted(items, (item) => sparing(context, item, asked))).map(takingOutOne);
}

/** A seed with which the solution stays the only one for those who overlook the difference, among the next three. */
function* anotherSeed({ activity, hook }: Cause, staysApart: StaysApart): Steps<Fix[], unknown> {
  const { request } = activity.dealt;
  const { options, block, unit } = request;
  // Without a choice to make another seed only puts the same in another order.
  if (!hook.bySeed && options.value.take === undefined) return [];
  for (let seed = options.value.seed + 1; seed <= options.value.seed + 3; seed++) {
    const other = { ...request, options: { ...options, value: { ...options.value, seed } } };
    if (!(yield* staysApart(other))) continue;
    const edits = [setOption(block, unit.text, "seed", String(seed))];
    const title = hook.bySeed
      ? `Use seed ${seed}: then other words keep them apart`
      : `Use seed ${seed}: then they do not meet`;
    return [{ title, edits }];
  }
  return [];
}

/** Options of the kind's own that keep the words apart. */
function* otherOptions({ activity: { dealt }, hook }: Cause, staysApart: StaysApart): Steps<Fix[], unknown> {
  const { request } = dealt;
  const { options, block, unit } = request;
  const fixes: Fix[] = [];
  for (const { title, key, value } of hook.calmer?.(dealt) ?? []) {
    const other = { ...request, options: { ...options, value: { ...options.value, [key]: value } } };
    if (yield* staysApart(other)) fixes.push({ title, edits: [setOption(block, unit.text, key, String(value))] });
  }
  return fixes;
}
