import type { Reading } from "../make/workshop";
import { proofInShort } from "./preview/sentences";

/** What the language status says of a unit. */
export interface StatusLine {
  readonly busy: boolean;
  readonly text: string;
  readonly detail: string;
  readonly level: "error" | "warning" | "information";
}

/** What was found and what is proven; of a unit that is not read yet, that it is being read. */
export function statusLine(reading: Pick<Reading, "findings" | "activities"> | undefined): StatusLine {
  if (!reading) return { busy: true, text: "Reading the unit", detail: "", level: "information" };
  const { findings, activities } = reading;
  const count = (wanted: string): number => findings.filter(({ severity }) => severity === wanted).length;
  const [errors, warnings] = [count("error"), count("warning")];
  const loud = errors + warnings;
  return {
    busy: false,
    text: loud === 0 ? "Nothing to mend" : loud === 1 ? "1 thing to mend" : `${loud} things to mend`,
    detail: proofInShort(activities.flatMap(({ deals }) => deals.map(({ proof }) => proof))),
    level: errors > 0 ? "error" : loud > 0 ? "warning" : "information",
  };
}
