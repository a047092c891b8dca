import assert from "node:assert/strict";
import { createRequire } from "node:module";
import path from "node:path";
import * as fc from "fast-check";
import { nothingAround, type Reading, type Workshop } from "../../src/make/workshop";
import { testAssets } from "../support/typeface";
import { testWorkshop } from "../support/units";
import { type Change, changes, edited, seedTexts } from "./texts";

/*
 * What is kept from one reading to the next changes no result: after any edits, an engine that has read every text on the way
 * says what one says that has just been loaded, and has read nothing.
 */

const load = createRequire(__filename);
const source = path.join(__dirname, "../../src") + path.sep;

/** An engine from modules loaded afresh, so that nothing at all is kept in them. */
function freshWorkshop(): Promise<Workshop> {
  const kept = Object.entries(load.cache).filter(([file]) => file.startsWith(source));
  for (const [file] of kept) delete load.cache[file];
  const { openWorkshop } = load("../../src/make/workshop") as typeof import("../../src/make/workshop");
  for (const file of Object.keys(load.cache)) if (file.startsWith(source)) delete load.cache[file];
  for (const [file, module] of kept) load.cache[file] = module;
  return openWorkshop(testAssets());
}

/** All that a reading says, as plain data. */
function said({ unit, activities, findings }: Reading): unknown {
  const { sections, front, activities: blocks, problems, silences } = unit;
  return JSON.parse(JSON.stringify({ sections, front, blocks, problems, silences, activities, findings }));
}

const runs = Math.max(12, Math.ceil(Number(process.env["CUTWORK_FUZZ_RUNS"] ?? 0) / 400));
const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 7);

/** Typing: letters at one place, and now and then a careless edit. */
const typing: fc.Arbitrary<Change[]> = fc
  .tuple(
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.array(fc.constantFrom("a", "é", " ", "=", "/", "*", "\n")),
    changes,
  )
  .map(([at, letters, careless]) => [
    ...letters.map((text): Change => ({ at, length: 0, text, how: "insert" })),
    ...careless,
  ]);

describe(`what is kept (${runs} sequences of edits, seed ${seed})`, function () {
  this.timeout(0);

  it("changes no finding, deal or proof", async () => {
    const workshop = await testWorkshop();
    const read = (engine: Workshop, text: string): Reading => engine.read({ name: "unit", text }, nothingAround);
    const law = fc.asyncProperty(fc.constantFrom(...seedTexts), typing, async (start, edits) => {
      let text = start;
      read(workshop, text);
      for (const edit of edits) {
        text = edited(text, edit);
        read(workshop, text);
      }
      const fresh = await freshWorkshop();
      assert.notEqual(fresh.constructor, workshop.constructor, "the engine was not loaded afresh");
      assert.deepEqual(said(read(workshop, text)), said(read(fresh, text)));
    });
    await fc.assert(law, { seed, numRuns: runs, includeErrorInReport: true });
  });
});
