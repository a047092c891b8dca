import { Recent } from "../base/recent";
import { finished, mapped, type Steps } from "../base/steps";
import {
  allDifferences,
  butArticle,
  type Difference,
  type Form,
  formOf,
  nearlyOne,
  type Small,
  withoutDifferences,
} from "./hurried";
import type { MatchKey, Relation } from "./relation";

/*
 * Texts that a hurried reader takes for one another. They are different texts to the relation; these are for hints, and for
 * asking what becomes of a puzzle when the difference is overlooked.
 */

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

/** The same as at the last time, where that is not long ago. */
export function keptLookAlikes(texts: readonly Worded[]): readonly LookAlikes[] {
  return kept.get(texts.map(numberOf).join(" "), () => lookAlikes(texts));
}

const kept = new Recent<readonly LookAlikes[]>(200);

/** Numbers that stand for texts, by language: names of them are short. None is given twice. */
const numbers = new Recent<Recent<number>>(20);
let lastNumber = 0;

function numberOf({ key, text, lang }: Worded): number {
  const known = numbers.get(lang, () => new Recent(20_000));
  return known.get(key === text ? text : `${key}\u0000${text}`, () => ++lastNumber);
}

/** The same with a pause after each text. */
export function* lookingAlike(texts: readonly Worded[]): Steps<readonly LookAlikes[], undefined> {
  const seen = yield* mapped(distinctOf(texts), ({ key, text, lang }) => ({
    key,
    text,
    lang,
    form: formOf(text, lang),
  }));
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

/** Of each key in a language the text that was met last, in the order in which the keys were met; without pictures. */
function distinctOf(texts: readonly Worded[]): Worded[] {
  const found: Worded[] = [];
  const places = new Map<string, Map<MatchKey, number>>();
  for (const each of texts) {
    if (each.key.startsWith("\u0000")) continue;
    const own = places.get(each.lang) ?? new Map<MatchKey, number>();
    places.set(each.lang, own);
    const place = own.get(each.key) ?? found.length;
    own.set(each.key, place);
    found[place] = each;
  }
  return found;
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

/**
 * Which differences tell the texts of a group apart: without regard to the others they are not all the same, or, since an article
 * takes its own capital, accent and apostrophe away with it, more of them are the same as soon as this one is overlooked too.
 */
export function differencesOf(group: readonly Worded[]): Difference[] {
  const distinct = (without: readonly Small[]): number =>
    new Set(group.map(({ text, lang }) => withoutDifferences(text, lang, without))).size;
  // Alike as they stand: what looks like an article of one is the beginning of the other.
  if (distinct(allDifferences) > 1)
    return butArticle.filter((each) => distinct(butArticle.filter((one) => one !== each)) > 1);
  return allDifferences.filter((difference) => {
    const without = (all: readonly Small[]): Small[] => all.filter((each) => each !== difference);
    if (distinct(without(allDifferences)) > 1) return true;
    return difference !== "article" && distinct(without(butArticle)) > distinct(butArticle);
  });
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
