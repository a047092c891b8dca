import { dealCode } from "../../base/mark";
import { Recent } from "../../base/recent";
import { Random, upTo } from "../../base/seed";
import { finished, type Steps } from "../../base/steps";
import { answerKey, type MatchKey } from "../../match/relation";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { blanksText, copiesOf } from "../copies";
import type { Level } from "../options";
import { printJson, toPrinted } from "../printed";
import { pairsOf, takeSpread } from "../supply";
import { attemptCost, compared, comparedAgain, glance, type Patience, patienceFor, takeAttempt } from "./attempts";
import { chooseDecoys } from "./decoys";
import { type Frame, innerCount, largestFrame, outerCount } from "./frame";
import type { DealtTiles, Decoys, Edge, TileFace, TilesDeal } from "./model";
import { levelsOf, type TilesOptions, tilesOptions, writtenFrame } from "./options";
import { placesOf } from "./places";
import { countWays, judging, type Verdict } from "./puzzle";
import { structureKey } from "./structure";

export function dealTiles(request: DealRequest): DealtTiles {
  return finished(dealingTiles(request));
}

/** The same in steps: proving may take long. */
export function* dealingTiles(request: DealRequest): Steps<DealtTiles> {
  const options = tilesOptions(request.options);
  const { pairs, frame, table, plans } = prepare(request, options);
  if (!table) {
    return { request, options, pairs, summary: "tiles", deals: [], used: [], ...(frame ? { frame } : {}) };
  }
  yield "choosing pairs";
  const copies = copiesOf(options, request.classes, plans);
  const patience = patienceFor(plans.length);
  const deals: TilesDeal[] = [];
  for (const [i, plan] of plans.entries())
    deals.push({ ...(yield* dealOne(table, plan, patience)), copies: copies[i] ?? 1 });
  yield* inOrder(table, plans, patience, deals);
  const { used } = table;
  const blank = blanksText(options, request.classes);
  const summary = `${table.frame.rows} × ${table.frame.columns} tiles${blank === undefined ? "" : ` and ${blank}`}`;
  const upset = upsetLevels(deals, options);
  return {
    request,
    options,
    pairs,
    frame: table.frame,
    used,
    deals,
    summary,
    ...(upset === undefined ? {} : { upsetLevels: upset }),
  };
}

/** Deals anew, among more arrangements, what is upset: a hard deal that is easier than a gentle one of whatever version, and that. */
function* inOrder(table: Table, plans: readonly Plan[], patience: Patience, deals: TilesDeal[]): Steps<void> {
  const upset = new Set(upsetIn(deals).flat());
  for (const [i, plan] of plans.entries()) {
    const deal = deals[i];
    if (deal && upset.has(deal))
      deals[i] = { ...(yield* dealOne(table, plan, patience, comparedAgain)), copies: deal.copies };
  }
}

/** Hard deals with gentle ones than which they are easier, as far as both are measured; those of one version first. */
function upsetIn<Dealt extends Arranged>(deals: readonly Dealt[]): (readonly [hard: Dealt, gentle: Dealt])[] {
  const of = (level: Level): Dealt[] => deals.filter((deal) => deal.level === level);
  const detour = ({ difficulty }: Dealt): number => difficulty?.detour ?? Number.NaN;
  const couples = of("hard").flatMap((hard) => of("gentle").map((gentle) => [hard, gentle] as const));
  const upset = couples.filter(([hard, gentle]) => detour(hard) < detour(gentle));
  const isOne = ([hard, gentle]: (typeof upset)[number]): boolean => hard.version === gentle.version;
  return [...upset.filter(isOne), ...upset.filter((couple) => !isOne(couple))];
}

/** Which levels are upset and why, as a sentence without its stop; undefined where none is. */
function upsetLevels(deals: readonly TilesDeal[], options: TilesOptions): string | undefined {
  const [first] = upsetIn(deals);
  if (!first) return undefined;
  const [hard, gentle] = first;
  const what =
    options.versions === 1
      ? "The hard tiles are measured easier than the gentle ones"
      : `The hard tiles of version ${hard.version} are measured easier than the gentle ones of version ${gentle.version}`;
  return `${what}: ${whyUpset(options)}`;
}

function whyUpset({ fill }: TilesOptions): string {
  return fill === "blank"
    ? "blank edges inside fit the blank ones outside of gentle, and not the words outside of hard"
    : "the words of these pairs allow no other arrangement that is proven";
}

