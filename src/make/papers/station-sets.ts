import type { GuideEntry } from "../../activities/contract";
import { setsFor } from "../../activities/copies";
import type { StationWords } from "../../activities/paper-words";
import { counted } from "../../activities/report";
import { groupSizes } from "../../activities/rotation";
import type { Printable } from "../printable";

/** Those between whom an object lies. */
const pair = 2;

export interface Around {
  /** Learners; empty where the unit does not say. */
  readonly classes: readonly number[];
  readonly groups: number;
  /** Stations that have this activity. */
  readonly places: number;
  /** A desk has one set. */
  readonly desks: boolean;
}

/** What lies at a station for the groups that come by, as far as the unit says how large they are. */
export interface LaidOut {
  /** As many as the largest group takes, and how many learners share one. Left out where there are no sets, or no classes. */
  readonly sets?: { readonly count: number; readonly least: number; readonly most: number };
  /** Left out where nobody calls, and at desks, where all play the same and hear the same caller. */
  readonly caller?: "of the group" | "teacher";
  /** Learners of the largest group in which nobody is left over, where others have somebody who calls. */
  readonly tooFew?: number;
}

export function layOut(
  { dealt, kind: { called } }: Printable,
  { atSet }: GuideEntry,
  { classes, groups, places, desks }: Around,
): LaidOut {
  const sizes = [...new Set(classes.flatMap((learners) => groupSizes(learners, groups)))].filter((size) => size > 0);
  // Where nobody is left over to call, the teacher does.
  const needed = atSet ?? pair;
  const few = sizes.filter((size) => size <= needed);
  const oneCalls = sizes.length === 0 || few.length < sizes.length;
  const caller = called && !desks ? (oneCalls ? "of the group" : "teacher") : undefined;
  const playing = caller === "of the group" ? sizes.map((size) => (size > needed ? size - 1 : size)) : sizes;
  const printed = dealt.deals.reduce((sum, { copies }) => sum + (copies === "by copier" ? Infinity : copies), 0);
  const most = desks ? 1 : Math.max(1, Math.floor(printed / places));
  const laid = (size: number): number => Math.min(most, setsFor(size, needed));
  const shares = playing.flatMap((size) => [Math.floor(size / laid(size)), Math.ceil(size / laid(size))]);
  return {
    ...(atSet === undefined || playing.length === 0
      ? {}
      : { sets: { count: Math.max(...playing.map(laid)), least: Math.min(...shares), most: Math.max(...shares) } }),
    ...(caller ? { caller } : {}),
    ...(caller === "of the group" && few.length > 0 ? { tooFew: Math.max(...few) } : {}),
  };
}

/** Lines of a station's card, which learners read. */
export function layOutRows({ sets, caller, tooFew }: LaidOut, words: StationWords): { label: string; value: string }[] {
  const few = tooFew === undefined ? [] : [words.tooFew(tooFew)];
  return [
    ...(sets ? [{ label: words.sets, value: words.setsFor(sets.count, range(sets.least, sets.most, words.or)) }] : []),
    ...(caller
      ? [{ label: words.caller, value: caller === "teacher" ? words.teacherCalls : [words.oneCalls, ...few].join(" ") }]
      : []),
  ];
}

/** What the plan says to the teacher behind a station's name: ` (4 sets; one of the group calls)`. */
export function layOutNote({ sets, caller, tooFew }: LaidOut): string {
  const parts = [
    ...(sets ? [counted(sets.count, "set")] : []),
    ...(caller
      ? [
          caller === "teacher"
            ? "you call"
            : `one of the group calls${tooFew === undefined ? "" : `, you where they are ${tooFew}`}`,
        ]
      : []),
  ];
  return parts.length > 0 ? ` (${parts.join("; ")})` : "";
}

function range(least: number, most: number, or: string): string {
  if (least === most) return String(least);
  return most - least === 1 ? `${least} ${or} ${most}` : `${least}–${most}`;
}
