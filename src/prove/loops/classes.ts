import type { Circle } from "./loops";

/**
 * A relation that is by classes: two prompts have the same answers or none in common. Then classes are the vertices of a
 * digraph whose arcs are the cards, each leading from the class that it answers to the class that it asks for, and full
 * circles are its Eulerian circuits.
 */
export interface LoopClasses {
  readonly count: number;
  /** For each card the class of its prompt; -1 where nothing answers it. */
  readonly asks: Int32Array;
  /** For each card the class that it answers; -1 where it answers none. */
  readonly answers: Int32Array;
}

/** The classes of a relation, or `undefined` where sets of answers overlap. Linear in the lists that are not shared. */
export function classesOf(follows: readonly (readonly number[])[]): LoopClasses | undefined {
  const asks = new Int32Array(follows.length).fill(-1);
  const answers = new Int32Array(follows.length).fill(-1);
  const known = new Map<readonly number[], number>();
  const sizes: number[] = [];
  for (const [card, list] of follows.entries()) {
    const [first] = list;
    if (first === undefined) continue;
    let ofCard = known.get(list);
    if (ofCard === undefined) {
      const owner = answers[first] ?? -1;
      ofCard = owner < 0 ? sizes.length : owner;
      if (owner < 0) sizes.push(list.length);
      else if (sizes[owner] !== list.length) return undefined;
      for (const next of list) {
        if (answers[next] !== owner) return undefined;
        answers[next] = ofCard;
      }
      known.set(list, ofCard);
    }
    asks[card] = ofCard;
  }
  return { count: sizes.length, asks, answers };
}

/** How often each class is asked for, or `undefined` where one is not answered as often: then no circle takes every card. */
export function visitsOf({ count, asks, answers }: LoopClasses): Int32Array | undefined {
  const asked = new Int32Array(count);
  const answered = new Int32Array(count);
  for (let card = 0; card < asks.length; card++) {
    const from = answers[card] ?? -1;
    const to = asks[card] ?? -1;
    if (from < 0 || to < 0) return undefined;
    answered[from] = (answered[from] ?? 0) + 1;
    asked[to] = (asked[to] ?? 0) + 1;
  }
  return asked.every((times, i) => times === answered[i]) ? asked : undefined;
}

/** An Eulerian circuit (Hierholzer 1873); `undefined` where no circle takes every card. */
export function eulerianCircle(classes: LoopClasses): Circle | undefined {
  if (!visitsOf(classes)) return undefined;
  const unused: number[][] = Array.from({ length: classes.count }, () => []);
  classes.answers.forEach((from, card) => {
    unused[from]?.push(card);
  });
  const path: number[] = [];
  const backwards: number[] = [];
  let place = classes.asks[0] ?? 0;
  for (;;) {
    const card = unused[place]?.pop();
    if (card !== undefined) {
      path.push(card);
      place = classes.asks[card] ?? -1;
      continue;
    }
    const last = path.pop();
    if (last === undefined) break;
    backwards.push(last);
    place = classes.answers[last] ?? -1;
  }
  return backwards.length > 0 && backwards.length === classes.asks.length ? backwards.reverse() : undefined;
}

/** The places of a full circle at which each class is answered, in order. */
export function placesOf(classes: LoopClasses, circle: Circle): readonly (readonly number[])[] {
  const places: number[][] = Array.from({ length: classes.count }, () => []);
  circle.forEach((card, place) => {
    places[classes.answers[card] ?? -1]?.push(place);
  });
  return places;
}
