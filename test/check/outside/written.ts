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

const articles =
  /^(?:the|an?|el|l[aeo]s?|l'|un[ao]?s?|une|des|i|gli|il|uno|os?|as?|uma?s?|d(?:er|ie|as)|eine?)(?:\s+|(?<='))/u;

/** A text without case, accents, article, punctuation and white space; an article with an accent may count as one. */
function bare(text: string, accented = false): string {
  const lower = text.toLowerCase();
  const letters = (accented ? lower.normalize("NFD").replace(/\p{M}/gu, "") : lower)
    .replace(articles, "")
    .normalize("NFD")
    .replace(/[^\p{L}\p{N}]/gu, "");
  return letters || text;
}

/** A text with two letters for one that joins them. */
const parted = (text: string): string =>
  text.toLowerCase().replaceAll("œ", "oe").replaceAll("æ", "ae").replaceAll("ß", "ss");

/** Whether two texts can be taken for one another: alike but for such, or but for one letter in a word of five or more. */
export function alike(a: string, b: string): boolean {
  const [p, q] = [[...bare(a)], [...bare(b)]].sort((x, y) => x.length - y.length) as [string[], string[]];
  if (p.join("") === q.join("") || bare(a, true) === bare(b, true)) return true;
  if (bare(parted(a)) === bare(parted(b))) return true;
  if (q.length < 5 || p[0] !== q[0] || q.length - p.length > 1) return false;
  const left = p.findIndex((letter, i) => letter !== q[i]);
  const start = left < 0 ? p.length : left;
  const rest = (letters: readonly string[], from: number): string => letters.slice(from).join("");
  if (q.length > p.length) return rest(p, start) === rest(q, start + 1);
  const exchanged = p[start] === q[start + 1] && q[start] === p[start + 1] && rest(p, start + 2) === rest(q, start + 2);
  return exchanged || rest(p, start + 1) === rest(q, start + 1);
}

/** The groups of words that a finding about look-alikes names. */
export function namedAlike(message: string): string[][] {
  const groups = message.matchAll(/((?:“[^”]+”(?:, | and )?)+)(?= differ only in| are easily taken| \()/gu);
  return [...groups].map(([group]) => [...group.matchAll(/“([^”]+)”/gu)].map(([, word = ""]) => word));
}

/** The lines of a section of such pairs. */
export function asItems(pairs: readonly Written[]): string {
  return pairs.map(({ left, right }) => `- ${left.join(" / ")} = ${right.join(" / ")}\n`).join("");
}
