import { classesOf, eulerianCircle, type LoopClasses, visitsOf } from "./classes";
import type { LoopPuzzle } from "./loops";
import { readPuzzle } from "./read-puzzle";

/**
 * The exact number of full circles that look different; `undefined` where the relation is not by classes.
 *
 * With all cards told apart it is τ(G) · ∏ (n_v − 1)!, with τ the number of spanning trees towards a root and n_v how often
 * a class is used (BEST: van Aardenne-Ehrenfest & de Bruijn 1951, Tutte & Smith 1941). Where cards print alike, Burnside's
 * lemma over the turns of the circle: with m_e cards of each look, d dividing every m_e and H_d the digraph with m_e / d,
 *
 *     (1/N) Σ_d φ(d) · (N/d) · C(H_d) / ∏ (m_e/d)!
 */
export function countCircles(puzzle: LoopPuzzle): bigint | undefined {
  const { follows, look } = readPuzzle(puzzle);
  const classes = classesOf(follows);
  return classes && circlesOf(classes, look);
}

export function circlesOf(classes: LoopClasses, look: readonly number[]): bigint {
  const visits = visitsOf(classes);
  if (!visits || !eulerianCircle(classes)) return 0n;
  const alike = new Map<number, number>();
  for (const number of look) alike.set(number, (alike.get(number) ?? 0) + 1);
  const times = [...alike.values()];
  const common = times.reduce(gcd);
  const cards = look.length;
  const trees = spanningTrees(classes, visits);
  let sum = 0n;
  for (let d = 1; d <= common; d++) {
    if (common % d !== 0) continue;
    let circuits = trees / BigInt(d) ** BigInt(classes.count - 1);
    for (const n of visits) circuits *= factorial(n / d - 1);
    let sequences = BigInt(cards / d) * circuits;
    for (const m of times) sequences /= factorial(m / d);
    sum += BigInt(totient(d)) * sequences;
  }
  return sum / BigInt(cards);
}

/**
 * Spanning trees of the digraph of classes towards a root. A class that is used once has one way on in every tree, so it is
 * first joined to the class that follows it.
 */
function spanningTrees(classes: LoopClasses, visits: Int32Array): bigint {
  const { asks, answers } = classes;
  const onward = new Int32Array(classes.count);
  answers.forEach((from, card) => {
    onward[from] = asks[card] ?? -1;
  });
  const root = visits.findIndex((n) => n > 1);
  if (root < 0) return 1n;
  const vertex = new Int32Array(classes.count).fill(-1);
  let size = 0;
  visits.forEach((n, place) => {
    if (n > 1 && place !== root) vertex[place] = size++;
  });
  const joined = (place: number): number => {
    let end = place;
    while (visits[end] === 1) end = onward[end] ?? -1;
    return vertex[end] ?? -1;
  };
  const laplacian = Array.from({ length: size }, () => new Array<bigint>(size).fill(0n));
  const add = (row: number, column: number, value: bigint) => {
    const values = laplacian[row];
    if (values && column >= 0) values[column] = (values[column] ?? 0n) + value;
  };
  answers.forEach((from, card) => {
    const row = vertex[from] ?? -1;
    const column = joined(asks[card] ?? -1);
    if (row < 0 || row === column) return;
    add(row, row, 1n);
    add(row, column, -1n);
  });
  return determinant(laplacian);
}

/** Exact, without fractions (Bareiss 1968). Changes the matrix. */
export function determinant(matrix: bigint[][]): bigint {
  let sign = 1n;
  let last = 1n;
  for (let k = 0; k < matrix.length; k++) {
    const found = matrix.findIndex((row, i) => i >= k && row[k] !== 0n);
    if (found < 0) return 0n;
    if (found !== k) {
      const [lead = [], lower = []] = [matrix[k], matrix[found]];
      matrix[k] = lower;
      matrix[found] = lead;
      sign = -sign;
    }
    const pivots = matrix[k] ?? [];
    const pivot = pivots[k] ?? 1n;
    for (const row of matrix.slice(k + 1)) {
      const factor = row[k] ?? 0n;
      for (let j = k + 1; j < row.length; j++) row[j] = ((row[j] ?? 0n) * pivot - factor * (pivots[j] ?? 0n)) / last;
    }
    last = pivot;
  }
  return sign * last;
}

export function factorial(n: number): bigint {
  let product = 1n;
  for (let i = 2n; i <= n; i++) product *= i;
  return product;
}

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

/** Euler's φ. */
function totient(n: number): number {
  let coprime = 0;
  for (let i = 1; i <= n; i++) if (gcd(i, n) === 1) coprime++;
  return coprime;
}
