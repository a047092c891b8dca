import type { Deal, Dealt } from "./contract";
import type { CommonOptions } from "./options";
import type { MaterialWords } from "./paper-words";

/**
 * Sets that a class needs: groups of `group`, and where it does not divide, some groups are one larger (27 learners in
 * pairs: 12 pairs and a trio). Common practice, no published source.
 */
export function setsFor(learners: number, group: number): number {
  return Math.max(1, Math.floor(learners / group));
}

/** Sets of each deal that the largest class needs; undefined where the unit names no class. */
export function setsWanted({
  request: { classes, options },
  deals,
}: Pick<Dealt<Deal>, "request" | "deals">): number | undefined {
  if (classes.length === 0) return undefined;
  const needed = Math.max(...classes.map((learners) => setsFor(learners, options.value.group)));
  return Math.max(1, Math.ceil(needed / deals.length));
}

/**
 * Copies of each of some deals, or one master. Shared out evenly, the remainder going to the first. Numbers by level go to the
 * deals of that level: a level that they leave out gets what the largest class still needs, and where no levels are asked for
 * all of them count together.
 */
export function copiesOf(
  options: Pick<CommonOptions, "copies" | "group" | "levels">,
  classes: readonly number[],
  deals: readonly { readonly level: string }[],
): readonly (number | "by copier")[] {
  const { copies, group } = options;
  if (copies === "by copier") return deals.map(() => copies);
  const needed = Math.max(1, ...classes.map((learners) => setsFor(learners, group)));
  if (typeof copies !== "object") {
    const total = copies ?? needed;
    return deals.map((_, i) => share(total, deals.length, i));
  }
  const named = Object.values(copies).reduce((sum, each) => sum + each, 0);
  const levels = new Set(deals.map(({ level }) => level));
  const rest = Math.max(1, needed - named);
  return deals.map((deal, i) => {
    const peers = deals.filter(({ level }) => level === deal.level);
    const place = deals.slice(0, i).filter(({ level }) => level === deal.level).length;
    const total = options.levels === undefined && levels.size === 1 ? named : (copies[deal.level] ?? rest);
    return share(total, peers.length, place);
  });
}

function share(total: number, among: number, place: number): number {
  return Math.max(1, Math.floor(total / among) + (place < total % among ? 1 : 0));
}

/** How many classes write on one print: each needs its own where that is done once. A master is copied anew for each. */
function classesOf({ reuse, copies }: Pick<CommonOptions, "reuse" | "copies">, classes: readonly number[]): number {
  return reuse === "once" && copies !== "by copier" ? Math.max(1, classes.length) : 1;
}

/** Blank pieces of a set: as many as are asked for, for each class that writes on them. */
export function blanksOf(
  options: Pick<CommonOptions, "blanks" | "reuse" | "copies">,
  classes: readonly number[],
): number {
  return options.blanks * classesOf(options, classes);
}

/** `6 blank (2 for each class)`; undefined where there are none. */
export function blanksText(
  options: Pick<CommonOptions, "blanks" | "reuse" | "copies">,
  classes: readonly number[],
): string | undefined {
  if (options.blanks === 0) return undefined;
  const several = classesOf(options, classes) > 1;
  return `${blanksOf(options, classes)} blank${several ? ` (${options.blanks} for each class)` : ""}`;
}

/** What `count` learners write with: what is written in a sleeve or on film is wiped off again. */
export function pencils(words: MaterialWords, { reuse }: Pick<CommonOptions, "reuse">, count: "one" | "some"): string {
  if (reuse === "once") return count === "one" ? words.pencil : words.pencils;
  return count === "one" ? words.pen : words.pens;
}

/** Says of what is written on that it lies in a sleeve: ` in a sleeve`, or nothing. */
export function inSleeve(words: MaterialWords, { reuse }: Pick<CommonOptions, "reuse">): string {
  return reuse === "sleeve" ? words.inSleeve : "";
}
