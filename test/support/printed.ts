import assert from "node:assert/strict";
import type { PiecesFile } from "../../src/make/pieces-file";
import type { Surroundings } from "../../src/make/workshop";
import { type PrintedPage, readPrint } from "./print";
import { readUnitText, testWorkshop } from "./units";

/** What one activity of a unit printed, read back by pdf.js. */
export interface Printed {
  readonly card: readonly PrintedPage[];
  readonly paper: readonly PrintedPage[];
  readonly pieces: PiecesFile;
}

/** Makes a unit without findings and reads back the files of the activity whose title ends in `kind`. */
export async function printedAs(kind: string, text: string, around: Partial<Surroundings> = {}): Promise<Printed> {
  const reading = await readUnitText(text, around);
  assert.deepEqual(
    reading.findings.map(({ code, message }) => `${code}: ${message}`),
    [],
  );
  const files = await (await testWorkshop()).make(reading, {});
  const bytes = (end: string): Uint8Array => {
    const found = files.find(({ name }) => name.endsWith(end));
    assert.ok(found, end);
    return found.bytes;
  };
  return {
    card: await readPrint(bytes(`${kind}.card.pdf`)),
    paper: await readPrint(bytes(`${kind}.paper.pdf`)),
    pieces: JSON.parse(new TextDecoder().decode(bytes(".pieces.json"))),
  };
}
