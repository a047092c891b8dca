import type { OrderPuzzle } from "./orders";

/** Strips with all that comes before each, as sets of bits; `undefined` where strips wait for each other in a circle. */
export interface PartialOrder {
  readonly size: number;
  /** For each strip the set of those before it, at once or through others. */
  readonly earlier: readonly bigint[];
  readonly later: readonly bigint[];
  /** For each strip a number that says how it prints. */
  readonly look: readonly number[];
}

/** @throws RangeError where a pair names a strip that is not there. */
export function partialOrderOf({ texts, before }: OrderPuzzle): PartialOrder | undefined {
  const numbers = new Map<string, number>();
  for (const text of texts) if (!numbers.has(text)) numbers.set(text, numbers.size);
  return closed(
    texts.map((text) => numbers.get(text) ?? -1),
    before,
  );
}

function closed(look: readonly number[], before: OrderPuzzle["before"]): PartialOrder | undefined {
  const size = look.length;
  const followers: number[][] = look.map(() => []);
  const waits = new Int32Array(size);
  for (const [a, b] of before) {
    if (followers[a] === undefined || followers[b] === undefined)
      throw new RangeError("an order names a strip that is not there");
    followers[a].push(b);
    waits[b] = (waits[b] ?? 0) + 1;
  }
  const sorted = look.map((_, strip) => strip).filter((strip) => waits[strip] === 0);
  const earlier = new Array<bigint>(size).fill(0n);
  const later = new Array<bigint>(size).fill(0n);
  for (const strip of sorted)
    for (const next of followers[strip] ?? []) {
      earlier[next] = (earlier[next] ?? 0n) | (earlier[strip] ?? 0n) | bit(strip);
      waits[next] = (waits[next] ?? 0) - 1;
      if (waits[next] === 0) sorted.push(next);
    }
  if (sorted.length < size) return undefined;
  for (const strip of sorted.reverse())
    for (const next of followers[strip] ?? []) later[strip] = (later[strip] ?? 0n) | (later[next] ?? 0n) | bit(next);
  return { size, earlier, later, look };
}

/**
 * The same orders as they look, but strips that print alike and have the same before and after them put in the order of
 * their numbers: exchanging them makes no other order.
 */
export function withAlikeInOrder(order: PartialOrder): PartialOrder {
  const last = new Map<string, number>();
  const before: [number, number][] = [];
  order.look.forEach((look, strip) => {
    const key = `${look}/${order.earlier[strip]}/${order.later[strip]}`;
    const known = last.get(key);
    if (known !== undefined) before.push([known, strip]);
    last.set(key, strip);
    for (const earlier of members(order.earlier[strip] ?? 0n)) before.push([earlier, strip]);
  });
  return before.length > 0 ? (closed(order.look, before) ?? order) : order;
}

export function bit(strip: number): bigint {
  return 1n << BigInt(strip);
}

/** The strips of a set, in order of their numbers. */
export function members(set: bigint): number[] {
  const strips: number[] = [];
  for (let strip = 0, rest = set; rest > 0n; strip++, rest >>= 1n) if (rest & 1n) strips.push(strip);
  return strips;
}

/** The strips that may come next when those of a set are laid. */
export function sources(order: PartialOrder, laid: bigint): number[] {
  const free: number[] = [];
  for (let strip = 0; strip < order.size; strip++)
    if ((laid & bit(strip)) === 0n && ((order.earlier[strip] ?? 0n) & ~laid) === 0n) free.push(strip);
  return free;
}