/** What is soon known of the deals of a request. */
export interface Outlook {
  /** Every one is proven to have one solution, and no word named as a decoy answers a tile's; else nothing more is known. */
  readonly holds: boolean;
  /** Where some have fewer decoys than they should, how many the one gets that gets the fewest. */
  readonly short: number | undefined;
  /** A hard one is easier than a gentle one, as far as was looked. */
  readonly upset: boolean;
}

export function* provingSoon(request: DealRequest): Steps<Outlook, unknown> {
  const options = tilesOptions(request.options);
  const { table, plans } = prepare(request, options);
  const nothing = { holds: false, short: undefined, upset: false };
  if (!table) return nothing;
  const deals: Arranged[] = [];
  for (const plan of plans) {
    yield "trying a fix";
    const deal = yield* dealOne(table, plan, glance);
    if (deal.proof.status !== "one" || deal.decoys.misfits.length > 0) return nothing;
    deals.push(deal);
  }
  const short = shortOfDecoys(deals, options)?.decoys.edges.length;
  return { holds: true, short, upset: upsetIn(deals).length > 0 };
}

/** The deal with the fewest decoys, where some has fewer than it should have and they are not named one by one. */
export function shortOfDecoys<Deal extends Pick<TilesDeal, "decoys">>(
  deals: readonly Deal[],
  { decoys: asked }: TilesOptions,
): Deal | undefined {
  const short = deals.filter(({ decoys: { edges, wanted } }) => edges.length < wanted);
  if (typeof asked === "object") return undefined;
  return [...short].sort((a, b) => a.decoys.edges.length - b.decoys.edges.length)[0];
}

/** Whether a request has the pairs that its tiles need. */
export function hasEnough(request: DealRequest): boolean {
  return prepare(request, tilesOptions(request.options)).table !== undefined;
}

/** What all deals of an activity are made from. */
interface Table {
  readonly request: DealRequest;
  readonly options: TilesOptions;
  readonly frame: Frame;
  readonly used: readonly Pair[];
}

function prepare(
  request: DealRequest,
  options: TilesOptions,
): {
  readonly pairs: readonly Pair[];
  readonly frame: Frame | undefined;
  /** Undefined where the pairs do not suffice. */
  readonly table: Table | undefined;
  readonly plans: readonly Plan[];
} {
  const pairs = takeSpread(request.sections.map(pairsOf), options.take, String(options.seed));
  const frame = writtenFrame(options.grid) ?? largestFrame(pairs.length);
  const plans = levelsOf(options).flatMap((level) => upTo(options.versions).map((i) => ({ level, version: i + 1 })));
  const needed = frame ? innerCount(frame) : 4;
  const short = pairs.length === 0 || (pairs.length < needed && options.fill === "words");
  if (!frame || short) return { pairs, frame, table: undefined, plans };
  return {
    pairs,
    frame,
    table: { request, options, frame, used: choosePairs(pairs, needed, request, options) },
    plans,
  };
}

/**
 * Takes `needed` pairs by the seed, passing over pairs that fit one already taken as long as others are left. In the order
 * of the unit.
 */
function choosePairs(
  pairs: readonly Pair[],
  needed: number,
  request: DealRequest,
  options: TilesOptions,
): readonly Pair[] {
  if (pairs.length <= needed) return pairs;
  const order = new Random(`tiles/choice/${options.seed}`).shuffle(upTo(pairs.length));
  const taken = new Set<number>();
  const keys = new Set<MatchKey>();
  const spare = pairs.length - needed;
  let passed = 0;
  for (const i of order) {
    if (taken.size === needed) break;
    const pair = pairs[i] as Pair;
    const own = [answerKey(pair.left.answers[0]), answerKey(pair.right.answers[0])];
    const clash = own.some(
      (key) => keys.has(key) || [...request.relation.partners(key)].some((other) => keys.has(other)),
    );
    if (clash && passed < spare) {
      passed++;
      continue;
    }
    taken.add(i);
    for (const key of own) keys.add(key);
  }
  return pairs.filter((_, i) => taken.has(i));
}

interface Plan {
  readonly level: Level;
  readonly version: number;
}

type Arranged = Omit<TilesDeal, "copies">;

/** Which attempt was taken, and what is known about it, by the structure that it hangs on. */
const settled = new Recent<{ readonly attempt: number; readonly verdict: Verdict }>(1000);

