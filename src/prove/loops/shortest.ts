import type { Circle } from "./loops";

/** Steps from list to list where answers overlap and lists are long. Ours: some milliseconds. */
const mostSteps = 200_000;

/** Prompts as vertices, each the list of what answers it; every arc is a card that one list holds and that asks for the other. */
interface Prompts {
  readonly after: readonly (readonly number[])[];
  /** For each arc, in the order of `after`, one of the cards that are alike in this. */
  readonly cards: readonly (readonly number[])[];
}

/**
 * The shortest circle that cards close, where one has fewer than `below` cards; `undefined` where none has. No more than so many
 * steps are gone: where lists are long and overlap, a shorter one may be left.
 *
 * @param follows as in a puzzle; cards of one prompt that share no list take more steps.
 */
export function shortestCircle(
  follows: readonly (readonly number[])[],
  below: number,
  steps = mostSteps,
): Circle | undefined {
  const { after, cards } = promptsOf(follows);
  const seenBy = new Int32Array(after.length).fill(-1);
  const cameFrom = new Int32Array(after.length);
  const cameBy = new Int32Array(after.length);
  let shortest: Circle | undefined;
  let left = steps;
  for (const start of startsOf(after)) {
    const most = (shortest?.length ?? below) - 1;
    let layer = [start];
    for (let size = 1; size <= most && layer.length > 0 && left > 0 && seenBy[start] !== start; size++) {
      const next: number[] = [];
      for (const from of layer) {
        for (const [i, to] of (after[from] ?? []).entries()) {
          left--;
          if (seenBy[to] === start) continue;
          seenBy[to] = start;
          cameFrom[to] = from;
          cameBy[to] = cards[from]?.[i] ?? -1;
          next.push(to);
        }
      }
      layer = next;
    }
    if (seenBy[start] !== start) continue;
    const way: number[] = [];
    let at = start;
    do {
      way.push(cameBy[at] ?? -1);
      at = cameFrom[at] ?? start;
    } while (at !== start);
    shortest = way.reverse();
  }
  return shortest;
}

function promptsOf(follows: readonly (readonly number[])[]): Prompts {
  const lists = [...new Set(follows)];
  // Each card is its own prompt.
  if (lists.length === follows.length) return { after: follows, cards: follows };
  const number = new Map(lists.map((list, i) => [list, i]));
  const asks = Int32Array.from(follows, (list) => number.get(list) ?? -1);
  const knownBy = new Int32Array(lists.length).fill(-1);
  const after: number[][] = [];
  const cards: number[][] = [];
  for (const [from, list] of lists.entries()) {
    const distinct = list.filter((card) => {
      const to = asks[card] ?? -1;
      const isNew = knownBy[to] !== from;
      knownBy[to] = from;
      return isNew;
    });
    after.push(distinct.map((card) => asks[card] ?? -1));
    cards.push(distinct);
  }
  return { after, cards };
}

/** Vertices of which every circle has one: those with several ways on, and one of each circle without any. */
function startsOf(after: readonly (readonly number[])[]): number[] {
  const starts: number[] = [];
  const walk = new Int32Array(after.length).fill(-1);
  for (const [vertex, ways] of after.entries()) {
    if (ways.length > 1) starts.push(vertex);
    let at = vertex;
    for (; after[at]?.length === 1 && walk[at] === -1; at = after[at]?.[0] ?? -1) walk[at] = vertex;
    if (after[at]?.length === 1 && walk[at] === vertex && ways.length === 1) starts.push(at);
  }
  return starts;
}
