import { validateLoop } from "../../base/generated/validators";
import type { CommonOptions, ResolvedOptions } from "../options";

/** Options of `loop`, as `loop.schema.json` describes them. */
export interface LoopOptions extends CommonOptions {
  readonly make: "loop";
  readonly size: "room" | "mini";
  /** Cards on a sheet; as the text asks for without it. */
  readonly cards?: number;
  /** Cards that belong nowhere. */
  readonly decoys?: number;
  readonly slip?: "visits" | "none";
}

function isLoopOptions(value: unknown): value is LoopOptions {
  return validateLoop(value);
}

/** The options of a request as loop options; the plan has checked them against the schema. */
export function loopOptions({ value }: ResolvedOptions<CommonOptions>): LoopOptions {
  if (!isLoopOptions(value)) throw new TypeError("options of loop were not checked");
  return value;
}

/** Whether learners write down which cards they visit. */
export function hasSlip({ slip, size }: LoopOptions): boolean {
  return (slip ?? (size === "room" ? "visits" : "none")) === "visits";
}
