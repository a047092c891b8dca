import type { Range } from "../../base/range";
import type { Run } from "../../base/run";
import type { Proof } from "../../prove/proof";
import type { Item, Picture } from "../../unit/unit";
import type { Deal, Dealt } from "../contract";
import type { Level } from "../options";
import type { StripsOptions } from "./options";

/** Something that happens in the story. */
export interface StripEvent {
  /** Empty for a bare picture. */
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** As printed; the alternative text of a bare picture. */
  readonly text: string;
  /** Equal for events that are the same to a learner. */
  readonly key: string;
  readonly source: Range;
  readonly item: Item;
  /** What has a lower rank comes before; what has the same may stand in any order. */
  readonly rank: number;
  /** The event that it stands under as a bullet: without it, it says nothing. */
  readonly under?: Item;
}

/** Indices of events, as they lie from top to bottom. */
export type StoryOrder = readonly number[];

export interface StripsDeal extends Deal {
  readonly level: Level;
  /** Its own events, in the order of the story; the lists of indices here count these. */
  readonly events: readonly StripEvent[];
  /** Events whose strips show their place: the gentle level's help. */
  readonly told: readonly number[];
  /** The events as they are dealt: a strip's place here is its number, and gives it its letter. */
  readonly dealt: StoryOrder;
  /** The dealt order tells the story: no wrong order was found. */
  readonly inOrder: boolean;
  readonly proof: Proof<StoryOrder>;
}

export interface DealtStrips extends Dealt<StripsDeal> {
  readonly options: StripsOptions;
  /** Those of all deals, in the order of the story. */
  readonly events: readonly StripEvent[];
}

/** Without I and O, which look like the numbers of blank strips. */
const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

/** What a strip is called on slips and keys: A, B, … Z, AA, AB, … */
export function signOf(strip: number): string {
  return signIn(letters, strip);
}

/** The n-th name, from 0, that letters make: each of them, then two of them, … */
export function signIn(alphabet: string, n: number): string {
  const last = alphabet.charAt(n % alphabet.length);
  return n < alphabet.length ? last : signIn(alphabet, Math.floor(n / alphabet.length) - 1) + last;
}
