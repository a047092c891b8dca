import assert from "node:assert/strict";
import fc from "fast-check";
import { freedict } from "../../support/dictd";
import { testWorkshop } from "../../support/units";
import { draws } from "./draws";
import { sectionHolds } from "./holds";
import { openJudge } from "./judge";

/*
 * Words of real dictionaries, where terms share translations all the time: FreeDict (freedict.org, GPL), from Debian's packages
 * dict-freedict-…, read where they are installed and never part of this project. Each draw is a section as a teacher may
 * write it; what is dealt, proven and found is held against the pairs' strings and an exact cover.
 */

const languages = { "spa-eng": "es", "por-eng": "pt", "fra-eng": "fr", "ita-eng": "it" } as const;
const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 20_250_613);
const count = 500;

describe(`words of dictionaries (${count} draws each, seed ${seed})`, function () {
  this.timeout(0);

  for (const [name, teaches] of Object.entries(languages)) {
    it(`${name}: dealt, proven and found as their strings say (Debian's dict-freedict-${name})`, async function () {
      const articles = freedict(name);
      if (!articles) return this.skip();
      const judge = await openJudge();
      const workshop = await testWorkshop();
      const met = new Map<string, number>();
      const law = fc.property(draws(articles), (section) => {
        const what = sectionHolds(workshop, section, [teaches, "en"], judge);
        for (const each of what) met.set(each, (met.get(each) ?? 0) + 1);
      });
      fc.assert(law, { seed, numRuns: count, includeErrorInReport: true });
      const hard = [
        "shared",
        "crossed",
        "early close",
        ...["tiles", "loop"].flatMap((kind) => [`${kind} with one`, `${kind} with several`]),
      ];
      for (const each of hard) assert.ok((met.get(each) ?? 0) >= 4, `${each}: ${met.get(each) ?? 0} draws`);
    });
  }
});
