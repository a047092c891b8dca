import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { editsHold } from "../fuzz/laws";
import { applyEdits, readUnitText } from "../support/units";
import { parseFixture } from "./fixture";

/*
 * A fixture is a unit with its expectation in it: a line of carets under the offending text, then the code and, where it
 * matters, the severity. `^^^` may be followed by `also` lines for further findings on the same line. All findings of a
 * fixture must be named, and no others. Every fix is applied and must take its finding away.
 */

const folder = path.join(__dirname, "fixtures");

describe("fixtures of findings", () => {
  for (const name of readdirSync(folder).sort()) {
    const { text, expected } = parseFixture(readFileSync(path.join(folder, name), "utf8"));

    it(`${name}: exactly the findings that stand in it`, async () => {
      const { findings, unit } = await readUnitText(text);
      const actual = findings.map(({ code, severity, range }) => {
        const { start, end } = unit.lines.lsp(range);
        const to =
          end.line === start.line ? end.character : unit.lines.line(start.line).end - unit.lines.start(start.line);
        return { line: start.line, from: start.character, to, code, severity };
      });
      const wanted = expected.map((each) => ({
        ...each,
        severity: each.severity ?? actual.find((one) => one.code === each.code && one.line === each.line)?.severity,
      }));
      const order = (a: { line: number; from: number; code: string }, b: typeof a): number =>
        a.line - b.line || a.from - b.from || (a.code < b.code ? -1 : 1);
      assert.deepEqual(actual.sort(order), wanted.sort(order));
    });

    it(`${name}: each fix takes its finding away, and applying preferred fixes ends`, async () => {
      const { findings } = await readUnitText(text);
      for (const finding of findings) {
        const same = (list: typeof findings): number =>
          list.filter(({ code, message }) => code === finding.code && message === finding.message).length;
        for (const fix of finding.fixes) {
          editsHold(text, fix, finding.code);
          const after = await readUnitText(applyEdits(text, fix.edits));
          assert.ok(same(after.findings) < same(findings), `“${fix.title}” leaves ${finding.code}`);
        }
      }
      let now = text;
      for (let round = 0; round < 100; round++) {
        const { findings: left } = await readUnitText(now);
        const fix = left.flatMap((finding) => finding.fixes.filter(({ preferred }) => preferred))[0];
        if (!fix) return;
        const next = applyEdits(now, fix.edits);
        assert.notEqual(next, now, `“${fix.title}” changes nothing`);
        now = next;
      }
      assert.fail("preferred fixes chase each other");
    });
  }
});
