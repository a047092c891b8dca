import type { DancingLinks } from "dancing-links";

/** One thing that may be chosen: what must be covered once and is by this, and what must not be covered twice. */
export interface Option<T> {
  readonly data: T;
  readonly primary: readonly (number | string)[];
  readonly secondary?: readonly (number | string)[];
}

/** Choices of options that cover every primary item named by any of them, and each of `needed`, exactly once. */
export type Covers = <T>(
  options: readonly Option<T>[],
  needed?: readonly (number | string)[],
  most?: number,
) => readonly (readonly T[])[];

/** Exact cover by npm `dancing-links`, with names in place of column numbers. */
export async function openCovers(): Promise<Covers> {
  // The package has no CommonJS form, which is what tests are compiled to.
  const { DancingLinks } = await import("dancing-links");
  return <T>(
    options: readonly Option<T>[],
    needed: readonly (number | string)[] = [],
    most = Number.MAX_SAFE_INTEGER,
  ) => coversBy(new DancingLinks<T>(), options, needed, most);
}

function coversBy<T>(
  links: DancingLinks<T>,
  options: readonly Option<T>[],
  needed: readonly (number | string)[],
  most: number,
): readonly (readonly T[])[] {
  const primaries = numbered([...needed, ...options.flatMap(({ primary }) => primary)]);
  const secondaries = numbered(options.flatMap(({ secondary = [] }) => secondary));
  // The package refuses a problem without items or options; without items the empty choice covers all.
  if (primaries.size === 0) return [[]];
  if (options.length === 0) return [];
  const solver = links.createSolver({ primaryColumns: primaries.size, secondaryColumns: secondaries.size });
  for (const { data, primary, secondary = [] } of options) {
    solver.addSparseConstraint(data, {
      primary: primary.map((name) => primaries.get(name) ?? -1),
      secondary: secondary.map((name) => secondaries.get(name) ?? -1),
    });
  }
  return solver.find(most).map((rows) => rows.map((row) => row.data));
}

function numbered(names: readonly (number | string)[]): Map<number | string, number> {
  return new Map([...new Set(names)].map((name, i) => [name, i]));
}
