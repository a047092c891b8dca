import type { Fix } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { setOption } from "../../edits";
import type { DealtTiles } from "../model";
import type { TilesOptions } from "../options";
import { holdingSoon } from "../trial";

/** In steps: whether the same words with other options have one proven solution in each deal: no fix may lead into a trap. */
export function provenWith(dealt: DealtTiles, options: Partial<TilesOptions>): Steps<boolean, unknown> {
  const { request } = dealt;
  const value = { ...dealt.options, ...options };
  return holdingSoon({ ...request, options: { ...request.options, value } });
}

/** A fix that takes one of the next seeds, where one of them gives one solution. */
export function* anotherSeed(dealt: DealtTiles): Steps<Fix[], unknown> {
  const { request, options } = dealt;
  for (let seed = options.seed + 1; seed <= options.seed + 3; seed++) {
    if (!(yield* provenWith(dealt, { seed }))) continue;
    return [{ title: `Use seed ${seed}`, edits: [setOption(request.block, request.unit.text, "seed", String(seed))] }];
  }
  return [];
}
