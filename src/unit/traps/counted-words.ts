import type { Line, Style } from "./styles";

/** `Step 1: `, `Schritt 2. ` */
export const worded = /^([\p{L}\p{M}]{2,10})[ \t]+(\d{1,2})[ \t]*[.:)：–—-][ \t]*(?=\S)/u;

/** Steps that a word counts from the first on; those of a lesson do so too. */
export function countedWords(found: readonly Line[]): Style | undefined {
  const steps = found.map(({ text }) => worded.exec(text));
  const areCounted = steps.every((match, i) => match?.[1] === steps[0]?.[1] && Number(match?.[2]) === i + 1);
  if (found.length < 3 || !areCounted) return undefined;
  return {
    begins: steps.map((match, i) => ({ cut: match?.[0].length ?? 0, put: `${i + 1}. ` })),
    message: "This is no list: an event begins with its number, a full stop and a space.",
    as: "events",
    unsure: true,
  };
}
