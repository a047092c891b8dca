import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { unitOf } from "../support/units";

/* The built command, as a user calls it. */

const command = path.join(__dirname, "../../dist/cli.js");

describe("the command line", function () {
  this.timeout(60_000);
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), "cutwork-cli-"));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  function cutwork(args: readonly string[], input = ""): { code: number | null; out: string; err: string } {
    const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], {
      cwd: folder,
      input,
      encoding: "utf8",
    });
    return { code: status, out: stdout, err: stderr };
  }

  function write(name: string, text: string | Uint8Array): string {
    mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
    writeFileSync(path.join(folder, name), text);
    return name;
  }

  it("checks: 0 for a clean unit, 1 for findings, with file, line and column", () => {
    const good = cutwork(["check", write("good.unit.md", unitOf(12, ""))]);
    assert.equal(good.code, 0, good.err);
    assert.match(good.out, /nothing found[\s\S]*3 × 3 tiles; [A-Z0-9]{6} gentle, 1 set: one solution/);
    const bad = cutwork(["check", write("bad.unit.md", unitOf(4, "gird: 3 x 3"))]);
    assert.equal(bad.code, 1);
    assert.match(bad.out, /^bad\.unit\.md:10:1 error wrong-option /m);
  });

  it("fails on warnings only where asked", () => {
    const statements = "## S\n\n- [x] a.\n- [x] b.\n- [x] c.\n- [x] d.\n";
    write("s.unit.md", statements);
    assert.equal(cutwork(["check", "s.unit.md"]).code, 0);
    assert.equal(cutwork(["check", "s.unit.md", "--fail-on", "warning"]).code, 1);
  });

  it("reads standard input and writes JSON with LSP ranges and proofs", () => {
    const { code, out } = cutwork(["check", "-", "--format", "json"], unitOf(4, "seed: x"));
    assert.equal(code, 1);
    const [unit] = JSON.parse(out);
    assert.deepEqual(unit.findings[0].range, { start: { line: 9, character: 6 }, end: { line: 9, character: 7 } });
    const { activity, make, level, version, status, count, capped, nodes } = unit.proofs[0];
    assert.deepEqual(
      { activity, make, level, version, status, count, capped, nodes: typeof nodes },
      {
        activity: "Words – tiles",
        make: "tiles",
        level: "gentle",
        version: 1,
        status: "one",
        count: 1,
        capped: false,
        nodes: "number",
      },
    );
  });

  it("makes all files, and leaves no other behind", () => {
    const { code, out } = cutwork(["make", write("u/café.unit.md", unitOf(4, "")), "--out", "printed/today"]);
    assert.equal(code, 0);
    assert.deepEqual(readdirSync(path.join(folder, "printed/today")).sort(), [
      "café.Words-tiles.card.pdf",
      "café.Words-tiles.paper.pdf",
      "café.pieces.json",
    ]);
    assert.match(out, /printed\/today\/café\.Words-tiles\.card\.pdf/);
  });

  it("makes nothing of a unit with errors and says what they are", () => {
    const { code, err } = cutwork(["make", write("bad.unit.md", unitOf(4, "grid: 3 x 3"))]);
    assert.equal(code, 1);
    assert.match(err, /bad\.unit\.md:10:1 error too-few-pairs/);
    assert.deepEqual(readdirSync(folder), ["bad.unit.md"]);
  });

  it("leaves good files whole where one cannot be replaced", () => {
    write("a.unit.md", unitOf(4, ""));
    assert.equal(cutwork(["make", "a.unit.md"]).code, 0);
    const card = path.join(folder, "out/a.Words-tiles.card.pdf");
    const before = readFileSync(card);
    rmSync(path.join(folder, "out/a.Words-tiles.paper.pdf"));
    mkdirSync(path.join(folder, "out/.a.Words-tiles.paper.pdf.tmp"));
    write("a.unit.md", unitOf(4, "seed: 9"));
    const { code, err } = cutwork(["make", "a.unit.md"]);
    assert.equal(code, 2);
    assert.match(err, /a\.Words-tiles\.paper\.pdf cannot be written/);
    assert.deepEqual(readFileSync(card), before);
    assert.ok(!readdirSync(path.join(folder, "out")).some((name) => name.endsWith("card.pdf.tmp")));
  });

  it("says 2 and how to call it where the call or a file cannot be used", () => {
    write("latin1.unit.md", new Uint8Array([0x23, 0x23, 0x20, 0xe9, 0x0a]));
    for (const [args, message] of [
      [[], /Say what to do/],
      [["bake"], /no command “bake”/],
      [["check"], /Name the units/],
      [["check", "nowhere.unit.md"], /nowhere\.unit\.md cannot be read: it is not there/],
      [["check", "."], /it is a folder/],
      [["check", "latin1.unit.md"], /not UTF-8/],
      [["check", "-", "--format", "xml"], /--format can be text or json/],
      [["check", "-", "--colour"], /colour/],
      [["make", write("ok.unit.md", unitOf(4, "")), "--only", "loops"], /no activity or kind “loops”/],
    ] as const) {
      const { code, err, out } = cutwork(args);
      assert.equal(code, 2, args.join(" "));
      assert.match(err, message);
      assert.equal(out, "");
    }
  });
});
