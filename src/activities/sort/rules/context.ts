import type { Press } from "../../contract";
import { dealSort } from "../deal";
import type { DealtSort } from "../model";
import type { SortOptions } from "../options";

export interface SortContext {
  readonly dealt: DealtSort;
  readonly press: Press;
}

/** The same words with other options. */
export function dealtWith({ request }: DealtSort, options: Partial<SortOptions>): DealtSort {
  const value = { ...request.options.value, ...options };
  return dealSort({ ...request, options: { ...request.options, value } });
}
