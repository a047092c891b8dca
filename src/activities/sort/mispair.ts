import { plain } from "../../base/run";
import { Random, upTo } from "../../base/seed";
import { answerKey, type Relation } from "../../match/relation";
import { maximumMatching } from "../../prove/items/matching";
import type { Answer, Pair } from "../../unit/unit";
import { isFormPair } from "../supply";

/**
 * Wrong partners for some of the pairs: the right side of another pair, provably wrong. Which pairs hangs on the seed and their
 * number; each wrong partner is used once. As `exchanged` they come from each other as far as that goes, so that no answer is seen
 * twice, and have the same shape and near length where there is such a one (a maximum matching). As `repeated` they come from pairs that are
 * shown right: an answer that is seen twice must be wrong in one of the two places.
 *
 * @returns by index of the pair; fewer than `count` where some pair has no partner that is surely wrong.
 */
export function mispair(
  pairs: readonly Pair[],
  count: number,
  relation: Relation,
  stream: string,
  sides: "exchanged" | "repeated" = "exchanged",
): Map<number, Answer> {
  const random = new Random(stream);
  const order = random.shuffle(upTo(pairs.length));
  const chosen = new Set(order.slice(0, count));
  // Partners of all pairs are drawn, so that one that has none moves no other's.
  const able = order.map((index) => {
    const others = random.shuffle(upTo(pairs.length));
    const wrong = others.filter((other) => other !== index && surelyWrong(pairs[index], pairs[other], relation));
    const [first, last] = [true, false].map((shownWrong) =>
      wrong.filter((other) => chosen.has(other) === (shownWrong === (sides === "exchanged"))),
    );
    return { first: first ?? [], all: [...(first ?? []), ...(last ?? [])] };
  });
  const partners = order.slice(0, count).map((index, i) => {
    const like = (others: readonly number[]): number[] =>
      sides === "repeated" ? [...others] : others.filter((other) => plausible(pairs[index], pairs[other]));
    return { first: like(able[i]?.first ?? []), all: like(able[i]?.all ?? []) };
  });
  const lists = { first: partners.map(({ first }) => first), all: partners.map(({ all }) => all) };
  const best = maximumMatching(lists.first, pairs.length);
  const matched = [...maximumMatching(lists.all, pairs.length, [...best.ofLeft]).ofLeft];
  const used = new Set(matched.filter((other) => other >= 0));
  const wrong = new Map<number, Answer>();
  // Words that several pairs have may make one wrong card twice.
  const made = new Set<string>();
  const cardOf = (index: number, other: number): string =>
    [pairs[index]?.left.answers[0], pairs[other]?.right.answers[0]]
      .map((each) => each && answerKey(each))
      .join("\u0001");
  order.forEach((index, i) => {
    if (wrong.size === count) return;
    const isNew = (other: number): boolean => !made.has(cardOf(index, other));
    const other = matched[i] ?? -1;
    const partner = other >= 0 && isNew(other) ? other : able[i]?.all.find((each) => !used.has(each) && isNew(each));
    const answer = partner === undefined ? undefined : pairs[partner]?.right.answers[0];
    if (partner === undefined || !answer) return;
    used.add(partner);
    made.add(cardOf(index, partner));
    wrong.set(index, answer);
  });
  return wrong;
}

/**
 * Whether nothing that the unit says makes the printed right side of `other` an answer to `pair`: neither directly nor through a
 * word that has an answer in common with it, as a synonym has.
 */
export function surelyWrong(pair: Pair | undefined, other: Pair | undefined, relation: Relation): boolean {
  if (!pair || !other) return false;
  const answer = answerKey(other.right.answers[0]);
  const lefts = pair.left.answers.map(answerKey);
  if (pair.right.answers.some((own) => answerKey(own) === answer)) return false;
  const likes = lefts.flatMap((left) => [...relation.partners(left)].flatMap((key) => [...relation.partners(key)]));
  return [...lefts, ...likes].every((left) => left !== answer && !relation.fits(left, answer));
}

/** Forms of one verb; else pictures, or words of near length that begin alike where they begin with a small word. */
function plausible(pair: Pair | undefined, other: Pair | undefined): boolean {
  if (!pair || !other) return false;
  if (isFormPair(pair) || isFormPair(other)) {
    return (
      isFormPair(pair) &&
      isFormPair(other) &&
      pair.form.table === other.form.table &&
      pair.form.column === other.form.column
    );
  }
  const [a, b] = [pair.right.answers[0], other.right.answers[0]];
  if ((a.picture === undefined) !== (b.picture === undefined)) return false;
  const [one, two] = [plain(a.runs), plain(b.runs)];
  const longer = Math.max(one.length, two.length);
  return smallWord(one) === smallWord(two) && Math.abs(one.length - two.length) <= Math.max(4, longer * 0.4);
}

/** `the`, `to`, `der`: a first word of up to three letters with others behind it. */
function smallWord(text: string): string {
  return /^(\S{1,3})\s/u.exec(text)?.[1]?.toLowerCase() ?? "";
}
