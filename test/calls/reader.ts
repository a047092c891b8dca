import type { PrintedPage } from "../support/print";

/** Rows of a list: number, statement, answer, correction, by what stands on one line. */
export function rowsOf({ texts }: PrintedPage): string[][] {
  const heads = texts.find(({ text }) => text === "Statement");
  const lines = new Map<number, (typeof texts)[number][]>();
  for (const text of texts.filter(({ y }) => y > (heads?.y ?? 0) + 1)) {
    const key = Math.round(text.y * 10);
    lines.set(key, [...(lines.get(key) ?? []), text]);
  }
  return [...lines]
    .sort(([a], [b]) => a - b)
    .map(([, row]) => row.sort((a, b) => a.x - b.x).map(({ text }) => text))
    .filter(([number]) => /^\+?\d+$/.test(number ?? ""));
}
