import type { Pair } from "../../../unit/unit";
import { lacksSpaces } from "../cut";

/** A pair that makes one card because its script has no spaces and it has no bars. */
export function lacksBars({ left }: Pair): boolean {
  const [answer] = left.answers;
  return !answer.picture && lacksSpaces(answer.text);
}
