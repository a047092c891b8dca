import type { PrintedDeal } from "../check/context";
import { readPiecesFile } from "./pieces-file";
import type { Surroundings, UnitFile } from "./workshop";

/** What the pieces files of an output folder say of deals: those of the unit itself, and those beside it with their past. */
export function printedDeals(file: UnitFile, around: Surroundings): PrintedDeal[] {
  const own = readPiecesFile(around.pieces);
  const others = around.neighbours.flatMap(({ name, text }) => {
    const read = readPiecesFile(text);
    return read ? [{ name, deals: [...read.deals, ...read.past], own: false }] : [];
  });
  return [...others, { name: file.name, deals: own?.deals ?? [], own: true }].flatMap(({ name, deals, own: mine }) =>
    deals.map(({ code, activity, level, version, seed, attempt }) => ({
      unit: name,
      code,
      activity,
      level,
      version,
      seed,
      attempt,
      own: mine,
    })),
  );
}
