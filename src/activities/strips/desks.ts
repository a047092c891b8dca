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
 * Undefined where there are no desks, where the unit does not say how large its classes are, and where a plan of the unit has this
 * activity: that one has groups of its own and says who waits.
 */
export function deskRound({ desks, group }: StripsOptions, request: DealRequest): DeskRound | undefined {
  const { classes } = request;
  if (desks === undefined || classes.length === 0 || isPlanned(request)) return undefined;
  const learners = Math.max(...classes);
  const groups = setsFor(learners, group);
  return { desks, learners, groups, waiting: Math.max(0, groups - desks), rounds: Math.max(desks, groups) };
}

/** As many as the schema of strips allows, and a slip has room for. */
export const mostDesks = 20;

interface Plan {
  readonly stations: readonly string[] | undefined;
  /** Where it lays out one activity at desks: how many there are. */
  readonly desks: number | undefined;
}

function plansOf({ unit }: DealRequest): Plan[] {
  return unit.stations.map(({ options: { entries } }) => {
    const value = (key: string): unknown => entries.find((entry) => entry.key === key)?.value;
    const [stations, desks, copies] = [value("stations"), value("desks"), value("copies")];
    const times = typeof copies === "number" ? copies : 1;
    return {
      stations: stations === undefined ? undefined : [stations].flat().map(String),
      desks: typeof desks === "number" ? desks * times : undefined,
    };
  });
}

/** Whether some plan of stations of the unit has this activity: its times and signals go first. */
export function isPlanned(request: DealRequest): boolean {
  return plansOf(request).some(({ stations }) => stations?.some((name) => isNamed(request, name)) ?? true);
}

/** The desks that the block asks for, else those of a plan of the unit that lays this activity out at desks. */
export function withDesks(options: StripsOptions, request: DealRequest): StripsOptions {
  if (options.desks !== undefined) return options;
  const planned = plansOf(request).find(({ stations, desks }) => {
    if (desks === undefined || !Number.isInteger(desks) || desks < 2 || desks > mostDesks) return false;
    const [first] = stations ?? [];
    return first === undefined ? request.index === 0 : isNamed(request, first);
  });
  return planned?.desks === undefined ? options : { ...options, desks: planned.desks };
}

function isNamed({ title }: DealRequest, name: string): boolean {
  return name === title || name === "strips";
}
