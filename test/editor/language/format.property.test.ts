import assert from "node:assert/strict";
import fc from "fast-check";
import { formatUnit } from "../../../src/editor/language/format/format";
import { readUnit } from "../../../src/unit/read";
import { meaning } from "../../check/meaning";
import { applyEdits } from "../../support/units";

/*
 * Formatting over texts that nobody would write: lines of all sorts under each other in any order.
 */

const indent = fc.constantFrom("", "", "", " ", "  ", "   ", "    ", "     ", "\t", " \t");
const marker = fc.constantFrom(
  "- ",
  "* ",
  "+ ",
  "-   ",
  "-\t",
  "1. ",
  "9. ",
  "10) ",
  "3.  ",
  "- [x] ",
  "- [ ]  ",
  "* - ",
  "-",
  "1.",
);
const words = fc.constantFrom(
  "a = b",
  "a  =  b  / c",
  "a | b = c  ",
  "c | d | e",
  "text",
  "text  ",
  "`a = b` = c",
  '[x](#medir "eu")',
  "![a](b.png) = c / d",
  "<!-- allow code: why -->",
  "a = b <!-- by: K7 -->",
  "a\u00a0= b",
  "\\= = c",
  "# h",
  "> quote",
  "",
);
const line = fc.oneof(
  { weight: 6, arbitrary: fc.tuple(indent, marker, words).map((parts) => parts.join("")) },
  { weight: 2, arbitrary: fc.tuple(indent, words).map((parts) => parts.join("")) },
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      "",
      "",
      "  ",
      "## A",
      "### o",
      "## A  ",
      "# T",
      "Title\n---",
      "---",
      "===",
      "```activity\nmake:   tiles  \n```",
      "```",
      "~~~ x",
      "<div>",
      "</div>",
      "<!-- allow code: why -->",
      "|  | x |y|\n|-|:-:|-:|\n| a |b",
      "| a | b |\n|--|--|\n| c | d | e |",
      "| d \\| e | 飲む |",
      "[a]: b",
      "> - a = b",
      "\uFEFF",
    ),
  },
);
const unit = fc
  .tuple(
    fc.constantFrom("", "---\ntitle: A\n---\n", "\uFEFF"),
    fc.array(line, { maxLength: 14 }),
    fc.constantFrom("\n", "\r\n"),
  )
  .map(([front, lines, newline]) => (front + ["## S", ...lines].join("\n")).replaceAll("\n", newline));

const runs = Number(process.env["CUTWORK_FUZZ_RUNS"] ?? 400);
const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 20_250_601);

describe("formatting anything", () => {
  it("changes no meaning, and is done after one time", () => {
    fc.assert(
      fc.property(unit, (text) => {
        const once = applyEdits(text, formatUnit(text));
        assert.deepEqual(meaning(once), meaning(text));
        assert.deepEqual(
          readUnit(once)
            .problems.map(({ code }) => code)
            .sort(),
          readUnit(text)
            .problems.map(({ code }) => code)
            .sort(),
        );
        assert.deepEqual(applyEdits(once, formatUnit(once)), once);
      }),
      { numRuns: runs, seed, includeErrorInReport: true },
    );
  }).timeout(0);
});
