/*
 * Pairs as a teacher writes them, and who answers whom, by their strings alone: written apart from the product's own relation,
 * after what the reference says of it.
 */

/** A pair as written: both sides with all accepted answers, the printed one first. */
export interface Written {
  readonly left: readonly string[];
  readonly right: readonly string[];
}

const quotation = /^(["'“”„‘’‚«»‹›])(.+)(["'“”‘’«»‹›])$/u;

/**
 * The text for which two texts are the same to a learner: composed, white space collapsed, without outer quotation marks and
 * final full stop; as written where nothing would be left.
 */
export function same(text: string): string {
  const before = known.get(text);
  if (before !== undefined) return before;
  const key = sameAnew(text);
  known.set(text, key);
  return key;
}

const known = new Map<string, string>();

function sameAnew(text: string): string {
  const plain = text.normalize("NFC").split(/\s+/u).join(" ").trim();
  const inner = quotation.exec(plain)?.[2] ?? plain;
  const unstopped = inner.endsWith(".") && !inner.endsWith("..") ? inner.slice(0, -1) : inner;
  return unstopped.trim() || plain;
}

const holds = (side: readonly string[], text: string): boolean => side.some((each) => same(each) === same(text));

/** Whether one text answers the other by one of the pairs. */
export function fittingBy(pairs: readonly Written[]): (a: string, b: string) => boolean {
  const said = new Set<string>();
  for (const { left, right } of pairs)
    for (const a of left) for (const b of right) said.add(`${same(a)}\n${same(b)}`).add(`${same(b)}\n${same(a)}`);
  return (a, b) => said.has(`${same(a)}\n${same(b)}`);
}

/** Whether an answer of one pair stands on the other side of another one. */
export function crossed(p: Written, q: Written): boolean {
  return p.left.some((text) => holds(q.right, text)) || p.right.some((text) => holds(q.left, text));
}

/**
 * Sets of pairs that share an answer on one side, as their places: each set once, however many answers they share.
 */
export function sharing(pairs: readonly Written[]): number[][] {
  const sets = new Map<string, number[]>();
  for (const side of ["left", "right"] as const)
    for (const text of pairs.flatMap((pair) => pair[side])) {
      const set = pairs.flatMap((pair, i) => (holds(pair[side], text) ? [i] : []));
      if (set.length > 1) sets.set(set.join(), set);
    }
  return [...sets.values()];
}

/** The lines of a section of such pairs. */
export function asItems(pairs: readonly Written[]): string {
  return pairs.map(({ left, right }) => `- ${left.join(" / ")} = ${right.join(" / ")}\n`).join("");
}
