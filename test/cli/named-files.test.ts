import assert from "node:assert/strict";
import { mkdirSync, readdirSync, symlinkSync } from "node:fs";
import path from "node:path";
import { unitOf } from "../support/units";
import { Desk } from "./desk";

describe("files as the command line names them", function () {
  this.timeout(60_000);
  let desk: Desk;
  beforeEach(() => {
    desk = new Desk();
  });
  afterEach(() => desk.clear());

  it("takes a folder as all units in it and below, once each, but no hidden ones", () => {
    for (const [i, name] of ["b.unit.md", "a.unit.md", "notes.md", "deep/er/c.Unit.md", ".git/d.unit.md"].entries())
      desk.write(path.join("school", name), unitOf(4, `seed: ${i + 1}`));
    desk.write(path.join("school", "node_modules", "e.unit.md"), unitOf(4, ""));
    mkdirSync(path.join(desk.folder, "empty"));
    assert.deepEqual(checked(["school/b.unit.md", "school"]), [
      "school/b.unit.md",
      "school/a.unit.md",
      "school/deep/er/c.Unit.md",
    ]);
    symlinkSync("..", path.join(desk.folder, "school", "deep", "round"));
    assert.equal(checked(["school"]).length, 3, "a link in a circle");
    const empty = desk.cutwork(["check", "empty", "school"]);
    assert.equal(empty.code, 2);
    assert.match(empty.err, /^empty cannot be read: it is a folder without a unit/);
    assert.match(empty.out, /^school\/a\.unit\.md: nothing found$/m);
    assert.equal(desk.cutwork(["make", "school"]).code, 0);
    assert.ok(readdirSync(path.join(desk.folder, "out")).includes("c.Words-tiles.card.pdf"));
  });

  it("expands signs of patterns that the shell has left, and no others", () => {
    for (const name of ["b.unit.md", "a.unit.md", "notes.md", "7a/c.unit.md", "7a/x/d.unit.md", "8/e.unit.md"])
      desk.write(name, unitOf(4, ""));
    assert.deepEqual(checked(["*.unit.md"]), ["a.unit.md", "b.unit.md"]);
    assert.deepEqual(checked(["*"]), ["a.unit.md", "b.unit.md"]);
    assert.deepEqual(checked(["./?.unit.md"]), ["a.unit.md", "b.unit.md"]);
    assert.deepEqual(checked(["7?/*.md", "*/e*"]), ["7a/c.unit.md", "8/e.unit.md"]);
    assert.deepEqual(checked(["7a/**/*.md"]), ["7a/c.unit.md", "7a/x/d.unit.md"]);
    assert.deepEqual(checked(["**/c.unit.md"]), ["7a/c.unit.md"]);
    assert.equal(checked(["**"]).length, 5);
    assert.equal(checked([path.join(desk.folder, "*", "c.unit.md")]).length, 1);
    const empty = desk.cutwork(["check", "a.unit.md", ""]);
    assert.deepEqual([empty.code, empty.out], [2, ""]);
    assert.match(empty.err, /^One of the files has an empty name\.\n/);
    const none = desk.cutwork(["check", "9*.unit.md"]);
    assert.deepEqual([none.code, none.err], [2, "9*.unit.md cannot be read: it is not there.\n"]);
    if (process.platform !== "win32") {
      desk.write("w*y?.unit.md", unitOf(4, ""));
      desk.write("why!.unit.md", unitOf(4, ""));
      assert.deepEqual(checked(["w*y?.unit.md"]), ["w*y?.unit.md"], "a file of that name");
    }
  });

  /** The names of the files that are checked. */
  function checked(args: readonly string[]): string[] {
    const read: { file: string }[] = JSON.parse(desk.cutwork(["check", ...args, "--format", "json"]).out);
    return read.map(({ file }) => file.split(path.sep).join("/"));
  }
});
