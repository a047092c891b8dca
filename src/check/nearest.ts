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

/** The candidates, nearest first, case aside; only those within half of the word's length where `strict`. */
export function nearest(word: string, candidates: readonly string[], strict = false): string[] {
  const measured = candidates.map((candidate) => ({
    candidate,
    far: distance(word.toLowerCase(), candidate.toLowerCase()),
  }));
  return measured
    .filter(({ far }) => !strict || far <= Math.max(1, Math.floor(word.length / 2)))
    .sort((a, b) => a.far - b.far)
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
    return { candidate, far: one === other ? 0 : distance(one, other), most };
  });
  const least = Math.min(...measured.map(({ far }) => far));
  const [found, ...more] = measured.filter(({ far }) => far === least);
  return found && more.length === 0 && found.far <= found.most ? found.candidate : undefined;
}
