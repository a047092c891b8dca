import type { Steps } from "../base/steps";
import type { Press } from "./contract";

/** What `find` finds for a deal, in steps; once for each press. */
export function keptLayout<Dealt extends object, Layout>(
  find: (dealt: Dealt, press: Press) => Steps<Layout, undefined>,
): (dealt: Dealt, press: Press) => Steps<Layout, undefined> {
  const kept = new WeakMap<Dealt, { readonly press: Press; readonly layout: Layout }>();
  return function* (dealt, press) {
    const known = kept.get(dealt);
    if (known?.press === press) return known.layout;
    const layout = yield* find(dealt, press);
    kept.set(dealt, { press, layout });
    return layout;
  };
}
