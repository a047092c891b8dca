import type { Range } from "../base/range";
import type { Section } from "../unit/unit";

/** A section of another unit as `from` names it: `other.unit.md#Section`. */
export interface ForeignName {
  readonly path: string;
  readonly section: string;
}

export function foreignName(name: string): ForeignName | undefined {
  const match = /^(.+\.unit\.md)\s*#\s*(.+)$/u.exec(name.trim());
  return match?.[1] && match[2] ? { path: match[1], section: match[2] } : undefined;
}

/** Another unit that `from` names with no section of it, or with another sign than `#` before that: `other.unit.md`. */
export function foreignUnit(name: string): { readonly path: string; readonly section?: string } | undefined {
  if (foreignName(name)) return undefined;
  const [, path, section] = /^(.+?\.unit\.md)(?:[\s/\\:>|»\u2192–—#-]+(.*))?$/u.exec(name.trim()) ?? [];
  return path === undefined ? undefined : { path, ...(section ? { section } : {}) };
}

/**
 * A section of another file as this unit may use it: every place in it becomes the place where this unit names it, since
 * findings, clicks and fixes speak of this unit's text; pictures' paths lead from this unit's folder.
 */
export function adopt(section: Section, place: Range, path: string): Section {
  const folder = path.includes("/") ? path.slice(0, path.lastIndexOf("/") + 1) : "";
  // The copy has the shape of what it was made from.
  return copy(section, { place, folder, made: new Map() }) as Section;
}

interface Copying {
  readonly place: Range;
  readonly folder: string;
  /** An item that stands in the section and in a pile is one item in the copy too. */
  readonly made: Map<object, unknown>;
}

function copy(value: unknown, copying: Copying): unknown {
  if (typeof value !== "object" || value === null) return value;
  const known = copying.made.get(value);
  if (known !== undefined) return known;
  const made = copyOf(value, copying);
  copying.made.set(value, made);
  return made;
}

function copyOf(value: object, copying: Copying): unknown {
  if (Array.isArray(value)) return value.map((item) => copy(item, copying));
  const keys = Object.keys(value);
  if (keys.length === 2 && "start" in value && "end" in value) return { ...copying.place };
  const entries = Object.entries(value).map(([key, inner]): [string, unknown] => [
    key,
    key === "path" && typeof inner === "string" ? copying.folder + inner : copy(inner, copying),
  ]);
  return Object.fromEntries(entries);
}
