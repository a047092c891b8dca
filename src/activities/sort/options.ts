import { validateSort } from "../../base/generated/validators";
import type { CommonOptions, ResolvedOptions } from "../options";
import type { Twins } from "../statements";

/** Options of `sort`, as `sort.schema.json` describes them. */
export interface SortOptions extends CommonOptions {
  readonly make: "sort";
  readonly piles: "auto" | "truth" | "headings" | readonly string[];
  readonly names?: readonly [string, string];
  readonly overlap: boolean;
  readonly mats: "auto" | "none" | "circles" | "fields";
  /** Of what is dealt no longer `auto`. */
  readonly headers: "auto" | "cards" | "none";
  readonly show: "left" | "right" | "both";
  readonly mispair?: number;
  readonly twins: Twins;
  /** On a sheet. */
  readonly cards?: number;
}

function isSortOptions(value: unknown): value is SortOptions {
  return validateSort(value);
}

/** The options of a request as sort options; the plan has checked them against the schema. */
export function sortOptions({ value }: ResolvedOptions<CommonOptions>): SortOptions {
  if (!isSortOptions(value)) throw new TypeError("options of sort were not checked");
  return value;
}
