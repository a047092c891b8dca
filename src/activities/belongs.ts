/* Where a piece belongs, in words, from the `solution` that a pieces file has of it: what is no such thing says nothing. */

/** `place 2`, or `place 2, 3 or 4`: places from 0, told from 1; empty where there are none. */
export function placesSaid(places: unknown): string {
  const told = listOf(places, isNumber).map((place) => `${place + 1}`);
  const last = told.pop();
  if (last === undefined) return "";
  return told.length === 0 ? `place ${last}` : `place ${told.join(", ")} or ${last}`;
}

/** The members of a list that are as they should be; nothing of what is no list. */
export function listOf<T>(value: unknown, is: (member: unknown) => member is T): T[] {
  return Array.isArray(value) ? value.filter(is) : [];
}

export function isNumber(value: unknown): value is number {
  return typeof value === "number";
}

export function isText(value: unknown): value is string {
  return typeof value === "string";
}
