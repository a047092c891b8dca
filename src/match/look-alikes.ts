import { Recent } from "../base/recent";
import { finished, mapped, type Steps } from "../base/steps";
import { lettersApart, withoutAccents } from "./accents";
import { withoutArticle } from "./articles";
import { fold } from "./fold";
import type { MatchKey, Relation } from "./relation";

/*
 * Texts that a hurried reader takes for one another. They are different texts to the relation; these are for hints, and for
 * asking what becomes of a puzzle when the difference is overlooked.
 */

export const differences = ["case", "accent", "article", "punctuation", "letter"] as const;

export type Difference = (typeof differences)[number];

/** A text to compare; pictures are never alike. */
export interface Worded {
  readonly key: MatchKey;
  readonly text: string;
  /** BCP 47; only texts of one language are compared. */
  readonly lang: string;
}

/** Texts that differ in nothing but these. At least two keys, in the order in which they were met. */
export interface LookAlikes {
  /** Of all of them; BCP 47. */
  readonly lang: string;
  readonly keys: readonly MatchKey[];
  readonly differences: readonly Difference[];
}

/** What is asked of a relation by those who arrange and prove. */
export interface Matching extends Pick<Relation, "fits" | "partners"> {
  /** Where differences are overlooked: the relation as it is, and what a text is taken for, itself included. */
  readonly overlooked?: {
    readonly under: Pick<Relation, "partners">;
    like(key: MatchKey): ReadonlySet<MatchKey>;
  };
}

/**
 * Groups of texts that differ only in case, accents, article or punctuation, then couples of texts that differ in one letter of
 * one word: a letter more, less, another or two exchanged, in a word of five or more letters that keeps its first one (common
 * practice, no source). White space counts as punctuation.
 */
export function lookAlikes(texts: readonly Worded[]): readonly LookAlikes[] {
  return finished(lookingAlike(texts));
}

/** The same with a pause after each text that was not looked at of late. */
export function* lookingAlike(texts: readonly Worded[]): Steps<readonly LookAlikes[], undefined> {
  const name = texts.map(numberOf).join(" ");
  const found = kept.find(name) ?? (yield* lookAnew(texts));
  return kept.get(name, () => found);
}

const kept = new Recent<readonly LookAlikes[]>(200);

/** Numbers that stand for texts, by language: names of them are short. None is given twice. */
const numbers = new Recent<Recent<number>>(20);
let lastNumber = 0;

function numberOf({ key, text, lang }: Worded): number {
  const known = numbers.get(lang, () => new Recent(20_000));
  return known.get(key === text ? text : `${key}\u0000${text}`, () => ++lastNumber);
}

function* lookAnew(texts: readonly Worded[]): Steps<LookAlikes[], undefined> {
  const distinct = new Map<string, Worded>();
  for (const each of texts) {
    if (!each.key.startsWith("\u0000")) distinct.set(`${each.lang}\u0000${each.key}`, each);
  }
  const seen = yield* mapped(distinct.values(), (each) => ({ ...each, form: formOf(each.text, each.lang) }));
  const groups = withoutParts(gathered(namedBare(seen))).map((group) => ({
    lang: group[0]?.lang ?? "",
    keys: group.map(({ key }) => key),
    differences: differencesOf(group),
  }));
  const named = new Set<string>();
  const letters: LookAlikes[] = [];
  for (const group of gathered(seen.map((each) => [each, each.form.near] as const))) {
    for (const [i, a] of group.entries()) {
      for (let k = i + 1; k < group.length; k++) {
        const b = group[k] as typeof a;
        if (!nearlyOne(a.form.words, b.form.words) || a.form.bare === b.form.bare) continue;
        // “o aluno” and “a aluna” differ in two words.
        if (a.form.article !== b.form.article && a.form.article !== "" && b.form.article !== "") continue;
        const name = JSON.stringify([a.lang, a.key, b.key]);
        if (named.has(name)) continue;
        named.add(name);
        letters.push({ lang: a.lang, keys: [a.key, b.key], differences: ["letter"] });
      }
    }
  }
  return [...groups, ...letters];
}

type Seen = Worded & { readonly form: Form };

/**
 * Texts with what is left of them. Behind “à” a word is only without it where “a” stands before the same one: “à praia” is “a praia”
 * but for an accent, and no “praia”. One with an article is all of it too where another text is that without a space or an
 * apostrophe: “a fim” and “afim”, “l'oro” and “loro”.
 */
function namedBare(seen: readonly Seen[]): [Seen, string[]][] {
  const name = (...parts: readonly string[]): string => parts.join("\u0000");
  const accented = seen.some(({ form }) => form.accented);
  const plain = new Set(accented ? seen.map(({ lang, form }) => name(lang, form.article, form.bare)) : []);
  const written = seen.some(({ form }) => form.whole !== undefined);
  const whole = new Set(written ? seen.flatMap(({ lang, form }) => (form.whole ? [] : [name(lang, form.bare)])) : []);
  return seen.map((each) => {
    const { lang, form } = each;
    const like = form.accented;
    const isLike = like && plain.has(name(lang, like.article, like.bare));
    const bare = isLike ? like.bare : form.bare;
    return [each, form.whole !== undefined && whole.has(name(lang, form.whole)) ? [bare, form.whole] : [bare]];
  });
}

