import { determinant } from "../../../src/prove/loops/best";
import { type LoopClasses, placesOf } from "../../../src/prove/loops/classes";
import type { Circle } from "../../../src/prove/loops/loops";

/**
 * The number of full circles where no class is used more than twice and no two cards print alike: det(I + A), A the skew matrix of which
 * classes interlace round one circle and which comes first (Macris & Pulé 1996). `undefined` where a class is used more.
 */
export function countCirclesByInterlacement(classes: LoopClasses, circle: Circle): bigint | undefined {
  const stops = placesOf(classes, circle);
  const chords = stops.filter((places) => places.length > 1);
  if (chords.some((places) => places.length > 2)) return undefined;
  return determinant(
    chords.map(([p = 0, q = 0], i) =>
      chords.map(([s = 0, t = 0], j) => {
        if (i === j) return 1n;
        if (p < s && s < q && q < t) return 1n;
        return s < p && p < t && t < q ? -1n : 0n;
      }),
    ),
  );
}
