import { safeName } from "./file-names";
import { readPiecesFile } from "./pieces-file";
import type { MadeFile, MakeOptions } from "./workshop";

const piecesEnding = ".pieces.json";

/**
 * Sentences about PDFs of a unit that lie in the output folder and are of an earlier print: what a make with `only` left as it
 * was though it speaks of other deals, and what no make of the unit as it is now would write again. `present` are the file names
 * in the folder, `made` what was just written there; both without the folder. Nothing is deleted.
 */
export function leftovers(
  unit: string,
  present: readonly string[],
  made: readonly MadeFile[],
  { only, merge = false }: MakeOptions,
): string[] {
  const written = new Set(made.map(({ name }) => name));
  const others = present.flatMap((name) => {
    const other = name.endsWith(piecesEnding) ? name.slice(0, -piecesEnding.length) : unit;
    return other.startsWith(`${unit}.`) ? [other] : [];
  });
  const old = present
    .filter((name) => !written.has(name) && !others.some((other) => name.startsWith(`${other}.`)))
    .flatMap((name) => {
      const file = partsOf(name, unit);
      return file ? [{ name, ...file }] : [];
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  if (only === undefined)
    return old.map(({ name }) => `${name} is of an earlier print and is not renewed any more; delete it.`);
  const pieces = readPiecesFile(jsonOf(made));
  if (!pieces) return [];
  const current = new Set(pieces.deals.map(({ code }) => code));
  const known = new Set(pieces.guide ?? []);
  const changed = current.size !== known.size || [...current].some((code) => !known.has(code));
  const activities = new Set(pieces.deals.map(({ activity }) => safeName(activity)));
  const stocks = new Set(made.flatMap(({ name }) => partsOf(name, unit)?.stock ?? []));
  return old.flatMap(({ name, activity, stock }) => {
    if (stock === "guide" || stock === "labels")
      return changed ? [`${name} is of an earlier print; make the whole unit to renew it.`] : [];
    // The same pieces in the other way of parting them into files.
    const again = merge ? activity !== undefined && activities.has(activity) : activity === undefined;
    return again && stocks.has(stock) ? [`${name} is of an earlier print; make the whole unit and delete it.`] : [];
  });
}

/** The activity's part and the stock in the name of a unit's PDF; undefined for other files. */
function partsOf(name: string, unit: string): { activity?: string; stock: string } | undefined {
  if (!name.startsWith(`${unit}.`)) return undefined;
  const [, activity, stock] = /^(?:([^.]+)\.)?(card|paper|guide|labels)\.pdf$/.exec(name.slice(unit.length + 1)) ?? [];
  if (stock === undefined || (activity !== undefined && (stock === "guide" || stock === "labels"))) return undefined;
  return { ...(activity === undefined ? {} : { activity }), stock };
}

function jsonOf(made: readonly MadeFile[]): string | undefined {
  const file = made.find(({ name }) => name.endsWith(piecesEnding));
  return file && new TextDecoder().decode(file.bytes);
}
