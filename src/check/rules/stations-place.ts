import type { PlannedStations } from "../../activities/stations";
import type { Range } from "../../base/range";

/** Where the first of these options that is written stands in a plan of stations, else its first line. */
export function place({ block }: PlannedStations, ...keys: readonly string[]): Range {
  for (const key of keys) {
    const entry = block.options.entries.find((candidate) => candidate.key === key);
    if (entry) return { start: entry.keyRange.start, end: Math.max(entry.keyRange.end, entry.valueRange.end) };
  }
  return { start: block.fence.start, end: Math.max(block.fence.start + 3, block.body.start - 1) };
}
