import { Random } from "../base/seed";
import type { Statement } from "../unit/unit";
import type { DealRequest } from "./contract";
import { statementGroups } from "./form-statements";
import type { DealPlan } from "./levels";
import type { Level } from "./options";
import { type Claim, claimOf, fineShare, type Twins, trueShare } from "./statements";
import { chooseForVersions, spread, type Uses } from "./supply";
import { TwinMaker } from "./twins";

/*
 * Which statements each deal of `sort` and `calls` gets, and which false twins are made of them.
 */

export interface ClaimOrder {
  readonly take?: number | undefined;
  readonly twins: Twins;
  /** A twin stands in place of its true statement; else beside it. */
  readonly replace?: boolean;
  /** With levels, `gentle` has no more twins than balance needs, and `hard` has `twins` of them, or half of the false ones. */
  readonly levels?: readonly Level[] | undefined;
  /** Statements to keep apart, and how many must be left when nothing says how many to take; 1 if left out. */
  readonly reserve?: number;
  readonly least?: number;
  readonly seed: number;
}

/** What one deal gets. */
export interface ClaimHand {
  /** In the order of the unit, a twin right after its true statement or in its place. */
  readonly claims: readonly Claim[];
  /** Twins that could not be made though they were asked for by number. */
  readonly missingTwins: number;
}

export interface ClaimSupply {
  /** In the order of the plans. */
  readonly hands: readonly ClaimHand[];
  /** Statements that no deal has. */
  readonly reserve: readonly Claim[];
}

/** Statements chosen for one version, with the twins of some, before its level changes them. */
interface Choice {
  /** Tells its draws from those of other versions. */
  readonly seed: string;
  readonly chosen: readonly Statement[];
  readonly twins: ReadonlyMap<Statement, Claim>;
  readonly missing: number;
}

/**
 * Statements for each of some deals, and false twins of some. With `take` there are so many in all, twins included, chosen by the
 * seed, spread over the sections, half of them true as far as the unit has them; further versions choose those that were used
 * least. Levels of a version have the same statements, but for those that twins take the place of, and as many false ones.
 */
export function supplyClaims(request: DealRequest, order: ClaimOrder, plans: readonly DealPlan[]): ClaimSupply {
  const groups = statementGroups(request.sections);
  const maker = new TwinMaker(request, groups.flat(), order.seed);
  const kept = Math.max(0, Math.min(order.reserve ?? 0, groups.flat().length - (order.take ?? order.least ?? 1)));
  const without = (some: readonly Statement[]): Statement[][] =>
    groups.map((group) => group.filter((statement) => !some.includes(statement)));
  let reserve: Reserve | undefined;
  const choices: Choice[] = [];
  const versions = Math.max(1, ...plans.map(({ version }) => version));
  chooseForVersions(versions, order.seed, (seed, uses: Uses<Statement>) => {
    const made = chooseStatements(without(reserve?.kept ?? []), reserve ? 0 : kept, order, maker, { seed, uses });
    // What is kept for ties comes from what the first version leaves, and no other version has it.
    const first = reserve ? undefined : mixedReserve(made, groups, kept, order, maker);
    reserve ??= first?.reserve;
    const choice = first?.choice ?? made;
    choices.push(choice);
    return choice.chosen;
  });
  const hands = plans.flatMap(({ level, version }): ClaimHand[] => {
    const choice = choices[version - 1];
    if (!choice) return [];
    if (level !== "hard" || !order.levels) return [{ claims: claimsOf(choice, order), missingTwins: choice.missing }];
    const made = order.replace
      ? harderInPlace(choice, order, maker, spareTrue(choice, choices, without(reserve?.kept ?? [])))
      : harder(choice, order, maker);
    return [{ claims: claimsOf(made, order), missingTwins: made.missing }];
  });
  const { kept: own = [], twins } = reserve ?? {};
  return { hands, reserve: own.map((statement) => twins?.get(statement) ?? claimOf(statement)) };
}

interface Reserve {
  readonly kept: readonly Statement[];
  readonly twins: ReadonlyMap<Statement, Claim>;
}

/**
 * Statements for ties from those that a choice leaves, true and false ones: where all that are left are alike, some change places
 * with others of the choice as long as that stays fair, else twins take the place of true ones.
 */
