import type { Fix } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import type { DealRequest } from "../../contract";
import { setOption } from "../../edits";
import type { DealtTiles } from "../model";
import type { TilesOptions } from "../options";
import { holdingSoon, isCalm, outlookFor } from "../trial";

/** In steps: whether the same words with other options have one proven solution in each deal: no fix may lead into a trap. */
export function provenWith(dealt: DealtTiles, options: Partial<TilesOptions>): Steps<boolean, unknown> {
  return holdingSoon(requestWith(dealt, options));
}

/** The same, and nothing is warned of then that is not warned of now. */
export function calmWith(dealt: DealtTiles, options: Partial<TilesOptions>): Steps<boolean, unknown> {
  return holdingSoon(requestWith(dealt, options), dealt);
}

/** The same; where some deal gets fewer decoys than were asked for, how many there are at least: false where it does not hold. */
export function* decoysWith(
  dealt: DealtTiles,
  options: Partial<TilesOptions>,
): Steps<number | undefined | false, unknown> {
  const { holds, short } = yield* outlookFor(requestWith(dealt, options));
  return holds && short;
}

function requestWith({ request, options }: DealtTiles, others: Partial<TilesOptions>): DealRequest {
  return { ...request, options: { ...request.options, value: { ...options, ...others } } };
}

/** A fix that takes one of the next seeds, where one of them gives one solution: one with no new warning, where there is such a one. */
export function* anotherSeed(dealt: DealtTiles): Steps<Fix[], unknown> {
  const { request, options } = dealt;
  let found: number | undefined;
  for (let seed = options.seed + 1; seed <= options.seed + 3; seed++) {
    const outlook = yield* outlookFor(requestWith(dealt, { seed }));
    if (!outlook.holds) continue;
    found ??= seed;
    if (!isCalm(outlook, dealt)) continue;
    found = seed;
    break;
  }
  if (found === undefined) return [];
  return [{ title: `Use seed ${found}`, edits: [setOption(request.block, request.unit.text, "seed", String(found))] }];
}
