import assert from "node:assert/strict";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import packageFile from "../../package.json";
import { unitOf } from "../support/units";
import { Desk } from "./desk";

/* The built command, as a user calls it. */

describe("the command line", function () {
  this.timeout(60_000);
  let desk: Desk;
  beforeEach(() => {
    desk = new Desk();
  });
  afterEach(() => desk.clear());

  it("checks: 0 for a clean unit, 1 for findings, with file, line and column", () => {
    const good = desk.cutwork(["check", desk.write("good.unit.md", unitOf(12, ""))]);
    assert.equal(good.code, 0, good.err);
    assert.match(good.out, /nothing found[\s\S]*3 × 3 tiles; [A-Z0-9]{6}, 1 set: one solution/);
    const bad = desk.cutwork(["check", desk.write("bad.unit.md", unitOf(4, "gird: 3 x 3"))]);
    assert.equal(bad.code, 1);
    assert.match(bad.out, /^bad\.unit\.md:10:1 error wrong-option /m);
  });

  it("says 2 and why where what it prints cannot be written", function () {
    if (!existsSync("/dev/full")) this.skip();
    desk.write("bad.unit.md", unitOf(4, "gird: 3 x 3"));
    const { code, err } = desk.printingTo("/dev/full", ["check", "bad.unit.md"]);
    assert.deepEqual([code, err], [2, "The standard output cannot be written: the disk is full.\n"]);
  });

  it("fails on warnings only where asked", () => {
    desk.write("s.unit.md", unitOf(6, "").replace("# Words", "# Words\n\n- [x] a.\n- [x] b.\n- [x] c.\n- [x] d."));
    assert.match(desk.cutwork(["check", "s.unit.md"]).out, /^s\.unit\.md: 1 warning, /m);
    assert.equal(desk.cutwork(["check", "s.unit.md"]).code, 0);
    assert.equal(desk.cutwork(["check", "s.unit.md", "--fail-on", "warning"]).code, 1);
  });

  it("tells warnings where files are made, and a file that is named twice once", () => {
    desk.write("s.unit.md", unitOf(6, "").replace("# Words", "# Words\n\n- [x] a.\n- [x] b.\n- [x] c.\n- [x] d."));
    const { code, err } = desk.cutwork(["make", "s.unit.md"]);
    assert.equal(code, 0);
    assert.match(err, /^s\.unit\.md:\d+:\d+ warning unbalanced-statements /m);
    const { out } = desk.cutwork(["check", "s.unit.md", "./s.unit.md"]);
    assert.equal(out.match(/s\.unit\.md: 1 warning/g)?.length, 1);
    assert.equal(desk.cutwork(["make", "s.unit.md", "./s.unit.md"]).code, 0);
  });

  it("reads standard input and writes JSON with LSP ranges and proofs", () => {
    const { code, out } = desk.cutwork(["check", "-", "--format", "json"], unitOf(4, "seed: x"));
    assert.equal(code, 1);
    const [unit] = JSON.parse(out);
    assert.deepEqual(unit.findings[0].range, { start: { line: 9, character: 6 }, end: { line: 9, character: 7 } });
    const { activity, make, level, version, status, count, capped, nodes } = unit.proofs[0];
    assert.deepEqual(
      { activity, make, level, version, status, count, capped, nodes: typeof nodes },
      {
        activity: "Words – tiles",
        make: "tiles",
        level: "plain",
        version: 1,
        status: "one",
        count: 1,
        capped: false,
        nodes: "number",
      },
    );
  });

  it("says of a circle in JSON whether a smaller one can close, apart from whether there is a second one", () => {
    const circle = (...bosses: readonly string[]): string =>
      `## People\n\n${[...bosses, "a amiga = the friend", "o vizinho = the neighbour", "a prima = the cousin"].map((pair) => `- ${pair}`).join("\n")}\n\n\`\`\`activity\nmake: loop\n\`\`\`\n`;
    const proofOf = (text: string): { status: string; smaller?: { status: string; circle?: number[] } } =>
      JSON.parse(desk.cutwork(["check", "-", "--format", "json"], text).out)[0].proofs[0];
    const same = ["o patrão = the boss", "o chefe = the boss", "o dono = the boss"];
    const [one, two, three] = [1, 2, 3].map((count) => proofOf(circle(...same.slice(0, count))));
    assert.deepEqual([one?.status, one?.smaller], ["one", { status: "none" }]);
    assert.deepEqual([two?.status, two?.smaller?.status], ["one", "some"]);
    assert.deepEqual([three?.status, three?.smaller?.status], ["several", "some"]);
    for (const each of [two, three]) {
      const places = each?.smaller?.circle ?? [];
      assert.ok(places.length > 0 && places.length < 6 && places.every((place) => place >= 0 && place < 6));
    }
    const tiles = JSON.parse(desk.cutwork(["check", "-", "--format", "json"], unitOf(4, "")).out)[0].proofs[0];
    assert.ok(!("smaller" in tiles));
  });

  it("makes all files, and leaves no other behind", () => {
    const { code, out } = desk.cutwork(["make", desk.write("u/café.unit.md", unitOf(4, "")), "--out", "printed/today"]);
    assert.equal(code, 0);
    assert.deepEqual(readdirSync(path.join(desk.folder, "printed/today")).sort(), [
      "café.Words-tiles.card.pdf",
      "café.Words-tiles.paper.pdf",
      "café.guide.pdf",
      "café.labels.pdf",
      "café.pieces.json",
    ]);
    assert.match(out, /printed\/today\/café\.Words-tiles\.card\.pdf/);
  });

  it("makes nothing of a unit with errors and says what they are", () => {
    const { code, err } = desk.cutwork(["make", desk.write("bad.unit.md", unitOf(4, "grid: 3 x 3"))]);
    assert.equal(code, 1);
    assert.match(err, /bad\.unit\.md:10:1 error too-few-pairs/);
    assert.deepEqual(readdirSync(desk.folder), ["bad.unit.md"]);
  });

  it("leaves good files whole where one cannot be replaced", () => {
    desk.write("a.unit.md", unitOf(4, ""));
    assert.equal(desk.cutwork(["make", "a.unit.md"]).code, 0);
    const card = path.join(desk.folder, "out/a.Words-tiles.card.pdf");
    const before = readFileSync(card);
    rmSync(path.join(desk.folder, "out/a.Words-tiles.paper.pdf"));
    mkdirSync(path.join(desk.folder, "out/.a.Words-tiles.paper.pdf.tmp"));
    desk.write("a.unit.md", unitOf(4, "seed: 9"));
    const { code, err } = desk.cutwork(["make", "a.unit.md"]);
    assert.equal(code, 2);
    assert.match(err, /a\.Words-tiles\.paper\.pdf cannot be written/);
    assert.deepEqual(readFileSync(card), before);
    assert.ok(!readdirSync(path.join(desk.folder, "out")).some((name) => name.endsWith("card.pdf.tmp")));
  });

  it("says 2 and how to call it where the call cannot be used", () => {
    desk.write("ok.unit.md", unitOf(4, ""));
    for (const [args, message] of [
      [[], /Say what to do/],
      [["bake"], /no command “bake”/],
      [["help", "bake"], /no command “bake”/],
      [["check"], /Name the units/],
      [["make"], /Name the units/],
      [["check", "-", "-"], /only once/],
      [["check", "-", "--format", "xml"], /--format can be text, json or sarif, not “xml”/],
      [["check", "-", "--format"], /^--format lacks its value\.$/m],
      [["check", "-", "--format", "--help"], /^--format lacks its value\.$/m],
      [["make", "ok.unit.md", "--out", ""], /^--out lacks its value\.$/m],
      [["find", "AAA", "--in="], /^--in lacks its value\.$/m],
      [["check", "-", "--help=3"], /^--help takes no value\.$/m],
      [["check", "ok.unit.md", "--fail-on", "hint"], /--fail-on can be error or warning, not “hint”/],
      [["check", "ok.unit.md", "--fail-on", ""], /--fail-on can be error or warning, not “”/],
      [
        ["check", "-", "--colour"],
        /^There is no option “--colour”\. A file whose name begins with a hyphen stands behind “--”\.$/m,
      ],
      [["check", "-c"], /^There is no option “-c”\./m],
      [["make", "ok.unit.md", "--format", "json"], /^There is no option “--format”\./m],
      [
        ["make", "ok.unit.md", "other/OK.unit.md"],
        /ok\.unit\.md and other\/OK\.unit\.md would be written to the same files/,
      ],
    ] as const) {
      const { code, err, out } = desk.cutwork(args);
      assert.equal(code, 2, args.join(" "));
      assert.match(err, message);
      assert.match(err, /^cutwork check FILE…/m);
      assert.equal(out, "");
    }
    assert.deepEqual(readdirSync(desk.folder), ["ok.unit.md"]);
  });

  it("says 2 and why where a file cannot be used", () => {
    desk.write("latin1.unit.md", new Uint8Array([0x23, 0x23, 0x20, 0xe9, 0x0a]));
    for (const [args, message] of [
      [["check", "nowhere.unit.md"], /^nowhere\.unit\.md cannot be read: it is not there\.\n$/],
      [["check", "latin1.unit.md"], /^latin1\.unit\.md is not UTF-8 text\.\n$/],
      [["make", "nowhere.unit.md"], /^nowhere\.unit\.md cannot be read: it is not there\.\n$/],
      [
        ["make", desk.write("ok.unit.md", unitOf(4, "")), "--only", "loops"],
        /^ok\.unit\.md has no activity or kind “loops”\.\n$/,
      ],
    ] as const) {
      const { code, err, out } = desk.cutwork(args);
      assert.equal(code, 2, args.join(" "));
      assert.match(err, message);
      assert.equal(out, "");
    }
    const { code, err } = desk.cutwork(["check", "-"], new Uint8Array([0xff]));
    assert.equal(code, 2);
    assert.equal(err, "Standard input is not UTF-8 text.\n");
  });

  it("tells warnings of what it makes, and makes it", () => {
    desk.write("a.unit.md", unitOf(4, "margin: 6"));
    const { code, err, out } = desk.cutwork(["make", "a.unit.md"]);
    assert.equal(code, 0);
    assert.match(err, /^a\.unit\.md:\d+:\d+ warning narrow-margin /);
    assert.match(out, /\.card\.pdf/);
    const two = unitOf(4, "title: One\nmargin: 6\nseed: 8").concat("\n```activity\nmake: loop\ntitle: Two\n```\n");
    const warnings = (only: string): string =>
      desk.cutwork(["make", desk.write("two.unit.md", two), "--only", only]).err;
    assert.match(warnings("One"), /^two\.unit\.md:\d+:\d+ warning /m);
    assert.doesNotMatch(warnings("Two"), / warning /);
  });

  it("says which PDFs in the folder are of an earlier print, and leaves them", () => {
    desk.write("a.unit.md", unitOf(4, "title: One"));
    assert.equal(desk.cutwork(["make", "a.unit.md"]).err, "");
    const { code, err } = desk.cutwork(["make", "a.unit.md", "--merge"]);
    assert.equal(code, 0);
    assert.equal(
      err.match(/^ {2}out[\\/]a\.One\.(card|paper)\.pdf is of an earlier print.*delete it\.$/gm)?.length,
      2,
      err,
    );
    assert.ok(readdirSync(path.join(desk.folder, "out")).includes("a.One.card.pdf"));
  });

  it("checks the other files where one cannot be read, in the order of the call", () => {
    desk.write("b.unit.md", unitOf(4, "gird: 3 x 3"));
    desk.write("a.unit.md", unitOf(4, ""));
    const call = ["check", "b.unit.md", "gone.unit.md", "a.unit.md"];
    const text = desk.cutwork(call);
    assert.equal(text.code, 2);
    assert.match(text.err, /^gone\.unit\.md cannot be read/);
    assert.match(text.out, /^b\.unit\.md:10:1 error[\s\S]*^b\.unit\.md: 1 error$[\s\S]*^a\.unit\.md: nothing found$/m);
    assert.match(text.out, /\n3 files: 1 error, 1 not read\n$/);
    const json = desk.cutwork([...call, "--format", "json"]);
    assert.equal(json.code, 2);
    const units: { file: string; error?: string; findings: unknown[]; proofs: unknown[] }[] = JSON.parse(json.out);
    assert.deepEqual(
      units.map(({ file, error, findings, proofs }) => [file, error, findings.length, proofs.length]),
      [
        ["b.unit.md", undefined, 1, 1],
        ["gone.unit.md", "gone.unit.md cannot be read: it is not there.", 0, 0],
        ["a.unit.md", undefined, 0, 1],
      ],
    );
  });

  it("makes the other units where one cannot be read, made or written", () => {
    desk.write("bad.unit.md", unitOf(4, "grid: 3 x 3"));
    desk.write("good.unit.md", unitOf(4, ""));
    desk.write("last.unit.md", unitOf(4, "seed: 2"));
    mkdirSync(path.join(desk.folder, "out/good.pieces.json"), { recursive: true });
    const { code, out, err } = desk.cutwork(["make", "gone.unit.md", "bad.unit.md", "good.unit.md", "last.unit.md"]);
    assert.equal(code, 2);
    assert.match(
      err,
      /^gone\.unit\.md cannot be read[\s\S]*^bad\.unit\.md: nothing was made[\s\S]*good[^\n]* cannot be written/m,
    );
    assert.match(out, /^last\.unit\.md:$/m);
    assert.ok(readdirSync(path.join(desk.folder, "out")).includes("last.pieces.json"));
  });

  it("reports what is wrong in the settings around units once, and makes nothing with them", () => {
    desk.write("cutwork.yml", "paper: A4\nmargins: 5\n");
    desk.write("week/a.unit.md", unitOf(4, ""));
    desk.write("week/b.unit.md", unitOf(4, "seed: 2"));
    const call = ["check", "week/a.unit.md", "week/b.unit.md"];
    const { code, out } = desk.cutwork(call);
    assert.equal(code, 1);
    assert.equal(out.match(/^cutwork\.yml:2:1 error wrong-option .*\n {4}2 \| margins: 5$/gm)?.length, 1, out);
    assert.match(out, /^2 files: 1 error$/m);
    const units: { file: string; findings: unknown[] }[] = JSON.parse(desk.cutwork([...call, "--format", "json"]).out);
    assert.deepEqual(
      units.map(({ file, findings }) => [file, findings.length]),
      [
        ["week/a.unit.md", 0],
        ["week/b.unit.md", 0],
        ["cutwork.yml", 1],
      ],
    );
    const made = desk.cutwork(["make", "week/a.unit.md"]);
    assert.equal(made.code, 1);
    assert.match(made.err, /^cutwork\.yml:2:1 error wrong-option [\s\S]*^week\/a\.unit\.md: nothing was made/m);
    assert.deepEqual(readdirSync(desk.folder).sort(), ["cutwork.yml", "week"]);
  });

  it("takes settings from a cutwork.yaml too, after those of a cutwork.yml beside it", () => {
    desk.write("a.unit.md", unitOf(4, ""));
    desk.write("cutwork.yaml", "paper: Letter\nmargin: 12\n");
    desk.write("cutwork.yml", "margin: 15\n");
    assert.equal(desk.cutwork(["make", "a.unit.md"]).code, 0);
    const { deals }: { deals: { paper: string; margin: number }[] } = JSON.parse(
      readFileSync(path.join(desk.folder, "out/a.pieces.json"), "utf8"),
    );
    assert.equal(deals[0]?.paper, "Letter");
    assert.equal(deals[0]?.margin, 15);
  });

  it("counts columns of a file with a byte order mark as editors do", () => {
    // The second section of a name points to the first, which stands in the first line.
    const text = `${unitOf(6, "")}\n## Words\n\n- o = a\n`;
    const plain = desk.cutwork(["check", "-", "--format", "json"], text);
    const marked = desk.cutwork(["check", "-", "--format", "json"], `\ufeff${text}`);
    assert.match(plain.out, /"line": 0,\s+"character": 3\b/);
    assert.equal(marked.out, plain.out);
  });

  it("tells its version and helps with each command, without an engine", () => {
    for (const flag of ["--version", "-v"]) {
      assert.deepEqual(desk.cutwork([flag]), { code: 0, out: `${packageFile.version}\n`, err: "" });
    }
    for (const args of [["--help"], ["-h"], ["help"]]) {
      const { code, out } = desk.cutwork(args);
      assert.equal(code, 0);
      assert.match(out, /^cutwork check FILE…[\s\S]*^cutwork make FILE…[\s\S]*^Exit: 0/m);
    }
    const options = { check: ["--format", "--fail-on"], make: ["--out", "--only", "--trial", "--merge"] };
    for (const [command, names] of Object.entries(options)) {
      const { code, out } = desk.cutwork([command, "--help"]);
      assert.equal(code, 0);
      assert.ok(out.startsWith(`cutwork ${command} FILE…`));
      for (const name of names) assert.match(out, new RegExp(`^  ${name}`, "m"));
      assert.equal(desk.cutwork(["help", command]).out, out);
      assert.equal(desk.cutwork([command, "-h", "gone.unit.md"]).out, out);
    }
  });
});
