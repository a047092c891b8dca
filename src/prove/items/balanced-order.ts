import { Recent } from "../../base/recent";
import type { Random } from "../../base/seed";
import { drawBelow } from "./draw";
import { runs } from "./runs";

/** What rows of keys may look like. */
export interface KeyRule {
  readonly trues: number;
  readonly falses: number;
  /** No stretch of equal keys is longer. */
  readonly longest: number;
  /** Rows that repeat a block all the way count too. */
  readonly regular: boolean;
}

/** In how many ways a row can go on: `ways(trues left, falses left, last key, length of its run)`. */
type Ways = (trues: number, falses: number, last: boolean, run: number) => bigint;

/** How many rows of keys keep to the rule, exactly. */
export function countKeys(rule: KeyRule): bigint {
  const all = total(waysOf(rule.longest), rule);
  return rule.regular ? all : all - BigInt(regularRows(rule).length);
}

/** Keys in an order that gives nothing away. */
export interface DealtKeys {
  readonly keys: readonly boolean[];
  /** The longest run that was allowed: what was asked for, or what so uneven keys need. */
  readonly longest: number;
}

/**
 * A row of keys without long runs that repeats no block all the way, each such row as likely as the others. Where there is none,
 * runs are let grow until there is one; where there are none but regular rows, one that does not alternate, else any.
 */
export function drawKeys(random: Random, trues: number, falses: number, wanted = 3): DealtKeys {
  let longest = wanted;
  while (countKeys({ trues, falses, longest, regular: true }) === 0n) longest++;
  const ways = waysOf(longest);
  const rule = { trues, falses, longest };
  const all = total(ways, rule);
  const regular = regularRows(rule);
  const refused = [regular, regular.filter(alternates), []].find((rows) => BigInt(rows.length) < all) ?? [];
  for (;;) {
    const keys = rowAt(ways, rule, drawBelow(random, all));
    // Few rows are regular, so a few draws do.
    if (!refused.some((row) => row.every((key, i) => key === keys[i]))) return { keys, longest };
  }
}

/** Item indices in an order in which their keys give nothing away. */
export function balancedOrder(random: Random, keys: readonly boolean[], longest = 3): number[] {
  const kind = (wanted: boolean) => random.shuffle(keys.flatMap((key, i) => (key === wanted ? [i] : [])));
  const trues = kind(true);
  const falses = kind(false);
  const row = drawKeys(random, trues.length, falses.length, longest).keys;
  return row.map((key) => (key ? trues : falses).pop() ?? -1);
}

/** Whether keys do nothing but change; three at least, since two can do little else. */
export function alternates(keys: readonly boolean[]): boolean {
  return keys.length > 2 && keys.every((key, i) => i === 0 || key !== keys[i - 1]);
}

/** Lengths of blocks that learners would see repeated. Ours. */
const blocks = [2, 3, 4];

/** Whether keys repeat one short block from first to last, twice at least, or do nothing but change. */
export function isRegular(keys: readonly boolean[]): boolean {
  const repeats = (length: number): boolean => keys.every((key, i) => i < length || key === keys[i - length]);
  return alternates(keys) || blocks.some((length) => 2 * length <= keys.length && repeats(length));
}

/* What hangs on numbers alone is asked for with each edit, and counted once. */
const keptRows = new Recent<readonly (readonly boolean[])[]>(100);
const keptWays = new Recent<Ways>(4);

/** All regular rows of a rule. */
function regularRows(rule: Omit<KeyRule, "regular">): readonly (readonly boolean[])[] {
  return keptRows.get(`${rule.trues}/${rule.falses}/${rule.longest}`, () => regularRowsAnew(rule));
}

function regularRowsAnew({ trues, falses, longest }: Omit<KeyRule, "regular">): boolean[][] {
  const size = trues + falses;
  const found = new Map<string, boolean[]>();
  for (const length of blocks) {
    for (let block = 0; block < 2 ** length; block++) {
      const row = Array.from({ length: size }, (_, i) => ((block >> (i % length)) & 1) === 1);
      const right = row.filter((key) => key).length === trues && Math.max(0, ...runs(row)) <= longest;
      if (right && isRegular(row)) found.set(row.join(), row);
    }
  }
  return [...found.values()];
}

function waysOf(longest: number): Ways {
  return keptWays.get(String(longest), () => waysAnew(longest));
}

function waysAnew(longest: number): Ways {
  const known = new Map<string, bigint>();
  const ways: Ways = (trues, falses, last, run) => {
    if (trues < 0 || falses < 0 || run > longest) return 0n;
    if (trues + falses === 0) return 1n;
    const key = `${trues}/${falses}/${last}/${run}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const count =
      ways(trues - 1, falses, true, last ? run + 1 : 1) + ways(trues, falses - 1, false, last ? 1 : run + 1);
    known.set(key, count);
    return count;
  };
  return ways;
}

function total(ways: Ways, { trues, falses }: Pick<KeyRule, "trues" | "falses">): bigint {
  return ways(trues, falses, true, 0);
}

/** The row of a rank, rows that go on with `true` first. */
function rowAt(ways: Ways, { trues, falses }: Pick<KeyRule, "trues" | "falses">, rank: bigint): boolean[] {
  const left = { trues, falses };
  const keys: boolean[] = [];
  let rest = rank;
  let run = 0;
  while (left.trues + left.falses > 0) {
    const last = keys.at(-1) ?? true;
    const withTrue = ways(left.trues - 1, left.falses, true, last ? run + 1 : 1);
    const key = rest < withTrue;
    if (key) left.trues--;
    else {
      left.falses--;
      rest -= withTrue;
    }
    run = key === last ? run + 1 : 1;
    keys.push(key);
  }
  return keys;
}
