import { Recent } from "../base/recent";
import { lettersApart, withoutAccents } from "./accents";
import { withoutArticle } from "./articles";
import { fold } from "./fold";

/* What is left of a text for a hurried reader: without capitals, accents, article and punctuation, or a letter of a long word. */

export const differences = ["case", "accent", "article", "punctuation", "letter"] as const;

export type Difference = (typeof differences)[number];

/** A text as a hurried reader takes it. */
export interface Form {
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

export function formOf(text: string, lang: string): Form {
  return forms.get(lang, () => new Recent(20_000)).get(text, () => formAnew(text, lang));
}

function formAnew(text: string, lang: string): Form {
  const folded = fold(text);
  const lower = folded.toLowerCase();
  const article = articleIn(lower, lang);
  const accented = article === "" ? accentedArticleIn(lower, lang) : "";
  // Small letters stand where the text's own do, but for characters whose small form is longer.
  const isSame = lower.length === folded.length;
  const whole = isSame ? bareOf(lower) : plainOf(text, lang, butArticle);
  const without = isSame && accented === "" ? bareOf(lower.slice(article.length)) : plainOf(text, lang, allDifferences);
  const plain = accented === "" ? without : whole;
  const words = plain.split(" ");
  return {
    article,
    ...(article === "" ? {} : { whole: tight(whole, allDifferences) }),
    ...(accented === "" ? {} : { accented: { article: accented, bare: tight(without, allDifferences) } }),
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
export function nearlyOne(a: readonly string[], b: readonly string[]): boolean {
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

export type Small = Exclude<Difference, "letter">;

export const butArticle: readonly Small[] = ["case", "accent", "punctuation"];
export const allDifferences: readonly Small[] = [...butArticle, "article"];

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
  if (without.includes("accent")) plain = unaccented(plain);
  return without.includes("punctuation") ? unpunctuated(plain) : plain;
}

/** A text in small letters without accents and punctuation. */
function bareOf(lower: string): string {
  return unpunctuated(unaccented(lower));
}

function unaccented(text: string): string {
  return beyondAscii.test(text) ? withoutAccents(text) : text;
}

function unpunctuated(text: string): string {
  if (!punctuation.test(text)) return text;
  const bare = text
    .replace(/(?<!\d)\p{P}|\p{P}(?!\d)/gu, "")
    .replace(/\s+/gu, " ")
    .trim();
  return bare === "" ? text : bare;
}

/**
 * White space counts as punctuation, and “œ” for “oe” as an accent; but where letters are counted it is one: “süß” and “süße” are
 * short words.
 */
function tight(plain: string, without: readonly Small[]): string {
  const apart = without.includes("accent") && beyondAscii.test(plain) ? lettersApart(plain) : plain;
  return without.includes("punctuation") ? apart.replaceAll(" ", "") : apart;
}

/** A text without some differences, to compare with others without them. */
export function withoutDifferences(text: string, lang: string, without: readonly Small[]): string {
  return tight(plainOf(text, lang, without), without);
}
