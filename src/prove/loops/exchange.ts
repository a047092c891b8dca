import { circleKey, stretch } from "./circle";
import { type LoopClasses, placesOf } from "./classes";
import type { Circle } from "./loops";

/**
 * A full circle that looks different from the given one, or `undefined` where it is the only one.
 *
 * Any two Eulerian circuits are joined by exchanges of two stretches that lead from one class to one other (Ukkonen 1992,
 * Pevzner 1995), so a circle is the only one iff no exchange changes how it looks. The *rounds* of a class are the stretches
 * from one of its places to its next. It is enough to try
 *
 *   - exchanging two neighbouring rounds of a class, which together give all orders of its rounds; and, where that changes
 *     nothing, so that all rounds of each class but at most one look alike,
 *   - for the odd round and one of the others, exchanging how they start, up to a class that both come to.
 *
 * Linear where no two cards print alike, else at worst quadratic.
 */
export function otherCircle(circle: Circle, classes: LoopClasses, look: readonly number[]): Circle | undefined {
  const places = placesOf(classes, circle);
  const plain = plainExchange(circle, classes, places);
  if (!plain) return undefined;
  const key = circleKey(look, circle);
  const other = (candidate: Circle) => circleKey(look, candidate) !== key;
  if (other(plain)) return plain;

  const alike = matcher(circle, look);
  for (const stops of places) {
    if (stops.length < 3) continue;
    for (const [i, a] of stops.entries()) {
      const b = stops[(i + 1) % stops.length] ?? 0;
      const c = stops[(i + 2) % stops.length] ?? 0;
      if (alike.same(a, b, b, c)) continue;
      const candidate = join(circle, [b, c], [a, b], [c, a]);
      if (other(candidate)) return candidate;
    }
  }
  for (const stops of places) {
    const candidate = stops.length < 2 ? undefined : crossed(circle, classes, places, stops, alike);
    if (candidate && other(candidate)) return candidate;
  }
  return undefined;
}

/** The exchange that there is when a class is used three times or two repeated classes interlace; looks do not count. */
function plainExchange(
  circle: Circle,
  classes: LoopClasses,
  places: readonly (readonly number[])[],
): Circle | undefined {
  for (const [a, b, c] of places) {
    if (a !== undefined && b !== undefined && c !== undefined) return join(circle, [b, c], [a, b], [c, a]);
  }
  const open: number[] = [];
  for (const card of circle) {
    const here = classes.answers[card] ?? -1;
    const [p, q] = places[here] ?? [];
    if (p === undefined || q === undefined) continue;
    if (circle[p] === card) {
      open.push(here);
      continue;
    }
    const inner = open.pop() ?? -1;
    const [s, t] = places[inner] ?? [];
    if (inner !== here && s !== undefined && t !== undefined) return join(circle, [q, t], [s, q], [p, s], [t, p]);
  }
  return undefined;
}

/** The rounds of a class, of which all but at most one look alike: the exchange of two starts, [A B] [C D] to [C B] [A D]. */
function crossed(
  circle: Circle,
  classes: LoopClasses,
  places: readonly (readonly number[])[],
  stops: readonly number[],
  alike: Matcher,
): Circle | undefined {
  const { length } = circle;
  for (const [i, p] of stops.entries()) {
    const q = stops[(i + 1) % stops.length] ?? 0;
    const r = stops[(i + 2) % stops.length] ?? 0;
    if (alike.same(p, q, q, r)) continue;
    const rounds = { first: (q - p + length) % length, second: (r - q + length) % length };
    const ahead = alike.ahead(p, q, Math.min(rounds.first, rounds.second));
    const behind = alike.behind(q, r, Math.min(rounds.first, rounds.second));
    for (let a = 1; a < rounds.first; a++) {
      const s = (p + a) % length;
      for (const t of places[classes.answers[circle[s] ?? -1] ?? -1] ?? []) {
        const c = (t - q + length) % length;
        if (c === 0 || c >= rounds.second) continue;
        const sameStart = a === c && ahead >= a;
        const sameEnd = rounds.first - a === rounds.second - c && behind >= rounds.first - a;
        if (!sameStart && !sameEnd)
          return join(circle, [q, t], [s, q], [p, s], [t, r], ...(r === p ? [] : [[r, p] as const]));
      }
    }
    return undefined;
  }
  return undefined;
}

function join(circle: Circle, ...parts: readonly (readonly [from: number, to: number])[]): Circle {
  return parts.flatMap(([from, to]) => stretch(circle, from, to));
}

type Matcher = ReturnType<typeof matcher>;

/** Compares how stretches of a circle look. */
function matcher(circle: Circle, look: readonly number[]) {
  const { length } = circle;
  // Three rounds, read from the middle one, so that no place needs a remainder.
  const word = Int32Array.from({ length: 3 * length }, (_, i) => look[circle[i % length] ?? -1] ?? -1);
  /** How many cards look alike from two places on. */
  const ahead = (a: number, b: number, most: number): number => {
    let i = 0;
    while (i < most && word[a + i] === word[b + i]) i++;
    return i;
  };
  /** The same before two places, backwards. */
  const behind = (a: number, b: number, most: number): number => {
    let i = 0;
    while (i < most && word[length + a - 1 - i] === word[length + b - 1 - i]) i++;
    return i;
  };
  /** Whether two stretches look alike. */
  const same = (a: number, aEnd: number, b: number, bEnd: number): boolean => {
    const size = (aEnd - a + length) % length;
    return size === (bEnd - b + length) % length && ahead(a, b, size) === size;
  };
  return { ahead, behind, same };
}
