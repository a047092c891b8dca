import { Recent } from "../base/recent";
import type { Typeface } from "./typeface";

/** What fitting found of late: by typeface, then by what was asked, then by words; null where they do not fit. */
const fits = new WeakMap<Pick<Typeface, "measure">, Recent<Recent<number | null>>>();

/** A size or length that was found for these words under this question before, else what `find` finds; undefined where they do not fit. */
export function keptFit(
  typeface: Pick<Typeface, "measure">,
  asked: string,
  words: string,
  find: () => number | undefined,
): number | undefined {
  const known = fits.get(typeface) ?? new Recent<Recent<number | null>>(200);
  fits.set(typeface, known);
  return known.get(asked, () => new Recent(2000)).get(words, () => find() ?? null) ?? undefined;
}
