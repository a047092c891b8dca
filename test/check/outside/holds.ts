import assert from "node:assert/strict";
import type { LoopDeal } from "../../../src/activities/loop/model";
import type { TilesDeal } from "../../../src/activities/tiles/model";
import type { Finding } from "../../../src/base/finding";
import { nothingAround, type Reading, type Workshop } from "../../../src/make/workshop";
import { verdict } from "../../prove/against/runs";
import type { Section } from "./draws";
import type { Judge } from "./judge";
import { alike, asItems, crossed, fittingBy, namedAlike, same, sharing, type Written } from "./written";

/*
 * What must hold of a section that is read, dealt, proven and checked, by the strings of its pairs and by other solvers.
 */

const headLines = 9;

/** The section as a teacher may write it. */
function unitOf({ make, pairs, grid, turn, fill, frame, seed }: Section, teaches: string, explains: string): string {
  const tiles = [`grid: ${grid}`, `fill: ${fill}`, `turn: ${turn}`, `frame: ${frame}`, "levels: [gentle, hard]"];
  const options = [`make: ${make}`, ...(make === "tiles" ? tiles : []), `seed: ${seed}`];
  const front = `---\ntitle: Words\nteaches: ${teaches}\nexplains: ${explains}\n---\n`;
  return `${front}\n\n## Words\n\n${asItems(pairs)}\n\`\`\`activity\n${options.join("\n")}\n\`\`\`\n`;
}

/** Reads a section and looks at all that is dealt, proven and found; returns what was met, to see what the draws are like. */
export function sectionHolds(
  workshop: Workshop,
  section: Section,
  [teaches, explains]: readonly [string, string],
  judge: Judge,
): string[] {
  const reading = workshop.read({ name: "unit", text: unitOf(section, teaches, explains) }, nothingAround);
  assert.equal(reading.unit.sections[0]?.pairs.length, section.pairs.length);
  return section.make === "tiles" ? tilesHold(reading, section, judge) : loopHolds(reading, section, judge);
}

/** The pair, by its place, in whose line a place of the unit stands. */
const pairAt = ({ unit }: Reading, offset: number): number =>
  unit.text.slice(0, offset).split("\n").length - 1 - headLines;

const sorted = (numbers: Iterable<number>): number[] => [...numbers].sort((a, b) => a - b);

/** Findings of other matters that such sections may have. */
const besides = new Set([
  "look-alike",
  "missing-glyph",
  // CLDR's Ukrainian has names with a Latin letter among Cyrillic ones.
  "mixed-letters",
  // A few Japanese names have a wide slash, which may be meant to part answers.
  "lopsided-slash",
  "text-too-small",
  "loop-too-small",
  "unused-pairs",
  "too-few-decoys",
]);

/** Scripts of the sections that the product's own typeface does not have. */
const unprinted =
  /[\p{Script=Hebrew}\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script_Extensions=Hira}\uff00-\uffef]/u;

function only(reading: Reading, codes: readonly string[]): void {
  const strange = reading.findings.filter(({ code }) => !besides.has(code) && !codes.includes(code));
  assert.deepEqual(strange, []);
  for (const { range, message } of byCode(reading, "missing-glyph"))
    assert.match(reading.unit.text.slice(range.start, range.end), unprinted, message);
  for (const { range, message } of byCode(reading, "mixed-letters")) {
    const word = reading.unit.text.slice(range.start, range.end);
    assert.ok(/[a-z]/i.test(word) && /[\u0370-\u03ff\u0400-\u04ff]/.test(word), message);
  }
  for (const { range, message } of byCode(reading, "lopsided-slash"))
    assert.equal(reading.unit.text.slice(range.start, range.end).trim(), "／", message);
  for (const { message } of byCode(reading, "look-alike")) {
    const groups = namedAlike(message);
    assert.ok(groups.length > 0, message);
    for (const [first = "", ...others] of groups)
      assert.ok(others.length > 0 && others.every((other) => alike(first, other)), message);
  }
}

const byCode = ({ findings }: Reading, code: string): Finding[] => findings.filter((finding) => finding.code === code);

function tilesHold(reading: Reading, section: Section, judge: Judge): string[] {
  const { pairs } = section;
  const deals = (reading.activities[0]?.deals ?? []) as unknown as TilesDeal[];
  assert.equal(deals.length, 2);
  for (const deal of deals) assert.equal(deal.proof.status, verdict(judge.tiles(section, deal)));

  const several = deals.some(({ proof }) => proof.status === "several");
  const shown = deals[0]?.solved.flat().flatMap((edge) => (edge ? [pairAt(reading, edge.source.start)] : []));
  const used = sorted(new Set(shown));
  const severityFor = (set: readonly number[]): string =>
    set.filter((i) => used.includes(i)).length > 1 && several ? "error" : "information";
  const shared = sharing(pairs).map((set) => `${set[1]} ${severityFor(set)}`);
  const told = byCode(reading, "duplicate-answer").map(
    ({ range, severity }) => `${pairAt(reading, range.start)} ${severity}`,
  );
  assert.deepEqual(told.sort(), shared.sort());

  const fits = fittingBy(pairs);
  const byUsed = fittingBy(used.flatMap((i) => pairs[i] ?? []));
  const later = used.filter((z, i) => used.slice(0, i).some((y) => cross({ fits, byUsed }, pairs[y], pairs[z])));
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
    ...byCode(reading, "look-alike").map(({ code }) => code),
    ...(shared.length > 0 ? ["shared"] : []),
    ...(later.length > 0 ? ["crossed"] : []),
  ];
}

interface Fitting {
  readonly fits: (a: string, b: string) => boolean;
  /** The same by those pairs alone that are on tiles. */
  readonly byUsed: (a: string, b: string) => boolean;
}

/** Whether printed words of two pairs fit although they are no pair, and that is not just an answer that tiles share. */
function cross({ fits, byUsed }: Fitting, y: Written | undefined, z: Written | undefined): boolean {
  if (!y || !z) return false;
  const [yl = "", yr = "", zl = "", zr = ""] = [y.left[0], y.right[0], z.left[0], z.right[0]];
  if (same(yl) === same(zl) && same(yr) === same(zr)) return false;
  const along = fits(yl, zl) || fits(yr, zr);
  const across = (by: Fitting["fits"]): boolean => by(yl, zr) || by(yr, zl);
  const alone = (a: string, b: string): boolean => fits(a, b) && !byUsed(a, b);
  return along || (across(fits) && crossed(y, z)) || across(alone);
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
