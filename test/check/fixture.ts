export interface Expected {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly code: string;
  readonly severity?: string;
}

/**
 * Parts a fixture into the unit and its expectation: a line of carets under the offending text, then the code and, where it
 * matters, the severity.
 */
export function parseFixture(raw: string): { text: string; expected: Expected[] } {
  const lines: string[] = [];
  const expected: Expected[] = [];
  for (const line of raw.split("\n")) {
    const match = /^( *)(\^+) ([a-z-]+)(?: (error|warning|information|hint))?$/.exec(line);
    if (!match) {
      lines.push(line);
      continue;
    }
    const from = (match[1] ?? "").length;
    expected.push({
      line: lines.length - 1,
      from,
      to: from + (match[2] ?? "").length,
      code: match[3] ?? "",
      ...(match[4] ? { severity: match[4] } : {}),
    });
  }
  return { text: lines.join("\n"), expected };
}
