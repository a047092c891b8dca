import { hash64 } from "../base/seed";

/** The next seeds that fixes try stay within six digits. */
const seeds = 999_900;

/**
 * The seed of an activity that sets none of its own: the unit's for the first of its kind (`nth` 0), another one for each later one,
 * so that no two of a size have one key. It hangs on nothing that is written in the unit but the order of its activities. Written
 * into the block it gives the same arrangement.
 */
export function ownSeed(seed: number, nth: number): number {
  return nth === 0 ? seed : 1 + (hash64(`activity/${seed}/${nth}`)[0] % seeds);
}
