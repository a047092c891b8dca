import type { RuleContext } from "../../contract";
import { dealSort } from "../deal";
import type { DealtSort } from "../model";
import type { SortOptions } from "../options";

export type SortContext = RuleContext<DealtSort>;

/** The same words with other options. */
export function dealtWith({ request }: DealtSort, options: Partial<SortOptions>): DealtSort {
  const value = { ...request.options.value, ...options };
  return dealSort({ ...request, options: { ...request.options, value } });
}

/** The same with all cards. */
export function dealtWhole({ request }: DealtSort): DealtSort {
  const { take: _, ...value } = request.options.value;
  return dealSort({ ...request, options: { ...request.options, value } });
}
