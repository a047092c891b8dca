import type { Deal, Dealt } from "../activities/contract";
import { setsFor } from "../activities/copies";
import type { PrintedActivity } from "./printable";

/* Masters are printed once and copied, as often as the largest class needs. */

export function isMaster({ printable: { dealt } }: Pick<PrintedActivity, "printable">): boolean {
  return dealt.deals.some(({ copies }) => copies === "by copier");
}

/** Sets of each deal that the largest class needs; undefined where the unit names no class. */
export function setsWanted({ request: { classes, options }, deals }: Dealt<Deal>): number | undefined {
  if (classes.length === 0) return undefined;
  const needed = Math.max(...classes.map((learners) => setsFor(learners, options.value.group)));
  return Math.max(1, Math.ceil(needed / deals.length));
}

/** How many sets one copy of a master makes: it may stand on its sheet several times. */
export function setsACopy({ printable: { dealt }, sets }: PrintedActivity): number {
  return sets / dealt.deals.length;
}

/** How often each master is copied for the largest class; 1 where the unit names no class, and where there is no master. */
export function copiesOfMaster(activity: PrintedActivity): number {
  const wanted = setsWanted(activity.printable.dealt);
  return isMaster(activity) && wanted !== undefined ? Math.ceil(wanted / setsACopy(activity)) : 1;
}
