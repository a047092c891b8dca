import assert from "node:assert/strict";
import type { Finding, Fix } from "../../src/base/finding";
import type { Range } from "../../src/base/range";
import { nothingAround, type Reading, type Workshop } from "../../src/make/workshop";
import { readUnit } from "../../src/unit/read";
import type { Answer, Item, Phrase, Unit } from "../../src/unit/unit";
import { meaning } from "../check/meaning";
import { applyEdits } from "../support/units";

/*
 * What holds of every text, however broken. Each throws an AssertionError where it does not.
 */

function inText(text: string, { start, end }: Range, what: string): void {
  assert.ok(0 <= start && start <= end && end <= text.length, `${what}: ${start} to ${end} of ${text.length}`);
}

function inside(inner: Range, outer: Range, what: string): void {
  const message = `${what}: ${inner.start} to ${inner.end} is not in ${outer.start} to ${outer.end}`;
  assert.ok(outer.start <= inner.start && inner.end <= outer.end, message);
}

function phrase(part: Phrase, whole: Range, what: string): void {
  inside(part.range, whole, what);
  assert.equal(part.runs.map(({ text }) => text).join("").length >= 0, true);
}

function answer(each: Answer, whole: Range): void {
  inside(each.range, whole, "an answer");
  for (const part of each.parts) phrase(part, each.range, "a part");
  if (each.picture) inside(each.picture.range, each.range, "a picture");
}

function item({ range, block, by, ties }: Item, section: Range): void {
  inside(range, block, "an item in its block");
  inside(block, section, "a block in its section");
  if (by) inside(by.range, block, "a writer");
  for (const tie of ties) {
    inside(tie.range, block, "a tie");
    inside(tie.target, tie.range, "a tie's target");
  }
}

/** Every place that a unit names lies in the text, and in what it is a part of. */
export function placesHold(text: string): Unit {
  const unit = readUnit(text);
  let last = 0;
  for (const section of unit.sections) {
    inText(text, section.range, "a section");
    assert.ok(section.range.start >= last, "sections follow each other");
    last = section.range.end;
    inside(section.heading, section.range, "a heading");
    for (const pair of section.pairs) {
      item(pair, section.range);
      for (const side of [pair.left, pair.right]) {
        inside(side.range, pair.block, "a side");
        for (const each of side.answers) answer(each, pair.block);
      }
      for (const example of pair.examples) phrase(example, pair.block, "an example");
      for (const { range, parts } of pair.orders) {
        inside(range, pair.block, "an order");
        assert.equal(new Set(parts).size, pair.left.answers[0].parts.length);
      }
    }
    for (const statement of section.statements) {
      item(statement, section.range);
      inside(statement.mark, statement.block, "a mark");
      assert.ok(statement.mark.end <= statement.range.start, "a mark before its statement");
      if (statement.correction) phrase(statement.correction, statement.block, "a correction");
    }
    for (const event of section.events) {
      item(event, section.range);
      for (const free of event.free) item(free, event.block);
    }
    for (const pile of section.piles) {
      inside(pile.heading, section.range, "a pile");
      for (const member of pile.members) item(member.item, section.range);
    }
    for (const table of section.tables) {
      inside(table.range, section.range, "a table");
      for (const head of [...table.columns, ...table.persons]) phrase(head, table.range, "a head");
      for (const form of table.forms.flat()) if (form) answer(form, table.range);
    }
  }
  for (const block of [...unit.activities, ...unit.stations]) {
    inText(text, block.fence, "a fence");
    inside(block.body, { start: block.fence.start, end: text.length }, "a body");
    for (const entry of block.options.entries) {
      inside(entry.keyRange, block.fence, "a key");
      inText(text, entry.valueRange, "a value");
      for (const place of entry.items) inside(place, block.fence, "an item of a list");
    }
  }
  for (const problem of unit.problems) {
    inText(text, problem.range, problem.code);
    for (const fix of problem.fixes) editsHold(text, fix, problem.code);
  }
  for (const silence of unit.silences) {
    inText(text, silence.range, "a silence");
    inText(text, silence.scope, "its scope");
  }
  return unit;
}

/** Edits lie in the text and do not overlap. */
export function editsHold(text: string, { title, edits }: Fix, code: string): void {
  const sorted = [...edits].sort((a, b) => a.range.start - b.range.start || a.range.end - b.range.end);
  let last = 0;
  for (const { range } of sorted) {
    inText(text, range, `${code}, “${title}”`);
    assert.ok(range.start >= last, `${code}, “${title}”: edits overlap`);
    last = range.end;
  }
  assert.ok(edits.length > 0, `${code}, “${title}”: no edits`);
}

