import { type Difference, differences } from "../../match/hurried";
import { differencesOf, type LookAlikes, type Worded } from "../../match/look-alikes";
import type { MatchKey } from "../../match/relation";

/* What a section teaches by setting it side by side. Its items are pairs with the texts of both sides, statements or events. */

/** Texts of which a section teaches the contrast: any two that look alike differ in something that it is about. */
export function contrasted(items: readonly (readonly Worded[])[], groups: readonly LookAlikes[]): MatchKey[] {
  if (groups.length < 2) return [];
  const lessons = new Set(differences.filter((difference) => isLesson(difference, items, groups)));
  if (lessons.size === 0) return [];
  return groups.filter((group) => isTold(group, items, lessons)).flatMap(({ keys }) => keys);
}

/**
 * Whether a section is about a difference: two couples of items or more that show it, in one of its languages, hold at least half of
 * its items. One couple of words and another one of glosses are no lesson.
 */
function isLesson(
  difference: Difference,
  items: readonly (readonly Worded[])[],
  groups: readonly LookAlikes[],
): boolean {
  const all = groups.filter((group) => group.differences.includes(difference));
  return [...new Set(all.map(({ lang }) => lang))].some((lang) =>
    areLesson(
      difference,
      items,
      all.filter((group) => group.lang === lang),
    ),
  );
}

function areLesson(
  difference: Difference,
  items: readonly (readonly Worded[])[],
  such: readonly LookAlikes[],
): boolean {
  if (such.length < 2) return false;
  const keys = new Set(such.flatMap((group) => group.keys));
  const held = items.filter((item) => item.some(({ key }) => keys.has(key)));
  if (held.length * 2 < items.length) return false;
  const sets = itemsOf(such, items);
  // Letters make couples of their own, of which several may share a word; other differences make whole groups.
  return difference === "letter" ? new Set(sets.map(String)).size > 1 : !areOne(sets);
}

/** The items that each group stands in, by their places; without groups that stand in one item, as two answers of it. */
function itemsOf(groups: readonly LookAlikes[], items: readonly (readonly Worded[])[]): number[][] {
  const name = (lang: string, key: MatchKey): string => `${lang}\u0000${key}`;
  const places = new Map<string, number[]>();
  for (const [place, item] of items.entries())
    for (const { lang, key } of item) {
      const known = places.get(name(lang, key));
      if (known) known.push(place);
      else places.set(name(lang, key), [place]);
    }
  return groups
    .map(({ lang, keys }) => [...new Set(keys.flatMap((key) => places.get(name(lang, key)) ?? []))])
    .map((set) => set.sort((a, b) => a - b))
    .filter((set) => set.length > 1);
}

/** Whether sets hang together: the left and the right sides of the same two pairs are one couple. */
function areOne(sets: readonly (readonly number[])[]): boolean {
  const reached = new Set(sets[0]);
  let open = sets.slice(1);
  while (open.length > 0) {
    const apart = open.filter((set) => !set.some((item) => reached.has(item)));
    if (apart.length === open.length) return false;
    for (const set of open) if (!apart.includes(set)) for (const item of set) reached.add(item);
    open = apart;
  }
  return true;
}

/** Whether each two texts of a group differ in something that is taught. */
function isTold(group: LookAlikes, items: readonly (readonly Worded[])[], lessons: ReadonlySet<Difference>): boolean {
  if (group.differences.every((difference) => lessons.has(difference))) return true;
  if (!group.differences.some((difference) => lessons.has(difference))) return false;
  const texts = items.flat().filter(({ lang, key }) => lang === group.lang && group.keys.includes(key));
  return texts.every((a, i) =>
    texts.slice(i + 1).every((b) => a.key === b.key || differencesOf([a, b]).some((each) => lessons.has(each))),
  );
}
