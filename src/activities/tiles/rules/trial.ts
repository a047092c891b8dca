import type { Fix } from "../../../base/finding";
import { Recent } from "../../../base/recent";
import { setOption } from "../../edits";
import { soonProven } from "../deal";
import type { DealtTiles } from "../model";
import type { TilesOptions } from "../options";
import { structureKey } from "../structure";

/** Whether the same words with other options have one proven solution in each deal: no fix may lead into a trap. */
export function provenWith(dealt: DealtTiles, options: Partial<TilesOptions>): boolean {
  const { request } = dealt;
  const value = { ...dealt.options, ...options };
  const deal = (): boolean => soonProven({ ...request, options: { ...request.options, value } });
  const structure = structureKey(request, value);
  return structure === undefined ? deal() : outcomes.get(structure, deal);
}

const outcomes = new Recent<boolean>(500);

/** A fix that takes one of the next seeds, where one of them gives one solution. */
export function anotherSeed(dealt: DealtTiles): Fix[] {
  const { request, options } = dealt;
  for (let seed = options.seed + 1; seed <= options.seed + 3; seed++) {
    if (!provenWith(dealt, { seed })) continue;
    return [{ title: `Use seed ${seed}`, edits: [setOption(request.block, request.unit.text, "seed", String(seed))] }];
  }
  return [];
}
