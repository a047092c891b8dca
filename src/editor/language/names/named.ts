import type { Range } from "../../../base/range";
import type { Unit } from "../../../unit/unit";

/** Units that may name each other, by a key of their file. */
export interface World {
  readonly units: ReadonlyMap<string, Unit>;
  /** The key of the file that a path written in another file means. */
  resolve(file: string, path: string): string | undefined;
}

/** What has a name, by its place in its unit: counted from 0. An activity above the first section has section -1. */
export type Named = { readonly file: string; readonly section: number } & (
  | { readonly what: "section" }
  /** The first of all headings that name the same pile. */
  | { readonly what: "pile"; readonly pile: number }
  | { readonly what: "column"; readonly table: number; readonly column: number }
  | { readonly what: "person"; readonly table: number; readonly row: number }
  | { readonly what: "activity"; readonly activity: number }
);

/** A place where something is named. */
export interface Mention {
  readonly named: Named;
  readonly file: string;
  /** The name itself, as written. */
  readonly range: Range;
  /** Where the name is given rather than used. */
  readonly defines: boolean;
  /** What a new name takes the place of, and how it is written there; undefined where it cannot be. */
  readonly place: Range;
  write(name: string): string | undefined;
}

/** The key by which two are the same. */
export function keyOf(named: Named): string {
  return [named.what, named.section, ...innerOf(named), named.file].join(" ");
}

function innerOf(named: Named): readonly number[] {
  switch (named.what) {
    case "section":
      return [];
    case "pile":
      return [named.pile];
    case "column":
      return [named.table, named.column];
    case "person":
      return [named.table, named.row];
    case "activity":
      return [named.activity];
  }
}
