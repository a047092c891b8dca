/** Who is matched with whom: an index on the other side, or -1. */
export interface Matching {
  readonly ofLeft: Int32Array;
  readonly ofRight: Int32Array;
  readonly size: number;
}

/**
 * A matching of as many as possible (Hopcroft & Karp 1973).
 *
 * @param fits for each left index the right indices that it may be matched with.
 * @param start a matching to start from: for each left index one of its right indices, or -1.
 */
export function maximumMatching(
  fits: readonly (readonly number[])[],
  rights: number,
  start?: readonly number[],
): Matching {
  const ofLeft = new Int32Array(fits.length).fill(-1);
  const ofRight = new Int32Array(rights).fill(-1);
  let size = 0;
  const match = (left: number, right: number) => {
    ofLeft[left] = right;
    ofRight[right] = left;
  };
  fits.forEach((list, left) => {
    const right = start?.[left] ?? list.find((free) => ofRight[free] === -1) ?? -1;
    if (ofRight[right] !== -1) return;
    match(left, right);
    size++;
  });

  const layer = new Int32Array(fits.length);
  const scanned = new Int32Array(fits.length);
  /** Lays a shortest alternating path from a free left index, one layer down with each step. */
  const augment = (root: number): boolean => {
    const path = [root];
    for (let left = path.at(-1); left !== undefined; left = path.at(-1)) {
      const right = fits[left]?.[scanned[left] ?? 0];
      if (right === undefined) {
        path.pop();
        const parent = path.at(-1);
        if (parent !== undefined) scanned[parent] = (scanned[parent] ?? 0) + 1;
        continue;
      }
      const holder = ofRight[right] ?? -1;
      if (holder === -1) {
        for (const member of path) match(member, fits[member]?.[scanned[member] ?? 0] ?? -1);
        return true;
      }
      if (layer[holder] === (layer[left] ?? 0) + 1) path.push(holder);
      else scanned[left] = (scanned[left] ?? 0) + 1;
    }
    return false;
  };

  for (;;) {
    layer.fill(-1);
    scanned.fill(0);
    const queue: number[] = [];
    for (let left = 0; left < fits.length; left++)
      if (ofLeft[left] === -1) {
        layer[left] = 0;
        queue.push(left);
      }
    for (const left of queue)
      for (const right of fits[left] ?? []) {
        const holder = ofRight[right] ?? -1;
        if (holder === -1 || layer[holder] !== -1) continue;
        layer[holder] = (layer[left] ?? 0) + 1;
        queue.push(holder);
      }
    const before = size;
    for (let left = 0; left < fits.length; left++) if (ofLeft[left] === -1 && augment(left)) size++;
    if (size === before) return { ofLeft, ofRight, size };
  }
}

/** Left indices that together fit fewer right ones than they are. */
export interface Shortage {
  readonly lefts: readonly number[];
  readonly rights: readonly number[];
}

/** Why not everyone on the left can be matched (Hall 1935): those at fault; `undefined` where all can. */
export function shortageIn(fits: readonly (readonly number[])[], rights: number): Shortage | undefined {
  const { ofLeft, ofRight } = maximumMatching(fits, rights);
  const unmatched = ofLeft.indexOf(-1);
  if (unmatched < 0) return undefined;
  // Whatever exchanges lead to from one who is left over is taken, else there would be a larger matching.
  const lefts = new Set([unmatched]);
  const wanted = new Set<number>();
  for (const left of lefts)
    for (const right of fits[left] ?? []) {
      wanted.add(right);
      lefts.add(ofRight[right] ?? -1);
    }
  const sorted = (indices: Set<number>) => [...indices].sort((a, b) => a - b);
  return { lefts: sorted(lefts), rights: sorted(wanted) };
}
