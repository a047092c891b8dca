import { upTo } from "../base/seed";
import type { Deal } from "./contract";
import type { CommonOptions, Level } from "./options";

/** Which deal of an activity: its level, and its version from 1. */
export interface DealPlan {
  readonly level: Level;
  readonly version: number;
}

/**
 * The deals to make, version by version within a level. `plain` is the level that the other options amount to: it is made where no
 * levels are asked for.
 */
export function plansOf({ levels, versions }: Pick<CommonOptions, "levels" | "versions">, plain: Level): DealPlan[] {
  return (levels ?? [plain]).flatMap((level) => upTo(versions).map((i): DealPlan => ({ level, version: i + 1 })));
}

/** The seed's stream of a deal: that of its version alone for the plain level, so that asking for levels moves none of its pieces. */
export function streamOf(name: string, seed: number, { level, version }: DealPlan, plain: Level): string {
  return `${name}/${seed}/${version}${level === plain ? "" : `/${level}`}`;
}

/**
 * A deal's level as files and programs are told it, alike for all kinds: `plain` where no levels are asked for, whatever that
 * amounts to in a kind.
 */
export function levelTold({ level }: Pick<Deal, "level">, levels: readonly Level[] | undefined): string {
  return levels === undefined ? "plain" : level;
}

/** What of a plan makes a deal's code: the version, and the level where it is not the plain one. */
export function planCode({ level, version }: DealPlan, plain: Level): number | string {
  return level === plain ? version : `${version} ${level}`;
}

/** Deals that are alike in what `keyOf` says, as the first of them with the codes of all. */
export function dealsAlike<D extends Pick<Deal, "code">>(
  deals: readonly D[],
  keyOf: (deal: D) => string,
): { readonly codes: readonly string[]; readonly deal: D }[] {
  const alike = new Map<string, { codes: string[]; deal: D }>();
  for (const deal of deals) {
    const known = alike.get(keyOf(deal));
    if (known) known.codes.push(deal.code);
    else alike.set(keyOf(deal), { codes: [deal.code], deal });
  }
  return [...alike.values()];
}
