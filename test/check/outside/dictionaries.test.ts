import assert from "node:assert/strict";
import fc from "fast-check";
import type { LoopDeal } from "../../../src/activities/loop/model";
import type { TilesDeal } from "../../../src/activities/tiles/model";
import type { Finding } from "../../../src/base/finding";
import type { Reading } from "../../../src/make/workshop";
import { verdict } from "../../prove/against/runs";
import { freedict } from "../../support/dictd";
import { testWorkshop } from "../../support/units";
import { draws, type Section } from "./draws";
import { type Judge, openJudge } from "./judge";
import { alike, asItems, crossed, fittingBy, namedAlike, same, sharing, type Written } from "./written";

/*
 * Words of real dictionaries, where terms share translations all the time: FreeDict (freedict.org, GPL), from Debian's packages
 * dict-freedict-…, read where they are installed and never part of this project. Each draw is a section as a teacher may
 * write it; what is dealt, proven and found is held against the pairs' strings and an exact cover.
 */

const languages = { "spa-eng": "es", "por-eng": "pt", "fra-eng": "fr", "ita-eng": "it" } as const;
const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 20_250_613);
const count = 500;

const headLines = 9;

function unitOf({ pairs }: Section, teaches: string, options: readonly string[]): string {
  const front = `---\ntitle: Words\nteaches: ${teaches}\nexplains: en\n---\n`;
  return `${front}\n\n## Words\n\n${asItems(pairs)}\n\`\`\`activity\n${options.join("\n")}\n\`\`\`\n`;
}

/** The pair, by its place, in whose line a place of the unit stands. */
const pairAt = ({ unit }: Reading, offset: number): number =>
  unit.text.slice(0, offset).split("\n").length - 1 - headLines;

const sorted = (numbers: Iterable<number>): number[] => [...numbers].sort((a, b) => a - b);

/** Findings of other matters that such sections may have. */
const besides = new Set(["look-alike", "text-too-small", "loop-too-small", "unused-pairs", "too-few-decoys"]);

function only(reading: Reading, codes: readonly string[]): void {
  const strange = reading.findings.filter(({ code }) => !besides.has(code) && !codes.includes(code));
  assert.deepEqual(strange, []);
  for (const { message } of byCode(reading, "look-alike")) {
    const groups = namedAlike(message);
    assert.ok(groups.length > 0, message);
    for (const [first = "", ...others] of groups)
      assert.ok(others.length > 0 && others.every((other) => alike(first, other)), message);
  }
}

const byCode = ({ findings }: Reading, code: string): Finding[] => findings.filter((finding) => finding.code === code);

/** Tiles of a section; returns what was met, for the test to see that the draws are hard. */
function tilesHold(reading: Reading, section: Section, judge: Judge): string[] {
  const { pairs } = section;
  const deals = (reading.activities[0]?.deals ?? []) as unknown as TilesDeal[];
  assert.equal(deals.length, 2);
  for (const deal of deals) assert.equal(deal.proof.status, verdict(judge.tiles(section, deal)));

  const several = deals.some(({ proof }) => proof.status === "several");
  const shown = deals[0]?.solved.flat().flatMap((edge) => (edge ? [pairAt(reading, edge.source.start)] : []));
  const used = sorted(new Set(shown));
  const severityFor = (set: readonly number[]): string =>
    set.filter((i) => used.includes(i)).length < 2 ? "warning" : several ? "error" : "information";
  const shared = sharing(pairs).map((set) => `${set[1]} ${severityFor(set)}`);
  const told = byCode(reading, "duplicate-answer").map(
    ({ range, severity }) => `${pairAt(reading, range.start)} ${severity}`,
  );
  assert.deepEqual(told.sort(), shared.sort());

  const fits = fittingBy(pairs);
  const later = used.filter((z, i) => used.slice(0, i).some((y) => cross(fits, pairs[y], pairs[z])));
  const crosses = byCode(reading, "ambiguous-edge");
  assert.deepEqual(sorted(crosses.map(({ range }) => pairAt(reading, range.start))), later);
  // Where no words are to blame that are told of, the tiles as a whole are.
  const clashes = [...byCode(reading, "duplicate-answer"), ...crosses];
  const blamed = clashes.some(({ severity }) => severity === "error");
  const whole = byCode(reading, "several-solutions").length;
  assert.equal(whole > 0 || blamed, several);
  const fitting = deals[0]?.solved.flat().flatMap((edge, i, all) => {
    const apart = all.filter((other, j) => j > i && edge && other && fits(edge.text, other.text));
    return apart.filter(
      (other) => other && edge && pairAt(reading, other.source.start) !== pairAt(reading, edge.source.start),
    );
  });
  if (whole > 0) assert.deepEqual(fitting, []);
  only(reading, ["duplicate-answer", "ambiguous-edge", "several-solutions"]);
  return [
    several ? "tiles with several" : "tiles with one",
    ...(shared.length > 0 ? ["shared"] : []),
    ...(later.length > 0 ? ["crossed"] : []),
  ];
}

