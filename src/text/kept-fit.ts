import { Recent } from "../base/recent";
import type { Typeface } from "./typeface";

/** What fitting found of late: by typeface, then by what was asked, then by words; null where they do not fit. */
const fits = new WeakMap<Pick<Typeface, "measure">, Recent<KeptFits>>();

/** What was found under one question, by words. */
export type KeptFits = Recent<number | null>;

export function keptFits(typeface: Pick<Typeface, "measure">, asked: string): KeptFits {
  const known = fits.get(typeface) ?? new Recent<KeptFits>(200);
  fits.set(typeface, known);
  return known.get(asked, () => new Recent(2000));
}

/** A size or length that was found for these words under this question before, else what `find` finds; undefined where they do not fit. */
export function keptFit(
  typeface: Pick<Typeface, "measure">,
  asked: string,
  words: string,
  find: () => number | undefined,
): number | undefined {
  return keptFits(typeface, asked).get(words, () => find() ?? null) ?? undefined;
}
