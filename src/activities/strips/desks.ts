import type { DealRequest } from "../contract";
import { setsFor } from "../copies";
import type { StripsOptions } from "./options";

/** How the groups of the largest class go round the desks. */
export interface DeskRound {
  readonly desks: number;
  /** Learners of the largest class, and the groups that they make. */
  readonly learners: number;
  readonly groups: number;
  /** Groups without a desk in each round. */
  readonly waiting: number;
  /** Until every group has been at every desk. */
  readonly rounds: number;
}

/**
 * Undefined where there are no desks, where the unit does not say how large its classes are, and where a plan of the unit lays
 * the desks out: that one has groups of its own and says who waits.
 */
export function deskRound({ desks, group }: StripsOptions, request: DealRequest): DeskRound | undefined {
  const { classes } = request;
  if (desks === undefined || classes.length === 0 || isPlanned(request)) return undefined;
  const learners = Math.max(...classes);
  const groups = setsFor(learners, group);
  return { desks, learners, groups, waiting: Math.max(0, groups - desks), rounds: Math.max(desks, groups) };
}

/** Whether some plan of stations of the unit is about desks of this activity. */
function isPlanned({ unit, title }: DealRequest): boolean {
  return unit.stations.some(({ options: { entries } }) => {
    const value = (key: string): unknown => entries.find((entry) => entry.key === key)?.value;
    const named = value("stations");
    const among = named === undefined || [named].flat().some((name) => name === title || name === "strips");
    return value("desks") !== undefined && among;
  });
}
