/** A stretch of printed text in one style. */
export interface Run {
  readonly text: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
}

/** The bare characters of some runs. */
export function plain(runs: readonly Run[]): string {
  return runs.map((run) => run.text).join("");
}

/** Equal for runs that print alike; used as a cache key. */
export function runsKey(runs: readonly Run[]): string {
  return runs.map((run) => `${run.bold ? "b" : ""}${run.italic ? "i" : ""}\u0001${run.text}`).join("\u0002");
}
