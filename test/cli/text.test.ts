import assert from "node:assert/strict";
import { existsSync } from "node:fs";
import path from "node:path";
import { stripVTControlCharacters } from "node:util";
import packageFile from "../../package.json";
import { LineIndex, range } from "../../src/base/range";
import { glyphsOf, printable } from "../../src/cli/cells";
import { paintFor, plainPaint } from "../../src/cli/colour";
import { codeFrame } from "../../src/cli/frame";
import { findingLines } from "../../src/cli/text";
import { unitOf } from "../support/units";
import { Desk } from "./desk";

/** The frame of the first place of `part` in a text. */
function frameOf(text: string, part: string, width = 80): string[] {
  const start = text.indexOf(part);
  assert.ok(start >= 0);
  const at = range(start, start + part.length);
  return codeFrame(new LineIndex(text), at, { paint: plainPaint, ink: "error", width });
}

describe("code frames", () => {
  it("put carets under the range", () => {
    assert.deepEqual(frameOf("one\ntwo three\nfour", "three"), ["    2 | two three", "      |     ^^^^^"]);
  });

  it("measure wide characters, combining marks, emoji and tabs", () => {
    assert.deepEqual(frameOf("- 漢字 = ab", "ab"), ["    1 | - 漢字 = ab", "      |          ^^"]);
    assert.deepEqual(frameOf("- 漢字 = ab", "字"), ["    1 | - 漢字 = ab", "      |     ^^"]);
    assert.deepEqual(frameOf("- e\u0301e\u0301 = ab", "ab"), ["    1 | - e\u0301e\u0301 = ab", "      |        ^^"]);
    assert.deepEqual(frameOf("👩‍🍳🇵🇹 = ab", "ab"), ["    1 | 👩‍🍳🇵🇹 = ab", "      |        ^^"]);
    assert.deepEqual(frameOf("a\tb\t\tab", "ab"), ["    1 | a   b       ab", "      |             ^^"]);
    assert.deepEqual(frameOf("한국어 ｱｲ ＝ x", "x"), ["    1 | 한국어 ｱｲ ＝ x", "      |              ^"]);
  });

  it("show what a terminal would obey instead of sending it", () => {
    assert.deepEqual(frameOf("a\u001b[31mb\u202ec", "c"), [
      "    1 | a<001B>[31mb<202E>c",
      "      |                   ^",
    ]);
    assert.equal(printable("a\nb\u0007\u2066"), "a b<0007><2066>");
  });

  it("mark an empty range, one at a line's end and one at the file's end with one caret", () => {
    const lines = new LineIndex("ab\r\n\r\ncd");
    const frame = (start: number, end: number): string[] =>
      codeFrame(lines, range(start, end), { paint: plainPaint, ink: "hint", width: 80 });
    assert.deepEqual(frame(1, 1), ["    1 | ab", "      |  ^"]);
    assert.deepEqual(frame(2, 2), ["    1 | ab", "      |   ^"]);
    assert.deepEqual(frame(4, 4), ["    2 |", "      | ^"]);
    assert.deepEqual(frame(8, 8), ["    3 | cd", "      |   ^"]);
  });

  it("show the first and the last line of a range over several", () => {
    const text = "zero\n  one\ntwo\nthree four\nfive";
    assert.deepEqual(frameOf(text, "one\ntwo\nthree"), [
      "    2 |   one",
      "      |   ^^^",
      "    … |",
      "    4 | three four",
      "      | ^^^^^",
    ]);
    assert.deepEqual(frameOf(text, "one\ntwo"), ["    2 |   one", "      |   ^^^", "    3 | two", "      | ^^^"]);
    assert.deepEqual(frameOf(text, "two\n"), ["    3 | two", "      | ^^^"]);
  });

  it("cut a long line down to what stands around the range", () => {
    const long = `${"a ".repeat(200)}HERE${" b".repeat(200)}`;
    const frame = frameOf(long, "HERE", 60);
    const [source = "", carets = ""] = frame;
    assert.equal(frame.length, 2);
    assert.ok(source.length <= 60, String(source.length));
    assert.match(source, /^ {4}1 \| ….*HERE.*…$/);
    assert.equal(source.slice(carets.indexOf("^"), carets.lastIndexOf("^") + 1), "HERE");
    for (const place of ["START", "END"]) {
      const text = place === "START" ? `START${" b".repeat(200)}` : `${"漢".repeat(200)}END`;
      const [line = "", marks = ""] = frameOf(text, place, 60);
      const cells = glyphsOf(line).flatMap(({ text: shown, cells: count }) => [shown, ...Array(count - 1).fill("")]);
      assert.ok(cells.length <= 60);
      assert.equal(cells.slice(marks.indexOf("^"), marks.lastIndexOf("^") + 1).join(""), place);
    }
  });
});

describe("colours", () => {
  const coloured = (env: Record<string, string>, isTTY: boolean): boolean =>
    paintFor({ isTTY }, env)("error", "x") !== "x";

  it("are for terminals, unless the environment says otherwise", () => {
    assert.equal(coloured({}, true), true);
    assert.equal(coloured({}, false), false);
    assert.equal(coloured({ TERM: "dumb" }, true), false);
    assert.equal(coloured({ FORCE_COLOR: "1" }, false), true);
    assert.equal(coloured({ FORCE_COLOR: "" }, false), true);
    assert.equal(coloured({ FORCE_COLOR: "0" }, true), false);
    assert.equal(coloured({ NO_COLOR: "1", FORCE_COLOR: "1" }, true), false);
    assert.equal(coloured({ NO_COLOR: "" }, true), true);
  });
});

