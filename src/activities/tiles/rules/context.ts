import type { Range } from "../../../base/range";
import type { RuleContext } from "../../contract";
import type { DealtTiles } from "../model";

export type TilesContext = RuleContext<DealtTiles>;

/** The place of an option's value in this block, else of its `make` line. */
export function place({ request: { block } }: DealtTiles, ...keys: readonly string[]): Range {
  for (const key of [...keys, "make"]) {
    const entry = block.options.entries.find((candidate) => candidate.key === key);
    if (entry && entry.valueRange.end > entry.valueRange.start)
      return { start: entry.keyRange.start, end: entry.valueRange.end };
  }
  return { start: block.fence.start, end: Math.min(block.fence.start + 3, block.fence.end) };
}

export function list(names: readonly string[]): string {
  const quoted = names.map((name) => `“${name}”`);
  const last = quoted.pop();
  return quoted.length > 0 ? `${quoted.join(", ")} and ${last ?? ""}` : (last ?? "");
}
