import { differencesOf, type LookAlikes } from "./look-alikes";
import type { MatchKey } from "./relation";

/** What is heard of a text: its words, whatever their capitals and marks; a question is heard. */
export function heard(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}?？;]+/gu, " ")
    .trim();
}

/** Whether texts are the same words, whatever their capitals and marks; a question is heard. */
export function soundAlike(keys: readonly MatchKey[]): boolean {
  return new Set(keys.map(heard)).size === 1;
}

const sounding = new WeakMap<LookAlikes, readonly LookAlikes[]>();

/** Those of a group that sound the same, by what is heard. */
export function soundingAlike(group: LookAlikes): readonly LookAlikes[] {
  const known = sounding.get(group);
  if (known) return known;
  const found = soundingAnew(group);
  sounding.set(group, found);
  return found;
}

function soundingAnew({ lang, keys }: LookAlikes): LookAlikes[] {
  const sounds = new Map<string, MatchKey[]>();
  for (const key of keys) sounds.set(heard(key), [...(sounds.get(heard(key)) ?? []), key]);
  return [...sounds.values()].flatMap((same) => {
    const texts = same.map((key) => ({ key, text: key, lang }));
    return same.length > 1 ? [{ lang, keys: same, differences: differencesOf(texts) }] : [];
  });
}
