import type { Range } from "../../base/range";
import { lettersApart, withoutAccents } from "../../match/accents";
import type { Difference } from "../../match/hurried";
import type { LookAlikes } from "../../match/look-alikes";
import type { Words } from "./look-alike-words";

/* How look-alikes are told. */

const names: Readonly<Record<Difference, string>> = {
  case: "capitals",
  accent: "an accent",
  article: "the article",
  punctuation: "punctuation or spaces",
  letter: "one letter",
};

export function placesOf({ keys }: LookAlikes, { places }: Words): Range[] {
  return keys.flatMap((key) => places().get(key) ?? []).sort((a, b) => a.start - b.start);
}

export function sentence(group: LookAlikes): string {
  return `${pair(group)} differ only in ${list(group)}.`;
}

/** The same of several groups that differ in the same, or each in its own way. */
export function sentences(groups: readonly LookAlikes[]): string {
  // The same texts may stand in both languages.
  const [first, ...others] = [
    ...new Map(groups.map((group) => [[...group.keys].sort().join("\u0001"), group])).values(),
  ];
  if (!first) return "";
  const more = others.map((group) => (list(group) === list(first) ? `So do ${pair(group)}.` : sentence(group)));
  return [sentence(first), ...more].join(" ");
}

export function pair({ keys }: LookAlikes): string {
  return joined(keys.map((key) => `“${key}”`));
}

export function list({ differences, keys }: LookAlikes): string {
  return joined(differences.map((difference) => (difference === "accent" ? accent(keys) : names[difference])));
}

/** “œ” and “oe” count as a difference in accents, and are told as what they are. */
function accent(keys: LookAlikes["keys"]): string {
  const isTwo = new Set(keys.map((key) => lettersApart(key).length - key.length)).size > 1;
  if (!isTwo) return names.accent;
  return keys.some((key) => withoutAccents(key) !== key)
    ? "accents and a letter written as two"
    : "a letter written as two";
}

export function joined(texts: readonly string[]): string {
  const last = texts.at(-1) ?? "";
  return texts.length < 2 ? last : `${texts.slice(0, -1).join(", ")} and ${last}`;
}

/** A group's own name, never shown; in whatever order its texts were met. */
export function nameOf({ keys }: LookAlikes): string {
  return JSON.stringify([...keys].sort());
}