/** Whether printed words of two pairs fit although they are no pair, and that is not just a shared answer. */
function cross(fits: (a: string, b: string) => boolean, y: Written | undefined, z: Written | undefined): boolean {
  if (!y || !z) return false;
  const [yl = "", yr = "", zl = "", zr = ""] = [y.left[0], y.right[0], z.left[0], z.right[0]];
  if (same(yl) === same(zl) && same(yr) === same(zr)) return false;
  const along = fits(yl, zl) || fits(yr, zr);
  const across = fits(yl, zr) || fits(yr, zl);
  return along || (across && crossed(y, z));
}

function loopHolds(reading: Reading, { pairs }: Section, judge: Judge): string[] {
  const [deal] = (reading.activities[0]?.deals ?? []) as unknown as LoopDeal[];
  assert.ok(deal);
  const { full, early } = judge.loop(pairs, deal);
  assert.equal(deal.proof.status, verdict(full));
  assert.equal(deal.smaller !== undefined, early);

  const places = deal.cards.map(({ asks }) => pairAt(reading, asks.range.start));
  assert.deepEqual(
    sorted(places),
    pairs.map((_, i) => i),
  );
  const fits = fittingBy(pairs);
  const clashes = new Set<number>();
  pairs.forEach((asks, i) => {
    pairs.forEach((answers, j) => {
      if (i !== j && fits(asks.left[0] ?? "", answers.right[0] ?? "")) clashes.add(Math.max(i, j));
    });
  });
  const told = [...byCode(reading, "early-close"), ...byCode(reading, "second-circle")];
  for (const { message } of told) {
    const [, prompt = "", answer = ""] = /^“(.+?)” on card \S+ is answered by “(.+?)” on card/u.exec(message) ?? [];
    assert.ok(fits(prompt, answer), message);
  }
  const second = byCode(reading, "second-circle").length;
  assert.equal(second, full > 1 ? 1 : 0);
  // What makes the second circle is told once, for all items that it takes.
  if (second === 0) assert.equal(told.length, clashes.size);
  else assert.ok(told.length <= clashes.size && told.length > 0);
  only(reading, ["early-close", "second-circle"]);
  return [`loop with ${full > 1 ? "several" : "one"}`, ...(early ? ["early close"] : [])];
}

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
        const { make, pairs, grid, turn, fill } = section;
        const tiles = ["make: tiles", `grid: ${grid}`, `fill: ${fill}`, `turn: ${turn}`, "levels: [gentle, hard]"];
        const options = [...(make === "tiles" ? tiles : ["make: loop"]), `seed: ${section.seed}`];
        const text = unitOf(section, teaches, options);
        const around = { settings: [], pictures: new Map(), units: new Map(), neighbours: [] };
        const reading = workshop.read({ name: "unit", text }, around);
        assert.equal(reading.unit.sections[0]?.pairs.length, pairs.length);
        const what = make === "tiles" ? tilesHold(reading, section, judge) : loopHolds(reading, section, judge);
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
