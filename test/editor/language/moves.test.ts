import assert from "node:assert/strict";
import { editsAfter } from "../../../src/editor/language/moves";
import { applied } from "../../../src/editor/language/names/rename";
import { readUnit } from "../../../src/unit/read";

const text = [
  "## A",
  "",
  "- ![a bell](img/bell.png) = a campainha / ![x](<img/old bell.png>)",
  "",
  "### o",
  "- ![a wheel](../wheel.jpg)",
  "",
  "```activity",
  "make: tiles",
  'from: [other.unit.md#B, "../far, away.unit.md#C", A]',
  "```",
  "",
  "```activity",
  "make: tiles",
  "from: ./other.unit.md#B",
  "```",
  "",
].join("\n");

/** The lines that are not as they were, after a file or folder was moved. */
function changes(old: string, now: string, unit = "/w/units/a.unit.md"): readonly string[] {
  const moved = (path: string): string =>
    path === old || path.startsWith(`${old}/`) ? now + path.slice(old.length) : path;
  const edits = editsAfter(readUnit(text), { root: "/w", from: unit, to: moved(unit), moved });
  const before = text.split("\n");
  return applied(text, edits)
    .split("\n")
    .filter((line, i) => line !== before[i]);
}

describe("files that are moved", () => {
  it("are named by their new name, written so that it is read", () => {
    assert.deepEqual(changes("/w/units/other.unit.md", "/w/units/new: one, two.unit.md"), [
      'from: ["new: one, two.unit.md#B", "../far, away.unit.md#C", A]',
      'from: "new: one, two.unit.md#B"',
    ]);
    assert.deepEqual(changes("/w/units/img/bell.png", "/w/units/img/big bell.png"), [
      "- ![a bell](<img/big bell.png>) = a campainha / ![x](<img/old bell.png>)",
    ]);
    assert.deepEqual(changes("/w/units/img/old bell.png", "/w/units/img/old.png"), [
      "- ![a bell](img/bell.png) = a campainha / ![x](img/old.png)",
    ]);
    assert.deepEqual(changes("/w/wheel.jpg", "/w/units/wheel.jpg"), ["- ![a wheel](wheel.jpg)"]);
  });

  it("are named anew in items of every shape", () => {
    const unit = "## A\n\n- [ ] ![a](img/a(1).png) cai.\n  - ![a [b]](img/b.png) fica.\n\n1. ![c](img/c.png) Sai.\n";
    const moved = (path: string): string => path.replace("/w/img/", "/w/new img/");
    const edits = editsAfter(readUnit(unit), { root: "/w", from: "/w/a.unit.md", to: "/w/a.unit.md", moved });
    assert.equal(applied(unit, edits), unit.replace(/\((img\/(?:a\(1\)|b|c)\.png)\)/g, "(<new $1>)"));
  });

  it("are found again where a whole folder moves", () => {
    assert.deepEqual(changes("/w/units/img", "/w/pictures"), [
      "- ![a bell](../pictures/bell.png) = a campainha / ![x](<../pictures/old bell.png>)",
    ]);
    // What moves together keeps its way; only what stays behind is farther.
    assert.deepEqual(changes("/w/units", "/w/2026/may"), [
      "- ![a wheel](../../wheel.jpg)",
      'from: [other.unit.md#B, "../../far, away.unit.md#C", A]',
    ]);
  });

  it("keep their names in a unit that moves itself", () => {
    assert.deepEqual(changes("/w/units/a.unit.md", "/w/a.unit.md"), [
      "- ![a bell](units/img/bell.png) = a campainha / ![x](<units/img/old bell.png>)",
      "- ![a wheel](wheel.jpg)",
      'from: [units/other.unit.md#B, "far, away.unit.md#C", A]',
      "from: units/other.unit.md#B",
    ]);
    assert.deepEqual(changes("/w/units/a.unit.md", "/w/units/b.unit.md"), []);
  });

  it("are nobody's business elsewhere", () => {
    assert.deepEqual(changes("/w/units/else.unit.md", "/w/x.unit.md"), []);
    assert.deepEqual(changes("/w/units/im", "/w/units/pictures"), []);
  });
});
