import type { Fix } from "../../../base/finding";
import { setOption } from "../../edits";
import { dealTiles } from "../deal";
import type { DealtTiles } from "../model";
import type { TilesOptions } from "../options";

/** Whether the same words with other options have one proven solution in each deal: no fix may lead into a trap. */
export function provenWith({ request }: DealtTiles, options: Partial<TilesOptions>): boolean {
  const value = { ...request.options.value, ...options };
  const { deals } = dealTiles({ ...request, options: { ...request.options, value } });
  return deals.length > 0 && deals.every(({ proof }) => proof.status === "one");
}

/** A fix that takes one of the next seeds, where one of them gives one solution. */
export function anotherSeed(dealt: DealtTiles): Fix[] {
  const { request, options } = dealt;
  for (let seed = options.seed + 1; seed <= options.seed + 3; seed++) {
    if (!provenWith(dealt, { seed })) continue;
    return [{ title: `Use seed ${seed}`, edits: [setOption(request.block, request.unit.text, "seed", String(seed))] }];
  }
  return [];
}