/** Texts of one language that share a name, once for each name that several have, in the order of their first ones. */
function gathered(named: readonly (readonly [Seen, readonly string[]])[]): Seen[][] {
  const byLang = new Map<string, Map<string, number | Seen[]>>();
  const groups: { readonly first: number; readonly members: Seen[] }[] = [];
  for (const [at, [item, names]] of named.entries()) {
    const own = byLang.get(item.lang) ?? new Map<string, number | Seen[]>();
    byLang.set(item.lang, own);
    for (const name of names) {
      // Most names are met once: nothing is made of those but a number.
      const known = own.get(name);
      if (known === undefined) own.set(name, at);
      else if (typeof known === "number") {
        const members = [named[known]?.[0] ?? item, item];
        own.set(name, members);
        groups.push({ first: known, members });
      } else known.push(item);
    }
  }
  return groups.sort((a, b) => a.first - b.first).map(({ members }) => members);
}

/** Without groups of which another one has all: with an article and without it, the same texts may be alike. */
function withoutParts(groups: readonly Seen[][]): readonly Seen[][] {
  const holding = new Map<Seen | undefined, Seen[][]>();
  for (const group of groups) for (const each of group) holding.set(each, [...(holding.get(each) ?? []), group]);
  const isPart = (group: readonly Seen[]): boolean =>
    (holding.get(group[0]) ?? []).some(
      (other) => other.length > group.length && group.every((each) => other.includes(each)),
    );
  return groups.filter((group) => group.some(({ form }) => form.whole === undefined) || !isPart(group));
}

/** A text as a hurried reader takes it. */
interface Form {
  /** Without case, accents, article, punctuation and white space. */
  readonly bare: string;
  /** The article that it begins with, if there is one. */
  readonly article: string;
  /** Where it begins with an article, the same with it. */
  readonly whole?: string;
  /** Where it begins with an article but for an accent (“à”, “él”): that article, and what is left without it. */
  readonly accented?: Pick<Form, "article" | "bare">;
  /** Its words, without case, accents, article and punctuation. */
  readonly words: readonly string[];
  /** The words with only some letters left of a long one: texts that differ in one letter have one of these in common. */
  readonly near: readonly string[];
}

const forms = new Recent<Recent<Form>>(20);

function formOf(text: string, lang: string): Form {
  return forms.get(lang, () => new Recent(20_000)).get(text, () => formAnew(text, lang));
}

function formAnew(text: string, lang: string): Form {
  const lower = fold(text).toLowerCase();
  const article = articleIn(lower, lang);
  const accented = article === "" ? accentedArticleIn(lower, lang) : "";
  const plain = plainOf(text, lang, accented === "" ? allDifferences : butArticle);
  const words = plain.split(" ");
  return {
    article,
    ...(article === "" ? {} : { whole: tight(plainOf(text, lang, butArticle), allDifferences) }),
    ...(accented === ""
      ? {}
      : { accented: { article: accented, bare: tight(plainOf(text, lang, allDifferences), allDifferences) } }),
    bare: tight(plain, allDifferences),
    words,
    near: nearTo(plain, words),
  };
}

/** A text with one of its words shortened, for each of them that can be. */
function nearTo(text: string, words: readonly string[]): string[] {
  const near: string[] = [];
  let start = 0;
  for (const word of words) {
    const end = start + word.length;
    for (const short of shortened(word)) near.push(`${text.slice(0, start)}${short}\u0001${text.slice(end)}`);
    start = end + 1;
  }
  return near;
}

/** Letters that stand for sounds: one of them is easily overlooked, unlike a sign that is a word or a syllable. */
const alphabetic =
  /^[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Armenian}\p{Script=Georgian}]+$/u;

const longWord = 5;

/**
 * What one of two nearly equal words leaves in common with the other: one letter more, less or other behind the third leaves the
 * first three letters, one before leaves the first letter and the last two; so do two neighbours exchanged, but for the middle
 * ones of five, which leave the first two letters and the last one.
 */
function shortened(word: string): string[] {
  const { length } = word;
  if (length < longWord - 1 || !alphabetic.test(word)) return [];
  const kept = [word.slice(0, 3), `${word.charAt(0)}\u0001${word.slice(-2)}`];
  return length === longWord ? [...kept, `${word.slice(0, 2)}\u0001${word.slice(-1)}`] : kept;
}

/**
 * Whether two texts differ in one letter of one word; of the two words one has five letters or more, and both begin alike.
 * Letters of these scripts are single units of UTF-16.
 */