describe("related places", () => {
  it("are shown, the first five of many", () => {
    const lines = new LineIndex("ab\ncd");
    const place = { range: range(3, 5), message: "Here\u0007" };
    const linesFor = (count: number): string[] =>
      findingLines(
        {
          file: "a.unit.md",
          lines,
          activities: [],
          findings: [
            {
              code: "some-code",
              severity: "hint",
              range: range(0, 1),
              message: "What.",
              related: Array.from({ length: count }, () => place),
              fixes: [],
            },
          ],
        },
        { paint: plainPaint, width: 80 },
      );
    const shown = ["  a.unit.md:2:1 Here<0007>", "    2 | cd", "      | ^^"];
    const first = ["a.unit.md:1:1 hint some-code What.", "    1 | ab", "      | ^"];
    assert.deepEqual(linesFor(0), first);
    assert.deepEqual(linesFor(5), [...first, ...Array.from({ length: 5 }, () => shown).flat()]);
    assert.deepEqual(linesFor(7), [...linesFor(5), "  and 2 more places"]);
  });
});

describe("text output", function () {
  this.timeout(60_000);
  let desk: Desk;
  beforeEach(() => {
    desk = new Desk();
  });
  afterEach(() => desk.clear());

  const several = `${unitOf(4, "gird: 3 x 3\nseed: x")}\n## Mais\n\n- be = bo\n- ba = bo\n\n\`\`\`activity\nmake: tiles\n\`\`\`\n\n## S\n\n- [x] a.\n- [x] b.\n- [x] c.\n- [x] d.\n`;

  it("frames each finding, names related places and counts by severity", () => {
    desk.write("a.unit.md", several);
    const { out } = desk.cutwork(["check", "a.unit.md"]);
    assert.match(out, /^a\.unit\.md:10:1 error wrong-option .*\n {4}10 \| gird: 3 x 3\n {7}\| \^{4}$/m);
    assert.match(out, /\n {2}a\.unit\.md:16:8 .*\n {4}16 \| - be = bo\n {7}\| {8}\^\^\n/);
    assert.match(out, /^a\.unit\.md: 3 errors, 1 warning, 1 information$/m);
  });

  it("ends quietly where its reader has seen enough", async () => {
    const text = `## Words\n\n${"```activity\nmake: nothing\n```\n\n".repeat(200)}`;
    const files = Array.from({ length: 40 }, (_, i) => desk.write(`${i}.unit.md`, text));
    const { code, err } = await desk.readStart(["check", ...files]);
    assert.deepEqual({ code, err }, { code: 0, err: "" });
  });

  it("is the same text where it is coloured", () => {
    desk.write("a.unit.md", several);
    const plain = desk.cutwork(["check", "a.unit.md"]).out;
    const forced = desk.cutwork(["check", "a.unit.md"], "", { FORCE_COLOR: "1" }).out;
    assert.ok(!plain.includes("\u001b"));
    assert.ok(forced.includes("\u001b[1;31merror\u001b[0m"));
    assert.equal(stripVTControlCharacters(forced), plain);
    assert.equal(desk.cutwork(["check", "a.unit.md"], "", { FORCE_COLOR: "1", NO_COLOR: "1" }).out, plain);
  });

  it("has a schema for settings files beside it, for editors of YAML", () => {
    for (const { url } of packageFile.contributes.yamlValidation) {
      assert.ok(existsSync(path.join(__dirname, "../..", url)), url);
    }
  });

  it("is read by the problem matcher: each finding once, and nothing else", () => {
    const [matcher] = packageFile.contributes.problemMatchers;
    assert.equal(matcher?.name, "cutwork");
    const { regexp, ...groups } = matcher.pattern;
    const names = ["week 1/a b: c.unit.md", "b.unit.md", "good.unit.md"];
    desk.write("week 1/a b: c.unit.md", several);
    desk.write(
      "b.unit.md",
      "## Words\n\n- c.unit.md:1:1 error no-kind x = y\n\n```activity\nmake: tiles\ngird: 1\n```\n",
    );
    desk.write("good.unit.md", unitOf(12, ""));
    const pattern = new RegExp(regexp);
    const read = desk
      .cutwork(["check", ...names])
      .out.split("\n")
      .flatMap((line) => {
        const match = pattern.exec(line);
        const part = (key: keyof typeof groups): string => match?.[groups[key]] ?? "";
        return match
          ? [[part("file"), part("line"), part("column"), part("severity"), part("code"), part("message")]]
          : [];
      });
    const units: {
      file: string;
      findings: {
        range: { start: { line: number; character: number } };
        severity: string;
        code: string;
        message: string;
      }[];
    }[] = JSON.parse(desk.cutwork(["check", ...names, "--format", "json"]).out);
    const wanted = units.flatMap(({ file, findings }) =>
      findings.map(({ range: { start }, severity, code, message }) => [
        file,
        String(start.line + 1),
        String(start.character + 1),
        severity,
        code,
        message,
      ]),
    );
    assert.ok(wanted.length > 4);
    assert.deepEqual(read, wanted);
  });
});
