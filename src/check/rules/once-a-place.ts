import type { Report } from "../../base/finding";

/** One report for each place, however many activities use it. */
export function once(reports: readonly Report[]): Report[] {
  return [...new Map(reports.map((report) => [report.range.start, report])).values()];
}
