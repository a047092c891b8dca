import { validateCalls } from "../../base/generated/validators";
import type { CommonOptions, ResolvedOptions } from "../options";
import type { Twins } from "../statements";

/** Options of `calls`, as `calls.schema.json` describes them. */
export interface CallsOptions extends CommonOptions {
  readonly make: "calls";
  readonly twins: Twins;
  readonly reserve: number;
  readonly slip: "tally" | "none";
  readonly teams?: number;
}

function isCallsOptions(value: unknown): value is CallsOptions {
  return validateCalls(value);
}

/** The options of a request as calls options; the plan has checked them against the schema. */
export function callsOptions({ value }: ResolvedOptions<CommonOptions>): CallsOptions {
  if (!isCallsOptions(value)) throw new TypeError("options of calls were not checked");
  return value;
}
