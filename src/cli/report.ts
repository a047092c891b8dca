import type { DealtActivity } from "../activities/contract";
import type { Finding } from "../base/finding";
import { LineIndex } from "../base/range";
import type { Reading } from "../make/workshop";

/** A file that was asked for: what was read, or why it could not be. */
export type Outcome =
  | { readonly file: string; readonly reading: Reading }
  | { readonly file: string; readonly error: string };

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
export function settingsReports(readings: readonly Reading[]): FileReport[] {
  const byPath = new Map(readings.flatMap(({ elsewhere }) => elsewhere.map((file) => [file.path, file] as const)));
  return [...byPath.values()].map(({ path, text, findings }) => ({
    file: path,
    lines: new LineIndex(text),
    findings,
    activities: [],
  }));
}
