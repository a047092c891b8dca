import type { DealtActivity } from "../activities/contract";
import type { Finding } from "../base/finding";
import { LineIndex } from "../base/range";
import type { Reading } from "../make/workshop";

/** What there is to say about one file. */
export interface FileReport {
  readonly file: string;
  readonly lines: LineIndex;
  readonly findings: readonly Finding[];
  /** None in a file of settings. */
  readonly activities: readonly DealtActivity[];
}

export function unitReport(file: string, { unit: { lines }, findings, activities }: Reading): FileReport {
  return { file, lines, findings, activities };
}

/** The settings files around units in which something is wrong: each once, however many units it is about. */
export function settingsReports(readings: readonly Pick<Reading, "elsewhere">[]): FileReport[] {
  const byPath = new Map(readings.flatMap(({ elsewhere }) => elsewhere.map((file) => [file.path, file] as const)));
  return [...byPath.values()].map(({ path, text, findings }) => ({
    file: path,
    lines: new LineIndex(text),
    findings,
    activities: [],
  }));
}
