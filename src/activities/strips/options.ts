import { validateStrips } from "../../base/generated/validators";
import type { CommonOptions, ResolvedOptions } from "../options";

/** Options of `strips`, as `strips.schema.json` describes them. */
export interface StripsOptions extends CommonOptions {
  readonly make: "strips";
  readonly backs: "none" | "numbers";
  readonly flip: "long" | "short";
  readonly slip: "order" | "none";
  readonly desks?: number;
  /** mm */
  readonly height?: number;
}

function isStripsOptions(value: unknown): value is StripsOptions {
  return validateStrips(value);
}

/** The options of a request as strips options; the plan has checked them against the schema. */
export function stripsOptions({ value }: ResolvedOptions<CommonOptions>): StripsOptions {
  if (!isStripsOptions(value)) throw new TypeError("options of strips were not checked");
  return value;
}
