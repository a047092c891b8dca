import { joined, type Report } from "../../base/finding";

/** One report for each place, however many activities use it: it is about all of them. */
export function once(reports: readonly Report[]): Report[] {
  const places = new Map<number, Report>();
  for (const report of reports) {
    const { start } = report.range;
    const known = places.get(start);
    const { activities: own, ...rest } = report;
    const activities = known ? joined(known.activities, own) : own;
    places.set(start, activities ? { ...rest, activities } : rest);
  }
  return [...places.values()];
}
