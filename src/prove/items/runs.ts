/** Lengths of the stretches of equal neighbours, in order. */
export function runs<T>(keys: readonly T[]): number[] {
  const lengths: number[] = [];
  keys.forEach((key, i) => {
    const last = lengths.length - 1;
    if (i > 0 && key === keys[i - 1]) lengths[last] = (lengths[last] ?? 0) + 1;
    else lengths.push(1);
  });
  return lengths;
}

/** In how many rows of `a` keys of one kind and `b` of the other there are so many runs: an entry for each number from 0. */
export function runsDistribution(a: number, b: number): bigint[] {
  const rows = new Array<bigint>(a + b + 1).fill(0n);
  if (a === 0 || b === 0) {
    rows[a + b > 0 ? 1 : 0] = 1n;
    return rows;
  }
  for (let count = 2; count <= a + b; count++) {
    const half = Math.floor(count / 2);
    const even = 2n * choose(a - 1, half - 1) * choose(b - 1, half - 1);
    const odd = choose(a - 1, half) * choose(b - 1, half - 1) + choose(a - 1, half - 1) * choose(b - 1, half);
    rows[count] = count % 2 === 0 ? even : odd;
  }
  return rows;
}

/** Numbers of runs that speak against chance: so few or fewer, so many or more. Absent where no number is that rare. */
export interface RunsLimits {
  readonly few?: number;
  readonly many?: number;
}

/**
 * Two-sided limits of the runs test (Swed & Eisenhart 1943, Ann. Math. Statist. 14:66–87), from the exact distribution.
 *
 * @param tail one in how many rows may be rejected at each end; 40 is the usual .05 for both together.
 */
export function runsLimits(a: number, b: number, tail = 40): RunsLimits {
  const rows = runsDistribution(a, b);
  const all = rows.reduce((sum, count) => sum + count, 0n);
  const rare = (count: bigint) => count * BigInt(tail) <= all;
  let few: number | undefined;
  let many: number | undefined;
  let below = 0n;
  for (let count = 1; count < rows.length; count++) {
    below += rows[count] ?? 0n;
    if (below > 0n && rare(below)) few = count;
  }
  let above = 0n;
  for (let count = rows.length - 1; count > 0; count--) {
    above += rows[count] ?? 0n;
    if (above > 0n && rare(above)) many = count;
  }
  return { ...(few !== undefined && { few }), ...(many !== undefined && { many }) };
}

function choose(n: number, k: number): bigint {
  if (k < 0 || k > n) return 0n;
  let count = 1n;
  for (let i = 1; i <= k; i++) count = (count * BigInt(n - k + i)) / BigInt(i);
  return count;
}