function nearlyOne(a: readonly string[], b: readonly string[]): boolean {
  if (a.length !== b.length) return false;
  const place = a.findIndex((word, i) => word !== b[i]);
  if (place < 0) return false;
  for (let i = place + 1; i < a.length; i++) if (a[i] !== b[i]) return false;
  const [p, q] = [a[place] ?? "", b[place] ?? ""];
  const [shorter, longer] = [Math.min(p.length, q.length), Math.max(p.length, q.length)];
  if (longer < longWord || longer - shorter > 1 || p[0] !== q[0]) return false;
  let start = 0;
  while (start < shorter && p[start] === q[start]) start++;
  let end = 0;
  while (end < shorter - start && p[p.length - 1 - end] === q[q.length - 1 - end]) end++;
  const [left, right] = [p.length - start - end, q.length - start - end];
  if (left <= 1 && right <= 1) return true;
  return left === 2 && right === 2 && p[start] === q[start + 1] && p[start + 1] === q[start];
}

type Small = Exclude<Difference, "letter">;

const butArticle: readonly Small[] = ["case", "accent", "punctuation"];
const allDifferences: readonly Small[] = [...butArticle, "article"];

/**
 * Which differences tell the texts of a group apart: without regard to the others they are not all the same, or, since an article
 * takes its own capital, accent and apostrophe away with it, more of them are the same as soon as this one is overlooked too.
 */
export function differencesOf(group: readonly Worded[]): Difference[] {
  const distinct = (without: readonly Small[]): number =>
    new Set(group.map(({ text, lang }) => tight(plainOf(text, lang, without), without))).size;
  // Alike as they stand: what looks like an article of one is the beginning of the other.
  if (distinct(allDifferences) > 1)
    return butArticle.filter((each) => distinct(butArticle.filter((one) => one !== each)) > 1);
  return allDifferences.filter((difference) => {
    const without = (all: readonly Small[]): Small[] => all.filter((each) => each !== difference);
    if (distinct(without(allDifferences)) > 1) return true;
    return difference !== "article" && distinct(without(butArticle)) > distinct(butArticle);
  });
}

const beyondAscii = /[\u0080-\uffff]/;
const punctuation = /\p{P}|\s\s/u;

/** The article at the start of a text in lower case, with the space after it; empty where there is none. */
function articleIn(lower: string, lang: string): string {
  return lower.slice(0, lower.length - withoutArticle(lower, lang).length);
}

const accentedStart = /^[^ ]{0,4}[\u0080-\uffff][^ ]{0,4} /;

/** The article that a text in lower case begins with when accents are overlooked, without its accent. */
function accentedArticleIn(lower: string, lang: string): string {
  return accentedStart.test(lower) ? articleIn(withoutAccents(lower), lang) : "";
}

/** A text without these differences. */
function plainOf(text: string, lang: string, without: readonly Small[]): string {
  let plain = fold(text);
  if (without.includes("article")) {
    const lower = plain.toLowerCase();
    // A character whose small form is longer would move the place.
    if (lower.length === plain.length) {
      const article = articleIn(lower, lang) || (without.includes("accent") ? accentedArticleIn(lower, lang) : "");
      plain = plain.slice(article.length);
    }
  }
  if (without.includes("case")) plain = plain.toLowerCase();
  if (without.includes("accent") && beyondAscii.test(plain)) {
    plain = withoutAccents(plain);
  }
  if (without.includes("punctuation") && punctuation.test(plain)) {
    const bare = plain
      .replace(/(?<!\d)\p{P}|\p{P}(?!\d)/gu, "")
      .replace(/\s+/gu, " ")
      .trim();
    plain = bare === "" ? plain : bare;
  }
  return plain;
}

/**
 * White space counts as punctuation, and “œ” for “oe” as an accent; but where letters are counted it is one: “süß” and “süße” are
 * short words.
 */
function tight(plain: string, without: readonly Small[]): string {
  const apart = without.includes("accent") && beyondAscii.test(plain) ? lettersApart(plain) : plain;
  return without.includes("punctuation") ? apart.replaceAll(" ", "") : apart;
}

/** The relation as it is for someone who overlooks these differences: what answers one text answers those that look like it. */
export function overlooking(relation: Matching, groups: readonly LookAlikes[]): Matching {
  const alike = new Map<MatchKey, Set<MatchKey>>();
  for (const { keys } of groups) {
    for (const key of keys) alike.set(key, new Set([...(alike.get(key) ?? [key]), ...keys]));
  }
  const around = (key: MatchKey): ReadonlySet<MatchKey> => alike.get(key) ?? new Set([key]);
  const partners = (key: MatchKey): ReadonlySet<MatchKey> =>
    new Set(
      [...around(key)].flatMap((each) => [...relation.partners(each)].flatMap((partner) => [...around(partner)])),
    );
  return { partners, fits: (a, b) => partners(a).has(b), overlooked: { under: relation, like: around } };
}
