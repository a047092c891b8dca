/**
 * Where a piece belongs, in words, from what the pieces file says of its solution; undefined where it has no place, such as the
 * name of a pile. A later version may write other shapes: they are told as they stand.
 */
export function placeSaid(solution: unknown): string | undefined {
  if (typeof solution === "string") return solution === "" ? "nowhere: it is left over" : `before ${solution}`;
  if (Array.isArray(solution)) return listed(solution);
  if (isRecord(solution)) {
    const { row, column, packet, sentence, places } = solution;
    if (typeof row === "number" && typeof column === "number") return `row ${row + 1}, column ${column + 1}`;
    if (typeof packet === "number" && Array.isArray(places)) {
      const parts = [`packet ${packet}`, ...(sentence ? [`sentence ${sentence}`] : []), listed(places)];
      return parts.filter((part) => part !== undefined).join(", ");
    }
  }
  return solution === undefined || solution === null ? undefined : JSON.stringify(solution);
}

function listed(items: readonly unknown[]): string | undefined {
  if (items.length === 0) return undefined;
  // Places count from 0 in the file, as rows and columns do.
  if (items.every((item) => typeof item === "number")) return `place ${items.map((item) => item + 1).join(" or ")}`;
  if (!items.every((item) => Array.isArray(item))) return items.map((item) => `“${item}”`).join(" and ");
  const hour = (i: number): string => (items.length === 1 ? "" : `hour ${i + 1}: `);
  return `called ${items.map((list, i) => `${hour(i)}${list.join(", ")}`).join("; ")}`;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
