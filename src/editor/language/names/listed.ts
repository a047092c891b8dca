import { foreignName } from "../../../activities/foreign";
import type { Range } from "../../../base/range";
import type { ActivityBlock, Entry, Unit } from "../../../unit/unit";
import { yamlText } from "../../completion/options";
import type { Mention, World } from "./named";

/** A name written as the value of an option, or in its list. */
export interface Listed {
  /** As YAML reads it. */
  readonly name: string;
  /** With its quotation marks, and without. */
  readonly place: Range;
  readonly inner: Range;
  /** Another name in the same place, written in the same way. */
  write(name: string): string;
}

export function listedIn({ text }: Unit, { value, valueRange, items }: Entry): readonly Listed[] {
  const list = Array.isArray(value);
  const values: readonly unknown[] = Array.isArray(value) ? value : [value];
  const flow = list && text.charAt(valueRange.start) === "[";
  return values.flatMap((name, i): Listed[] => {
    const place = list ? items[i] : valueRange;
    if (typeof name !== "string" || !place) return [];
    const quote = /^["']/.exec(text.slice(place.start, place.end))?.[0] ?? "";
    const inner = { start: place.start + quote.length, end: place.end - quote.length };
    const write = (other: string): string => {
      if (quote === '"') return JSON.stringify(other);
      return quote === "'" ? `'${other.replaceAll("'", "''")}'` : yamlText(other, flow);
    };
    return [{ name, place, inner, write }];
  });
}

export function entryOf({ options }: Pick<ActivityBlock, "options">, key: string): Entry | undefined {
  return options.entries.find((entry) => entry.key === key);
}

/** A use of something that has one name, wherever it stands in an option. */
export function useOf(named: Mention["named"], file: string, { place, inner, write }: Listed): Mention {
  return { named, file, range: inner, defines: false, place, write };
}

/** A section as `from` names it: its file and its number there. */
export interface Found {
  readonly file: string;
  readonly section: number;
}

export function sectionNamed(world: World, file: string, name: string): Found | undefined {
  const other = foreignName(name);
  const target = other ? world.resolve(file, other.path) : file;
  const wanted = (other?.section ?? name).replace(/\s+/gu, " ").trim();
  const section =
    target === undefined ? undefined : world.units.get(target)?.sections.findIndex((each) => each.name === wanted);
  return target === undefined || section === undefined || section < 0 ? undefined : { file: target, section };
}

/** The sections that an activity takes: those that it names, else the one that it stands in. */
export function sectionsOf(world: World, file: string, block: ActivityBlock): readonly Found[] {
  const unit = world.units.get(file);
  const from = entryOf(block, "from");
  if (unit && from) return listedIn(unit, from).flatMap(({ name }) => sectionNamed(world, file, name) ?? []);
  return unit?.sections[block.section] ? [{ file, section: block.section }] : [];
}
