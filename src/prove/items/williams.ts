/**
 * Orders in which groups go round n stations, so that each comes to each station once, and each station follows each other
 * one equally often: one square for an even number, two for an odd one (Williams 1949, Aust. J. Sci. Res. A 2:149–168).
 *
 * @returns squares; a square has one row for each group, with the station at each round.
 */
export function williamsSquares(stations: number): number[][][] {
  const zigzag = Array.from({ length: stations }, (_, i) =>
    i % 2 === 1 ? (i + 1) / 2 : (stations - i / 2) % stations,
  );
  const square = (row: readonly number[]) =>
    Array.from({ length: stations }, (_, shift) => row.map((station) => (station + shift) % stations));
  if (stations === 0) return [];
  return stations % 2 === 0 || stations === 1 ? [square(zigzag)] : [square(zigzag), square([...zigzag].reverse())];
}