/** Deals until one solution is proven; else keeps the first arrangement, with what the proof found. See `takeAttempt`. */
function* dealOne(table: Table, plan: Plan, patience: Patience, among = compared): Steps<Arranged> {
  const structure = structureKey(table.request, table.options);
  if (structure === undefined) return yield* search(table, plan, patience, among);
  const key = `${patience.all} ${among} ${plan.level} ${plan.version} ${structure}`;
  yield "arrangement 1, 0 steps";
  const known = settled.find(key);
  const found = known
    ? arrange(table, plan, known.attempt, known.verdict)
    : yield* search(table, plan, patience, among);
  settled.get(key, () => ({ attempt: found.attempt, verdict: verdictOf(found) }));
  return found;
}

function verdictOf({ proof, difficulty }: Verdict): Verdict {
  return difficulty ? { proof, difficulty } : { proof };
}

function* search(table: Table, plan: Plan, patience: Patience, among: number): Steps<Arranged> {
  const { levels } = table.options;
  const wanted = levels && haveWrongNeighbours(table) ? (plan.level === "hard" ? "greatest" : "least") : undefined;
  const cost = attemptCost(table.frame);
  const { request, options, frame } = table;
  const arranged = function* (attempt: number, budget: number): Steps<Arranged, number> {
    const { solved, ...rest } = layOut(table, plan, attempt);
    yield 0;
    return { ...rest, solved, ...(yield* judging(frame, solved, request.relation, options, budget)) };
  };
  const taken = yield* takeAttempt(arranged, patience, cost, wanted, among);
  if (taken.proof.status !== "several") return taken;
  yield "counting the ways";
  return { ...taken, proof: countWays(frame, taken, request.relation, options, patience.each) };
}

/** Whether some word of the pairs in use fits more words than its own partner: else all arrangements are equally hard. */
function haveWrongNeighbours({ used, request: { relation } }: Table): boolean {
  const counts = new Map<MatchKey, number>();
  const keys = used.flatMap(({ left, right }) => [answerKey(left.answers[0]), answerKey(right.answers[0])]);
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return keys.some((key) => [...relation.partners(key)].reduce((sum, other) => sum + (counts.get(other) ?? 0), 0) > 1);
}

function arrange(table: Table, plan: Plan, attempt: number, verdict: Verdict): Arranged {
  return { ...layOut(table, plan, attempt), ...verdict };
}

/** An arrangement of which nothing is known yet. */
function layOut(
  { request, options, frame, used }: Table,
  { level, version }: Plan,
  attempt: number,
): Omit<Arranged, keyof Verdict> {
  const stream = `tiles/${options.seed}/${version}/${attempt}`;
  const places = placesOf(stream, level, frame, options.turn);
  const cells: (Edge | undefined)[][] = Array.from({ length: frame.rows * frame.columns }, () => [
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
  used.forEach((pair, i) => {
    const edge = places.inside[i];
    if (!edge) return;
    put(cells, edge[0], toPrinted(pair.left.answers[0], request.teaches));
    put(cells, edge[1], toPrinted(pair.right.answers[0], request.explains));
  });
  const decoys =
    level === "hard" ? chooseDecoys(request, options, used, outerCount(frame), `${stream}/outside`) : noDecoys;
  decoys.edges.forEach((edge, i) => {
    const spot = places.outside[i];
    if (spot) put(cells, spot, edge);
  });
  const solved = cells.map(([n, e, s, w]): TileFace => [n, e, s, w]);
  const { tiles } = places;
  const code = dealCode(seen({ level, version, frame, solved, tiles }, options));
  return { code, level, version, attempt, frame, solved, tiles, decoys };
}

/** All that can be seen of a deal, as JSON. */
function seen(
  { level, version, frame, solved, tiles }: Pick<TilesDeal, "level" | "version" | "frame" | "solved" | "tiles">,
  { turn }: TilesOptions,
): string {
  const faces = solved.map((face) => `[${face.map((edge) => (edge ? printJson(edge) : "0")).join(",")}]`);
  const rest = JSON.stringify(["tiles", level, version, turn, frame, tiles]);
  return `${rest.slice(0, -1)},[${faces.join(",")}]]`;
}

const noDecoys: Decoys = { edges: [], wanted: 0, misfits: [] };

function put(cells: (Edge | undefined)[][], spot: { readonly cell: number; readonly side: number }, edge: Edge): void {
  const cell = cells[spot.cell];
  if (cell) cell[spot.side] = edge;
}
