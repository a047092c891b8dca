import type { Unit } from "../../unit/unit";
import type { CheckedActivity } from "../context";

/** The `make` line of an activity; where it has none, the backticks that begin it. */
export function makeRange({ plan }: CheckedActivity, unit: Unit): { start: number; end: number } {
  const make = plan.block.options.entries.find(({ key }) => key === "make");
  if (make) return { start: make.keyRange.start, end: make.valueRange.end };
  return { start: plan.block.fence.start, end: Math.min(plan.block.fence.start + 3, unit.text.length) };
}
