import { allRules } from "./rules";

/** The codes of all findings. A function, since rules that ask for it are on the list themselves. */
export function codes(): readonly string[] {
  return allRules.map(({ code }) => code);
}
