import * as fc from "fast-check";
import { testWorkshop } from "../support/units";
import { findingsHold, fixHolds, meaningHolds, placesHold } from "./laws";
import { anyText } from "./texts";

/*
 * `npm test` runs a share with a fixed seed; `npm run fuzz` runs CUTWORK_FUZZ_RUNS cases (200,000) with a seed of its own,
 * which it prints (CUTWORK_FUZZ_SEED repeats it). A failure is shrunk to the shortest text that shows it.
 */

const runs = Number(process.env["CUTWORK_FUZZ_RUNS"] ?? 1200);
const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 20_250_601);
const share = (part: number) => ({ seed, numRuns: Math.ceil(runs * part), includeErrorInReport: true });
const tail = fc.constantFrom("\n", "\n\n", " \n", "\n \t\n\n", "\r\n\r\n");

describe(`any text (${runs} cases, seed ${seed})`, function () {
  this.timeout(0);

  it("is read with every place in the text and in what it is a part of", () => {
    fc.assert(
      fc.property(anyText, (text) => void placesHold(text)),
      share(0.3),
    );
  });

  it("means the same with white space at its end and with other line endings", () => {
    fc.assert(fc.property(anyText, tail, meaningHolds), share(0.2));
  });

  it("is checked without a failure", async () => {
    const workshop = await testWorkshop();
    fc.assert(
      fc.property(anyText, (text) => void findingsHold(workshop, text)),
      share(0.2),
    );
  });

  it("loses a finding by each of its fixes", async () => {
    const workshop = await testWorkshop();
    fc.assert(
      fc.property(anyText, fc.nat({ max: 1000 }), (text, pick) => fixHolds(workshop, text, pick)),
      share(0.3),
    );
  });
});
