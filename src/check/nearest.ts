/** Edit distance with exchanged neighbours counted once (optimal string alignment; Damerau 1964). */
export function distance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((rows[i - 1]?.[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (rows[i - 1]?.[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, (rows[i - 2]?.[j - 2] ?? 0) + 1);
      row.push(best);
    }
    rows.push(row);
  }
  return rows[a.length]?.[b.length] ?? 0;
}

/** How far a candidate is from a word, case aside; one that goes on behind the whole word is next to it. */
function far(word: string, candidate: string): number {
  const [written, other] = [word.toLowerCase(), candidate.toLowerCase()];
  return goesOn(written, other) ? 1 : distance(written, other);
}

/** Whether a text is a whole word with more behind it. */
function goesOn(word: string, other: string): boolean {
  return word !== "" && other.startsWith(word) && /^[^\p{L}\p{M}\p{N}_-]/u.test(other.slice(word.length));
}

/** Whether a candidate is within half of a word's length, so that a slip may have made one of the other. */
function isNear(word: string, candidate: string): boolean {
  return far(word, candidate) <= Math.max(1, Math.floor(word.length / 2));
}

/** The candidates, nearest first; only those that are near where `strict`. */
export function nearest(word: string, candidates: readonly string[], strict = false): string[] {
  return candidates
    .filter((candidate) => !strict || isNear(word, candidate))
    .map((candidate) => ({ candidate, at: far(word, candidate) }))
    .sort((a, b) => a.at - b.at)
    .map(({ candidate }) => candidate);
}

/**
 * The candidate that is surely meant by a word: the only one that differs in nothing but case and white space, else the only nearest one
 * with a letter in four that is another, and the same numbers. What is merely the nearest may be something else altogether.
 */
export function surelyMeant(word: string, candidates: readonly string[]): string | undefined {
  const bare = (text: string): string =>
    text
      .normalize("NFC")
      .toLowerCase()
      .replace(/[\s_-]+/gu, "");
  const numbers = (text: string): string => text.replace(/\P{Nd}+/gu, " ").trim();
  const alike = [...new Set(candidates)].filter((candidate) => numbers(candidate) === numbers(word));
  const measured = alike.map((candidate) => {
    const [one, other] = [bare(word), bare(candidate)];
    const most = Math.floor(Math.min(one.length, other.length) / 4);
    const near = goesOn(word.toLowerCase(), candidate.toLowerCase()) ? 1 : distance(one, other);
    return { candidate, far: one === other ? 0 : near, most };
  });
  const least = Math.min(...measured.map(({ far }) => far));
  const [found, ...more] = measured.filter(({ far }) => far === least);
  return found && more.length === 0 && found.far <= found.most ? found.candidate : undefined;
}
