/**
 * How many pieces need not be moved: the longest run of items that stand in their order, not counting those between. Equal
 * places may stand in any order among themselves.
 *
 * @param places for each item as laid the place that it belongs to.
 */
export function longestAscending(places: readonly number[]): number {
  // ends[i] is the smallest last place of a run of i + 1 (Schensted 1961, for runs that may stay level).
  const ends: number[] = [];
  for (const place of places) {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((ends[middle] ?? 0) <= place) low = middle + 1;
      else high = middle;
    }
    ends[low] = place;
  }
  return ends.length;
}
