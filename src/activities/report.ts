import type { Range } from "../base/range";
import type { ActivityBlock } from "../unit/unit";

/* What findings of all kinds are told with. */

/** The place of the first of these options that a block sets, else of its `make` line, else of its fence. */
export function optionPlace(block: ActivityBlock, ...keys: readonly string[]): Range {
  for (const key of [...keys, "make"]) {
    const entry = block.options.entries.find((candidate) => candidate.key === key);
    if (entry && entry.valueRange.end > entry.valueRange.start)
      return { start: entry.keyRange.start, end: entry.valueRange.end };
  }
  return { start: block.fence.start, end: Math.min(block.fence.start + 3, block.fence.end) };
}

/** “a”, “b” and “c” */
export function quotedList(names: readonly string[]): string {
  const quoted = names.map((name) => `“${name}”`);
  const last = quoted.pop();
  return quoted.length > 0 ? `${quoted.join(", ")} and ${last ?? ""}` : (last ?? "");
}

/** `1 strip`, `2 strips` */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `No card`, `None of 3 cards`, `Only 2 of 3 cards`: fewer than wanted. */
export function onlySome(count: number, wanted: number, one: string, many = `${one}s`): string {
  if (count > 0) return `Only ${count} of ${counted(wanted, one, many)}`;
  return wanted === 1 ? `No ${one}` : `None of ${counted(wanted, one, many)}`;
}
