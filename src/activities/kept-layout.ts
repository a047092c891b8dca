import { Recent } from "../base/recent";
import { type Run, runsKey } from "../base/run";
import type { Steps } from "../base/steps";
import type { Typeface } from "../text/typeface";
import type { Picture } from "../unit/unit";
import type { Press } from "./contract";

/** Something that is printed, as far as a layout hangs on it. */
interface Words {
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** BCP 47 */
  readonly lang?: string;
}

/** What a layout hangs on: it is the same for as long as these are, wherever in the unit the words stand. */
export interface LayoutCause {
  /** All that stands on the pieces, in an order that does not change. */
  readonly words: readonly Words[];
  /** All else, as JSON takes it. */
  readonly settings: unknown;
}

interface Kept<Layout> {
  readonly words: readonly Words[];
  readonly layout: Layout;
}

/**
 * What `find` finds for a deal, in steps; once for each press, and where no pictures are printed once for each typeface as long as
 * what it hangs on stays. A layout holds no places of the unit.
 */
export function keptLayout<Dealt extends object, Layout extends object>(
  find: (dealt: Dealt, press: Press) => Steps<Layout, undefined>,
  causeOf: (dealt: Dealt) => LayoutCause,
): (dealt: Dealt, press: Press) => Steps<Layout, undefined> {
  const known = new WeakMap<Dealt, { readonly press: Press; readonly layout: Layout }>();
  const kept = new WeakMap<Typeface, Recent<Kept<Layout>>>();
  return function* (dealt, press) {
    const own = known.get(dealt);
    if (own?.press === press) return own.layout;
    const recent = kept.get(press.typeface) ?? new Recent(200);
    kept.set(press.typeface, recent);
    const { words, settings } = causeOf(dealt);
    const name = JSON.stringify(settings);
    const last = recent.find(name);
    const layout = last && sameWords(last.words, words) ? last.layout : yield* find(dealt, press);
    recent.set(name, { words, layout });
    known.set(dealt, { press, layout });
    return layout;
  };
}

/** Never with a picture: its file may have changed. */
function sameWords(some: readonly Words[], others: readonly Words[]): boolean {
  return (
    some.length === others.length &&
    some.every((a, i) => {
      const b = others[i];
      if (!b || a.picture || b.picture || a.lang !== b.lang) return false;
      return a.runs === b.runs || runsKey(a.runs) === runsKey(b.runs);
    })
  );
}
