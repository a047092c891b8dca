import type { Fix } from "../base/finding";
import type { Steps } from "../base/steps";
import type { DealRequest, Foresight, RequestChange } from "./contract";

/* What a fix leads to, said in its title where nothing else helps. */

/** A request with other values of some options. */
export function withOptions(options: Readonly<Record<string, unknown>>): RequestChange {
  return (request): DealRequest => {
    const value = { ...request.options.value, ...options };
    return { ...request, options: { ...request.options, value } };
  };
}

/** What a fix leaves, as the end of its title. */
export function leaving(titles: readonly string[]): string {
  if (titles.length === 0) return "";
  return `, which leaves to mend: ${titles.map((title) => title.charAt(0).toLowerCase() + title.slice(1)).join("; ")}`;
}

/** A fix, and what it makes of the request. */
export interface Changing {
  readonly fix: Fix;
  readonly change: RequestChange;
}

/** In steps: fixes whose titles say what would be told after them. */
export function* saying(all: readonly Changing[], foresee: Foresight | undefined): Steps<Fix[], unknown> {
  const fixes: Fix[] = [];
  for (const { fix, change } of all) {
    const left = foresee && (yield* foresee(change));
    fixes.push({ ...fix, title: `${fix.title}${leaving(left ?? [])}` });
  }
  return fixes;
}
