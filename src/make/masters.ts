import { setsWanted } from "../activities/copies";
import { upTo } from "../base/seed";
import type { Sheet } from "../page/sheet";
import type { PrintedActivity, Run } from "./printable";

/* Masters are printed once and copied, as often as the largest class needs. */

export function isMaster({ printable: { dealt } }: Pick<PrintedActivity, "printable">): boolean {
  return dealt.deals.some(({ copies }) => copies === "by copier");
}

/** How often each run is laid on the copier for the largest class: 1 where the unit names no class, and where there is no master. */
export function copiesOfRun(activity: Pick<PrintedActivity, "printable">, { sets }: Run): number {
  const wanted = setsWanted(activity.printable.dealt);
  return isMaster(activity) && wanted !== undefined && sets > 0 ? Math.ceil(wanted / sets) : 1;
}

/** Sheets of pieces as they are cut, without backs: those of a master as often as it is copied. */
export function copiedSheets(activity: PrintedActivity): Sheet[] {
  return activity.runs.flatMap((run) => {
    const fronts = run.sheets.filter(({ back }) => !back);
    return upTo(copiesOfRun(activity, run)).flatMap(() => fronts);
  });
}

/** Sets that are cut out of them. */
export function copiedSets(activity: PrintedActivity): number {
  return activity.runs.reduce((sum, run) => sum + run.sets * copiesOfRun(activity, run), 0);
}
