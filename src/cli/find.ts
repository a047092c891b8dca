import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { pieceMark } from "../base/mark";
import { placeSaid } from "../make/place-said";
import { dealSaid, type Found, type FoundDeal, isCode, printedOn } from "../make/reprint";
import { openEngine, pieceFilesEnding, reason } from "./units";
import { FileError, say, UsageError } from "./usage";
import { writeWhole } from "./write";

/** Texts of the pieces files in a folder. Rejects with a FileError where the folder cannot be read. */
async function piecesIn(folder: string): Promise<string[]> {
  let names: string[];
  try {
    names = await readdir(folder);
  } catch (error) {
    throw new FileError(`${folder} cannot be read: ${reason(error)}`);
  }
  const files = names.filter((name) => name.endsWith(pieceFilesEnding)).sort();
  if (files.length === 0) throw new FileError(`${folder} has no pieces file (NAME${pieceFilesEnding}).`);
  return Promise.all(files.map((name) => readFile(path.join(folder, name), "utf8")));
}

/** `cutwork find`: says what a mark is and where it belongs, and of a deal code alone what was printed; 1 where no pieces file knows it. */
export async function find(marks: readonly string[], folder: unknown): Promise<number> {
  if (marks.length === 0) throw new UsageError("Name the mark of a piece.");
  const place = typeof folder === "string" ? folder : "out";
  const files = await piecesIn(place);
  const engine = await openEngine();
  let code = 0;
  for (const mark of marks) {
    const found = engine.find(files, mark);
    const deals = engine.deals(files, mark);
    const lines = isCode(mark) ? deals.map(describeDeal) : found.map(describe);
    for (const line of lines) process.stdout.write(`${line}\n`);
    if (lines.length > 0) continue;
    say(unknownMark(mark, place, deals));
    code = 1;
  }
  return code;
}

function describeDeal(found: FoundDeal): string {
  const { deal, current, sets } = found;
  const printed = deal.master ? ", a master for copying" : sets ? `, ${sets} ${sets === 1 ? "set" : "sets"}` : "";
  return `${deal.code}: ${dealSaid(found)}${printed}${current ? "" : ", an earlier print"}`;
}

/** Why there is no such piece, as far as the code at its beginning tells. */
function unknownMark(mark: string, place: string, [deal]: readonly FoundDeal[]): string {
  const none = `${mark}: no piece with this mark is in ${place}.`;
  if (!deal) return none;
  const { code, master } = deal.deal;
  return `${none} Its code is that of ${dealSaid(deal)}, whose marks look like ${pieceMark(code, master ? undefined : 0, 0)}.`;
}

function describe(found: Found): string {
  const { mark, current, entry } = found;
  const lines = [`${mark}: ${dealSaid(found)}${current ? "" : ", an earlier print"}`, `  shows    ${printedOn(found)}`];
  const at = entry?.at[0];
  if (at) lines.push(`  printed  ${at.file}, page ${at.page}, ${at.x} mm from the left and ${at.y} mm from the top`);
  const belongs = entry && !found.drawing.blank ? placeSaid(entry.solution) : undefined;
  if (belongs !== undefined) lines.push(`  belongs  ${belongs}`);
  return lines.join("\n");
}

/** `cutwork reprint`: writes lost pieces as they were; 1 where one is not known, and then nothing is written. */
export async function reprint(marks: readonly string[], folder: unknown): Promise<number> {
  if (marks.length === 0) throw new UsageError("Name the marks of the pieces.");
  const place = typeof folder === "string" ? folder : "out";
  const files = await piecesIn(place);
  const engine = await openEngine();
  const found: Found[] = [];
  const unknown: string[] = [];
  for (const mark of marks) {
    const [first] = engine.find(files, mark);
    if (first) found.push(first);
    else unknown.push(mark);
  }
  if (unknown.length > 0) {
    for (const mark of unknown) say(unknownMark(mark, place, engine.deals(files, mark)));
    say("Nothing was written.");
    return 1;
  }
  const name = `reprint.${found
    .map(({ mark }) => mark)
    .slice(0, 3)
    .join(".")}.card.pdf`;
  const bytes = await engine.reprint(found, await picturesFor(found, place));
  await writeWhole(path.resolve(place), [{ name, bytes }]);
  process.stdout.write(`${path.join(place, name)}: ${found.length} ${found.length === 1 ? "piece" : "pieces"}\n`);
  return 0;
}

/** Pictures of the pieces, looked for from the working directory and beside the output folder. */
async function picturesFor(found: readonly Found[], folder: string): Promise<Map<string, Uint8Array>> {
  const keys = new Set(
    found.flatMap(({ drawing }) => drawing.items.flatMap((item) => (item.type === "picture" ? [item.key] : []))),
  );
  const pictures = new Map<string, Uint8Array>();
  for (const key of keys) {
    const bytes = await firstOf([path.resolve(key), path.resolve(folder, "..", key)]);
    if (!bytes) throw new FileError(`The picture “${key}” of a piece is not here: call this from the unit's folder.`);
    pictures.set(key, bytes);
  }
  return pictures;
}

async function firstOf(files: readonly string[]): Promise<Uint8Array | undefined> {
  for (const file of files) {
    const bytes = await readFile(file).catch(() => undefined);
    if (bytes) return bytes;
  }
  return undefined;
}
