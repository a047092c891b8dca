import type { LoopPuzzle } from "./loops";

/** A puzzle with every list without repeats, lists that were shared still so, and a look for every card. */
export function readPuzzle(puzzle: LoopPuzzle): Required<LoopPuzzle> {
  const size = puzzle.follows.length;
  const clean = new Map<readonly number[], readonly number[]>();
  const follows = puzzle.follows.map((list) => {
    const known = clean.get(list);
    if (known) return known;
    if (list.some((next) => !Number.isInteger(next) || next < 0 || next >= size))
      throw new RangeError("a card of a loop is followed by a card that is not there");
    const distinct = [...new Set(list)];
    clean.set(list, distinct);
    return distinct;
  });
  const look = puzzle.look ?? follows.map((_, card) => card);
  if (look.length !== size) throw new RangeError("a loop needs one look for each card");
  if (new Set(look).size < size && !matchAlike(follows, look))
    throw new RangeError("cards of a loop that print alike must match alike");
  return { follows, look };
}

function matchAlike(follows: readonly (readonly number[])[], look: readonly number[]): boolean {
  const members = new Map<number, number>();
  for (const number of look) members.set(number, (members.get(number) ?? 0) + 1);
  // A list takes all cards of a look or none.
  for (const list of new Set(follows)) {
    const taken = new Map<number, number>();
    for (const next of list) taken.set(look[next] ?? -1, (taken.get(look[next] ?? -1) ?? 0) + 1);
    for (const [number, count] of taken) if (count !== members.get(number)) return false;
  }
  const firsts = new Map<number, readonly number[]>();
  return follows.every((list, card) => {
    const first = firsts.get(look[card] ?? -1);
    if (!first) {
      firsts.set(look[card] ?? -1, list);
      return true;
    }
    if (first === list) return true;
    const wanted = new Set(first);
    return wanted.size === list.length && list.every((next) => wanted.has(next));
  });
}
