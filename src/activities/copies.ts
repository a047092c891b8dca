import type { CommonOptions } from "./options";

/**
 * Sets that a class needs: groups of `group`, and where it does not divide, some groups are one larger (27 learners in
 * pairs: 12 pairs and a trio). Common practice, no published source.
 */
export function setsFor(learners: number, group: number): number {
  return Math.max(1, Math.floor(learners / group));
}

/** Copies of each of `deals` deals of one level, or one master. Shared out evenly, the remainder going to the first. */
export function copiesOf(
  options: Pick<CommonOptions, "copies" | "group">,
  classes: readonly number[],
  deals: readonly { readonly level: string }[],
): readonly (number | "by copier")[] {
  const { copies, group } = options;
  if (copies === "by copier") return deals.map(() => copies);
  if (typeof copies === "object") {
    return deals.map((deal, i) => {
      const peers = deals.filter(({ level }) => level === deal.level);
      const place = deals.slice(0, i).filter(({ level }) => level === deal.level).length;
      return share(copies[deal.level] ?? 0, peers.length, place);
    });
  }
  const total = copies ?? Math.max(1, ...classes.map((learners) => setsFor(learners, group)));
  return deals.map((_, i) => share(total, deals.length, i));
}

function share(total: number, among: number, place: number): number {
  return Math.max(1, Math.floor(total / among) + (place < total % among ? 1 : 0));
}
