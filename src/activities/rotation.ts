/*
 * Who is where when: groups go round stations in rounds. Times are minutes.
 */

export interface RotationOptions {
  readonly stations: number;
  /** How many times each station is set up: the groups share out over as many rounds of stations. 1 where it is left out. */
  readonly copies?: number;
  readonly groups: number;
  /** Work at a station, moving on, before the first round, after the last. */
  readonly work: number;
  readonly move: number;
  readonly setup: number;
  readonly close: number;
  readonly period: number;
  /** `balanced` needs an even number of stations and no more groups than stations and copies of them; `turn` else. */
  readonly order: "turn" | "balanced";
}

export interface Rotation {
  /** For each round and group the station (from 0; copies after all stations, in the same order), or undefined where the group waits. */
  readonly at: readonly (readonly (number | undefined)[])[];
  /** Minutes from the lesson's start to the start of each round. */
  readonly starts: readonly number[];
  /** setup + R·work + (R − 1)·move + close */
  readonly total: number;
  readonly fits: boolean;
  /** Longest whole minutes of work that fit the period; below 1 where not even one does. */
  readonly longest: number;
  /** Stations without a group, in each round, or the most in one where that varies. */
  readonly idle: number;
  /** Groups without a station, in each round, or the most in one where that varies. */
  readonly waiting: number;
  /** Copies have unequally many groups, so that not every round has as many idle stations and waiting groups. */
  readonly varies: boolean;
  readonly order: "turn" | "balanced";
}

/**
 * A plan in which every group visits every station once: R = max(groups, stations) rounds, the group g standing at round r at
 * station (g + r) mod R, or waiting where there is none. Where stations are set up c times, the group g goes round copy g mod c,
 * each as a plan of its own with about groups / c groups. Balanced orders are Williams designs (Williams 1949, Aust. J. Sci. Res.
 * A 2:149–168).
 */
export function rotation(options: RotationOptions): Rotation {
  const { stations, groups, work, move, setup, close, period } = options;
  const { copies = 1 } = options;
  // Groups of the first copy, which has the most.
  const most = Math.ceil(groups / copies);
  const rounds = Math.max(stations, most);
  const balanced = options.order === "balanced" && stations % 2 === 0 && most <= stations;
  const square = balanced ? williams(stations) : undefined;
  const at = Array.from({ length: rounds }, (_, r) =>
    Array.from({ length: groups }, (_, g) => {
      const [place, copy] = [Math.floor(g / copies), g % copies];
      const station = square ? square[place]?.[r] : (place + r) % rounds;
      return station !== undefined && station < stations ? station + copy * stations : undefined;
    }),
  );
  const waits = at.map((round) => round.filter((station) => station === undefined).length);
  const waiting = Math.max(...waits);
  const total = setup + rounds * work + (rounds - 1) * move + close;
  return {
    at,
    starts: Array.from({ length: rounds }, (_, r) => setup + r * (work + move)),
    total,
    fits: total <= period + 1e-9,
    longest: Math.floor((period - setup - close - (rounds - 1) * move) / rounds + 1e-9),
    idle: stations * copies - groups + waiting,
    waiting,
    varies: waits.some((each) => each !== waiting),
    order: balanced ? "balanced" : "turn",
  };
}

/** Groups that have been at all their stations and wait until the end; the round, from 0, from which each does. */
export function throughFrom({ at }: Pick<Rotation, "at">): { readonly group: number; readonly round: number }[] {
  return (at[0] ?? []).flatMap((_, group) => {
    const last = at.findLastIndex((round) => round[group] !== undefined);
    return last + 1 < at.length ? [{ group, round: last + 1 }] : [];
  });
}

/** A Williams square for an even n: each station once in each row and column, and after each other one equally often. */
export function williams(n: number): number[][] {
  const first = Array.from({ length: n }, (_, i) => (i % 2 === 1 ? (i + 1) / 2 : (n - i / 2) % n));
  return Array.from({ length: n }, (_, row) => first.map((value) => (value + row) % n));
}

/** Sizes of `groups` groups of a class, as even as it goes, larger ones first: 27 in 6: 5 5 5 4 4 4. */
export function groupSizes(learners: number, groups: number): number[] {
  return Array.from({ length: groups }, (_, i) => Math.floor(learners / groups) + (i < learners % groups ? 1 : 0));
}

/** A clock time from `H:MM` and minutes later; fractions of a minute as seconds. */
export function clock(start: string | undefined, minutes: number): string {
  const [hours = 0, first = 0] = (start ?? "0:00").split(":").map(Number);
  const seconds = Math.round((hours * 60 + first + minutes) * 60);
  const pad = (value: number): string => String(value).padStart(2, "0");
  const rest = seconds % 60;
  return `${Math.floor(seconds / 3600) % 24}:${pad(Math.floor(seconds / 60) % 60)}${rest === 0 ? "" : `:${pad(rest)}`}`;
}