function mixedReserve(
  made: Choice,
  groups: readonly (readonly Statement[])[],
  count: number,
  order: ClaimOrder,
  maker: TwinMaker,
): { readonly reserve: Reserve; readonly choice: Choice } {
  const all = groups.flat();
  const left = groups.map((group) => group.filter((statement) => !made.chosen.includes(statement)));
  const inTurn = spread(left, new Random(`take/reserve/${made.seed}`));
  const kept: Statement[] = [];
  const alike = (truth: boolean): Statement[] => kept.filter((each) => each.truth === truth);
  for (const each of inTurn)
    if (kept.length < count && alike(each.truth).length < Math.ceil(count / 2)) kept.push(each);
  for (const each of inTurn) if (kept.length < count && !kept.includes(each)) kept.push(each);
  let { chosen } = made;
  const enough = Math.floor(kept.length / 2);
  const few = alike(true).length < enough;
  for (const each of new Random(`reserve/${made.seed}`).shuffle(chosen)) {
    if (alike(few).length >= enough) break;
    const other = alike(!few).at(-1);
    if (!other || each.truth !== few || made.twins.has(each)) continue;
    const next = inOrder([...chosen.filter((one) => one !== each), other], all);
    const share = trueShare(claimsOf({ ...made, chosen: next }, order));
    if (share < fineShare.least || share > fineShare.most) continue;
    chosen = next;
    kept.splice(kept.indexOf(other), 1, each);
  }
  const wanted = order.twins === "auto" ? Math.max(0, enough - alike(false).length) : 0;
  const able = chosen.filter((each) => !made.twins.has(each) && maker.canTwin(each));
  while (maker.twinsOf(kept, wanted).size < wanted) {
    const [each, other] = [able.shift(), kept.find((one) => !maker.canTwin(one))];
    if (!each || !other) break;
    chosen = inOrder([...chosen.filter((one) => one !== each), other], all);
    kept.splice(kept.indexOf(other), 1, each);
  }
  const reserve = { kept: inOrder(kept, all), twins: maker.twinsOf(kept, wanted) };
  return { reserve, choice: { ...made, chosen } };
}

function inOrder(statements: readonly Statement[], all: readonly Statement[]): Statement[] {
  return all.filter((statement) => statements.includes(statement));
}

/** True statements that a choice leaves, those first that the fewest choices have. */
function spareTrue(
  { chosen, seed }: Choice,
  choices: readonly Choice[],
  groups: readonly (readonly Statement[])[],
): Statement[] {
  const uses = new Map<Statement, number>();
  for (const statement of choices.flatMap((choice) => choice.chosen))
    uses.set(statement, (uses.get(statement) ?? 0) + 1);
  const inTurn = spread(groups, new Random(`hard/${seed}/spare`), uses);
  return inTurn.filter((statement) => statement.truth && !chosen.includes(statement));
}

/** Why hard statements are the same as gentle ones; undefined where they are not. */
export function whySameClaims(request: DealRequest, order: ClaimOrder, plans: readonly DealPlan[]): string | undefined {
  const levels: readonly Level[] = ["gentle", "hard"];
  const both = levels.map((level) => {
    const { hands } = supplyClaims(
      request,
      { ...order, levels },
      plans.map(({ version }) => ({ level, version })),
    );
    return JSON.stringify(hands.map(({ claims }) => claims.map(({ key, truth }) => [key, truth])));
  });
  if (both[0] !== both[1]) return undefined;
  const maker = new TwinMaker(request, statementGroups(request.sections).flat(), order.seed);
  const hands = supplyClaims(request, order, plans).hands.flatMap(({ claims }) => claims);
  if (order.twins === "none" || order.twins === 0)
    return "hard makes false twins, and `twins` says that there are none";
  if (order.replace && hands.some(({ item, truth }) => truth && maker.canTwin(item)))
    return "hard makes false twins in place of true statements, and too few true ones would be left";
  return "hard makes false twins of true statements with a tied form, as `[meço](#medir)`, and there are none besides those that balance needs";
}

function chooseStatements(
  groups: readonly (readonly Statement[])[],
  kept: number,
  order: ClaimOrder,
  maker: TwinMaker,
  { seed, uses }: { readonly seed: string; readonly uses: Uses<Statement> },
): Choice {
  const most = Math.min(order.take ?? Number.POSITIVE_INFINITY, groups.flat().length - kept);
  const twins = order.levels && order.twins !== "none" ? "auto" : order.twins;
  const wanted = twins === "auto" ? undefined : twins === "none" ? 0 : twins;
  // Where `take` says how many there are in all, a twin beside its statement leaves room for one fewer.
  const choose = (count: number): { chosen: readonly Statement[]; twins: Map<Statement, Claim> } => {
    const room =
      order.take === undefined || order.replace
        ? most
        : Math.max(Math.min(1, most), Math.min(most, order.take - count));
    const inTurn = spread(groups, new Random(`take/${seed}`), uses);
    const chosen = new Set(room >= inTurn.length ? inTurn : balanced(inTurn, room, count, order, maker, uses));
    const own = groups.flat().filter((statement) => chosen.has(statement));
    return { chosen: own, twins: maker.twinsOf(own, count) };
  };
  let count = wanted ?? 0;
  let made = choose(count);
  if (wanted === undefined) {
    while (trueShare(claimsOf({ seed, ...made, missing: 0 }, order)) > fineShare.most) {
      const next = choose(++count);
      if (next.twins.size < count) break;
      made = next;
    }
  } else while (made.twins.size < count) made = choose(--count);
  return { seed, ...made, missing: wanted === undefined ? 0 : wanted - made.twins.size };
}