export function read(workshop: Workshop, text: string): Reading {
  return workshop.read({ name: "unit", text }, nothingAround);
}

/** Checking fails nowhere, and what it says can be shown: places in the text, plain data. */
export function findingsHold(workshop: Workshop, text: string): Reading {
  const reading = read(workshop, text);
  for (const finding of reading.findings) {
    assert.notEqual(finding.code, "rule-failed", finding.message);
    inText(text, finding.range, finding.code);
    for (const { range } of finding.related) inText(text, range, `${finding.code}, related`);
    for (const fix of finding.fixes) editsHold(text, fix, finding.code);
    assert.ok(!/undefined|NaN|\[object/.test(finding.message.replace(text, "")), finding.message);
  }
  const plain = JSON.stringify([reading.findings, reading.activities]);
  assert.deepEqual(JSON.parse(plain).length, 2);
  return reading;
}

/** How often a finding is made; one that several activities make alike is said once, and is mended in one after the other. */
const count = (findings: readonly Finding[], { code, message }: Finding): number =>
  findings
    .filter((each) => each.code === code && each.message === message)
    .reduce((sum, { activities = [] }) => sum + Math.max(1, activities.length), 0);

/**
 * What hides text below it, and options, of which one that stands twice counts once: what shows again may have the same
 * finding, at a place of its own. So it is with a pair that is taken out: an unused one with the same words may take its place.
 */
const hiding: ReadonlySet<string> = new Set([
  "ambiguous-edge",
  // A block that becomes an activity brings its section in use, and what was a note there is then looked at.
  "block-in-item",
  "inside-item",
  // What was code with it stands under the item then, with spaces of its own.
  "indented-list",
  // Among statements other marks are told that may be anything where there is none.
  "meant-as-statement",
  // What goes on below such a line goes on the new item then, and the same may be said of that.
  "not-an-item",
  "not-an-activity",
  "open-fence",
  "option-twice",
  "quoted-items",
  "swallowed-list",
  "unreadable-yaml",
  "wrong-option",
  "wrong-stations",
]);

/** A fix takes its finding away. `pick` chooses one of all fixes, so that one run stays short. */
export function fixHolds(workshop: Workshop, text: string, pick: number): void {
  const { findings } = read(workshop, text);
  const all = findings.flatMap((finding) => finding.fixes.map((fix) => ({ finding, fix })));
  const chosen = all[pick % Math.max(1, all.length)];
  if (!chosen) return;
  const { finding, fix } = chosen;
  const after = findingsHold(workshop, applyEdits(text, fix.edits));
  // What stood below lines that were taken out stands where they stood now.
  const [only, ...others] = fix.edits;
  const below = only && others.length === 0 && only.text === "" ? only.range.end - only.range.start : 0;
  const known = findings.some(
    ({ code, range }) => below > 0 && code === finding.code && range.start === finding.range.start + below,
  );
  const there =
    !known && after.findings.some(({ code, range }) => code === finding.code && range.start === finding.range.start);
  // Where one of several is gone, another may be told in its words now: of that line it was said something else before.
  const gone = !there && codes(after.findings, finding.code) < codes(findings, finding.code);
  const mended = gone || count(after.findings, finding) < count(findings, finding);
  // A block may become readable by another finding's fix, and then its section is in use.
  const readable = codes(after.findings, "unreadable-yaml") < codes(findings, "unreadable-yaml");
  // The second of two options with one name counts when the first is taken out, whatever else is then found about it.
  const second = codes(after.findings, "option-twice") < codes(findings, "option-twice");
  const uncovered =
    (hiding.has(finding.code) || readable) &&
    // What a value without an end had swallowed may stand right where it stood.
    (!there || second || (readable && hiding.has(finding.code)) || after.findings.length < findings.length);
  // Where the first of two pictures is a word now, the second is the one that is printed, and may be missing as well.
  const nextPicture =
    finding.code === "missing-picture" &&
    !there &&
    codes(after.findings, "second-picture") < codes(findings, "second-picture");
  assert.ok(
    mended || uncovered || nextPicture,
    `“${fix.title}” leaves ${finding.code}: ${finding.message}\n${JSON.stringify(after.file.text)}`,
  );
}

function codes(findings: readonly Finding[], code: string): number {
  return findings.filter((finding) => finding.code === code).length;
}

/** White space at the end, and another way to end lines, say nothing. */
export function meaningHolds(text: string, tail: string): void {
  const said = meaning(text);
  assert.deepEqual(meaning(text + tail), said, `with ${JSON.stringify(tail)} at the end`);
  if (text.includes("\r")) return;
  assert.deepEqual(meaning(text.replaceAll("\n", "\r\n")), said, "with CRLF");
}
