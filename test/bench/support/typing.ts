import { word } from "../../support/units";

/*
 * Units to be typed in, and what is told of times.
 */

export const tilesOnly = [
  "make: tiles\ngrid: 4 x 4\ndecoys: 12\nlevels: [gentle, hard]",
  "make: tiles\ngrid: 5 x 3",
  "make: tiles\ngrid: auto\nfill: blank",
  "make: tiles\ngrid: 4 x 4\nversions: 2",
  "make: tiles\ngrid: 3 x 4\ndecoys: 6",
];

/** Each kind at least once. */
export const allKinds = [
  ...tilesOnly.slice(0, 2),
  "make: loop",
  "make: board\ngrid: 4 x 5",
  "make: sort",
  "make: calls",
  "make: rebuild\ntake: 6",
  "make: strips",
  "make: loop\nsize: mini\nversions: 2",
  "make: sort\npiles: headings",
];

/** 300 pairs in ten sections with an activity each, 60 statements. */
export function largeUnit(activities: readonly string[]): string {
  const front = "---\ntitle: The harbour\nteaches: pt\nexplains: en\nclasses: [24, 27]\n---\n";
  const sections = Array.from({ length: 10 }, (_, s) => {
    const options = activities[s % activities.length] ?? "";
    const bars = options.startsWith("make: rebuild");
    const pairs = Array.from({ length: 30 }, (_, i) => {
      const n = s * 30 + i;
      const extra = i % 10 === 3 ? ` / the ${word(n + 4000)}` : "";
      const left = bars ? `o ${word(n)} | ${word(n + 500)} | sem ${word(n + 900)}` : `o ${word(n)}`;
      return `- ${left} = the ${word(n + 2000)} ${i % 5 === 0 ? `*${word(n)}*` : ""}${extra}`.trimEnd();
    });
    const said = Array.from({ length: 6 }, (_, i) => `- [${i % 2 ? "x" : " "}] Ela ${word(s * 6 + i)} a conta.`);
    const events = options.startsWith("make: strips")
      ? `${Array.from({ length: 8 }, (_, i) => `${i + 1}. Ela ${word(700 + i)} o barco.`).join("\n")}\n\n`
      : "";
    const items = options.includes("headings")
      ? `### ${word(50)}\n\n${pairs.slice(0, 15).join("\n")}\n\n### ${word(51)}\n\n${pairs.slice(15).join("\n")}`
      : pairs.join("\n");
    return `## Section ${s + 1}\n\n${events}${said.join("\n")}\n\n${items}\n\n\`\`\`activity\n${options}\nseed: ${s + 1}\n\`\`\`\n`;
  });
  return `${front}\n${sections.join("\n")}`;
}

/** The same unit with one word one letter longer: a pair's word for most `n`, each fifth time a statement's. */
export function typed(text: string, n: number): string {
  const lines = text.split("\n");
  const wanted = n % 5 === 4 ? /^- \[/ : /^- o /;
  const places = lines.flatMap((line, i) => (wanted.test(line) ? [i] : []));
  const at = places[(n * 37) % places.length] ?? 0;
  lines[at] = (lines[at] ?? "").replace(/^(- (?:\[.\] Ela|o) \w+)/, "$1s");
  return lines.join("\n");
}

export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(part * (sorted.length - 1))] ?? 0;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);