/**
 * So many statements of an order that with `twins` false ones half are true, as far as there are; first true ones of which twins
 * can be made, as many as some level makes.
 */
function balanced(
  inTurn: readonly Statement[],
  room: number,
  twins: number,
  { levels, twins: asked, replace }: ClaimOrder,
  maker: TwinMaker,
  uses: Uses<Statement>,
): readonly Statement[] {
  const half = Math.ceil((replace ? room : room + twins) / 2);
  const most = { right: replace ? half + twins : half, wrong: Math.max(0, half - twins) };
  const tied = levels?.includes("hard") ? (typeof asked === "number" ? asked : Math.ceil(half / 2)) : twins;
  const able = new Set(tied > 0 ? inTurn.filter((statement) => maker.canTwin(statement)) : []);
  const chosen = new Set([...able].slice(0, Math.min(tied, most.right)));
  // The others of which twins can be made are left to further versions, as long as there are unused ones besides.
  const used = (statement: Statement): number => uses.get(statement) ?? 0;
  const rest = [...inTurn].sort((a, b) => used(a) - used(b) || Number(able.has(a)) - Number(able.has(b)));
  for (const statement of rest) {
    const alike = [...chosen].filter(({ truth }) => truth === statement.truth).length;
    if (chosen.size < room && alike < (statement.truth ? most.right : most.wrong)) chosen.add(statement);
  }
  for (const statement of inTurn) if (chosen.size < room) chosen.add(statement);
  return [...chosen].slice(0, room);
}

/** The same with as many false ones, of which more are twins: they take the place of false statements as they are written. */
function harder(choice: Choice, { twins: asked }: ClaimOrder, maker: TwinMaker): Choice {
  const { chosen, twins, seed } = choice;
  const written = chosen.filter(({ truth }) => !truth);
  const target = asked === "none" ? 0 : asked === "auto" ? Math.ceil((written.length + twins.size) / 2) : asked;
  const made = maker.twinsOf(chosen, Math.max(target, twins.size));
  const dropped = new Set(new Random(`hard/${seed}`).shuffle(written).slice(0, made.size - twins.size));
  return {
    seed,
    chosen: chosen.filter((statement) => !dropped.has(statement)),
    twins: made,
    missing: typeof asked === "number" ? Math.max(0, target - made.size) : 0,
  };
}

/**
 * The same where twins stand in place of their true statements: further true ones fill in for these. Where there are none left, each
 * further twin makes the list shorter by one, as long as that stays fair and enough are left; unless `twins` asks for so many.
 */
function harderInPlace(choice: Choice, order: ClaimOrder, maker: TwinMaker, spare: readonly Statement[]): Choice {
  const { chosen, twins, seed } = choice;
  const { twins: asked, least = 1 } = order;
  const written = new Random(`hard/${seed}`).shuffle(chosen.filter(({ truth }) => !truth));
  const target = asked === "none" ? 0 : asked === "auto" ? Math.ceil((written.length + twins.size) / 2) : asked;
  for (let count = target; count > twins.size; count--) {
    const more = count - twins.size;
    const further = spare.slice(0, more);
    const dropped = written.slice(0, asked === "auto" ? more : further.length);
    const own = inOrder([...chosen.filter((each) => !dropped.includes(each)), ...further], maker.all);
    const made = { seed, chosen: own, twins: maker.twinsOf(own, count), missing: target - count };
    const claims = claimsOf(made, order);
    const fair = asked !== "auto" || (claims.length >= least && trueShare(claims) >= fineShare.least);
    if (made.twins.size === count && fair) return typeof asked === "number" ? made : { ...made, missing: 0 };
  }
  return { ...choice, missing: typeof asked === "number" ? Math.max(0, target - twins.size) : 0 };
}

function claimsOf({ chosen, twins }: Choice, { replace }: ClaimOrder): Claim[] {
  return chosen.flatMap((statement) => {
    const twin = twins.get(statement);
    if (twin && replace) return [twin];
    return [claimOf(statement), ...(twin ? [twin] : [])];
  });
}

/** The claims of several deals, each once, in the order of the unit. */
export function allClaims(request: DealRequest, supplies: readonly (readonly Claim[])[]): Claim[] {
  const found = new Map<string, Claim>();
  const statements = statementGroups(request.sections).flat();
  const rank = ({ item }: Claim): number => statements.indexOf(item);
  for (const claim of supplies.flat()) {
    const name = `${rank(claim)} ${claim.truth} ${claim.text}`;
    if (!found.has(name)) found.set(name, claim);
  }
  return [...found.values()].sort((a, b) => rank(a) - rank(b) || Number(b.truth) - Number(a.truth));
}
