import type { TextEdit } from "../../../base/finding";
import { readUnit } from "../../../unit/read";
import type { Unit } from "../../../unit/unit";
import { mentionsIn, mentionsOf, nameOf } from "./mentions";
import { keyOf, type Named, type World } from "./named";
import { samePile } from "./piles";
import { activitiesOf } from "./titles";

/** Edits by file, or the sentence that says why there are none. */
export type Renaming = { readonly edits: ReadonlyMap<string, readonly TextEdit[]> } | { readonly refusal: string };

const placeWords: Readonly<Record<Named["what"], string>> = {
  section: "a heading, a list of sections and a tie",
  pile: "a heading and a list of piles",
  column: "the head of a table and a tie",
  person: "a table and a tie",
  activity: "an option",
};

/**
 * Gives something another name, wherever it is named. The result is read again before it is handed out: every place that named
 * it must still do so, and no other name may come to mean something else.
 */
export function rename(world: World, named: Named, wanted: string): Renaming {
  const name = wanted.normalize("NFC").replace(/\s+/gu, " ").trim();
  if (name === "") return { refusal: `A ${named.what} needs a name.` };
  const taken = collision(world, named, name);
  if (taken !== undefined) return { refusal: taken };
  const edits = new Map<string, TextEdit[]>();
  const add = (file: string, edit: TextEdit): void => void edits.set(file, [...(edits.get(file) ?? []), edit]);
  for (const { file, place, write } of mentionsOf(world, named)) {
    const text = write(name);
    if (text === undefined) return { refusal: `“${name}” cannot be written in ${placeWords[named.what]}.` };
    add(file, { range: place, text });
  }
  for (const { file, edit } of followingTitles(world, renamed(world, edits), named)) add(file, edit);
  const after = renamed(world, edits);
  if (nameOf(after, named) !== name || !keepsNames(world, after, named))
    return { refusal: `With “${name}”, some of the places that name this ${named.what} would mean something else.` };
  return { edits };
}

/** Plans of stations name activities by titles, and many a title comes from the name of a section. */
function followingTitles(
  before: World,
  after: World,
  named: Named,
): readonly { readonly file: string; readonly edit: TextEdit }[] {
  return [...before.units].flatMap(([file, { activities, stations }]) => {
    if (stations.length === 0) return [];
    const [old, now] = [activitiesOf(before, file), activitiesOf(after, file)];
    return activities.flatMap(({ section }, activity) => {
      const title = now[activity]?.title;
      const same: Named = { what: "activity", file, section, activity };
      if (title === undefined || title === old[activity]?.title || keyOf(same) === keyOf(named)) return [];
      const uses = mentionsOf(before, same).filter(({ defines }) => !defines);
      return uses.flatMap(({ place, write }) => {
        const text = write(title);
        return text === undefined ? [] : [{ file, edit: { range: place, text } }];
      });
    });
  });
}

function collision(world: World, named: Named, name: string): string | undefined {
  const unit = world.units.get(named.file);
  const section = unit?.sections[named.section];
  const old = nameOf(world, named);
  if (!unit || old === undefined || old === name) return undefined;
  const has = (names: readonly { readonly name?: string; readonly text?: string }[]): boolean =>
    names.some((each) => (each.name ?? each.text) === name);
  switch (named.what) {
    case "section":
      return has(unit.sections) ? `This unit has a section “${name}” already.` : undefined;
    case "pile":
      return samePile(world, named, old).some((each) => samePile(world, each, name).length > 0)
        ? `This section has a pile “${name}” already.`
        : undefined;
    case "column":
      return has(section?.tables[named.table]?.columns ?? [])
        ? `This table has a column “${name}” already.`
        : undefined;
    case "person":
      return has(section?.tables[named.table]?.persons ?? []) ? `This table has a row “${name}” already.` : undefined;
    case "activity":
      return activitiesOf(world, named.file).some(({ title }) => title === name)
        ? `This unit has an activity “${name}” already.`
        : undefined;
  }
}

function renamed(world: World, edits: ReadonlyMap<string, readonly TextEdit[]>): World {
  const units = new Map<string, Unit>(world.units);
  for (const [file, list] of edits) {
    const unit = units.get(file);
    if (unit) units.set(file, readUnit(applied(unit.text, list)));
  }
  return { units, resolve: world.resolve.bind(world) };
}

/** Applies edits that do not overlap. */
export function applied(text: string, edits: readonly TextEdit[]): string {
  return [...edits]
    .sort((a, b) => b.range.start - a.range.start)
    .reduce((now, edit) => now.slice(0, edit.range.start) + edit.text + now.slice(edit.range.end), text);
}

/** Each thing is named as often as before; what has the new name may be named more often, by what named nothing before. */
function keepsNames(before: World, after: World, named: Named): boolean {
  const own = keyOf(named);
  const [old, now] = [tally(before), tally(after)];
  return [...new Set([...old.keys(), ...now.keys()])].every((key) => {
    const [was, is] = [old.get(key) ?? 0, now.get(key) ?? 0];
    return key === own ? is >= was : is === was;
  });
}

function tally(world: World): Map<string, number> {
  const counts = new Map<string, number>();
  for (const file of world.units.keys()) {
    for (const { named } of mentionsIn(world, file)) {
      const key = keyOf(named);
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  }
  return counts;
}
