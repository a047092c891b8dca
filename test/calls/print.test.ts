import assert from "node:assert/strict";
import { type PrintedPage, readPrint } from "../support/print";
import { readUnitText, testWorkshop } from "../support/units";
import { rowsOf } from "./reader";
import { callsUnit, story } from "./unit";

/* From the text to paper and back: what pdf.js reads from the caller's lists against the statements as they are written. */

async function printed(text: string): Promise<{ names: string[]; pages: PrintedPage[] }> {
  const reading = await readUnitText(text);
  assert.deepEqual(reading.findings, []);
  const files = await (await testWorkshop()).make(reading, {});
  const paper = files.find(({ name }) => name.endsWith("calls.paper.pdf"));
  assert.ok(paper);
  return { names: files.map(({ name }) => name), pages: await readPrint(paper.bytes) };
}

/** The statements as a teacher reads them: text without mark, links and comments → answer, correction. */
const written = new Map(
  story.flatMap((line, i): [string, { truth: string; correction: string }][] => {
    const match = /^- \[(.)\] (.*?)( <!-- by: (\w+) -->)?$/.exec(line);
    if (!match) return [];
    const text = (match[2] ?? "").replace(/\[([^\]]*)\]\((<[^>]*>|[^)\s]*)[^)]*\)/g, "$1");
    const below = story[i + 1]?.startsWith("  - ") ? story[i + 1]?.slice(4) : "";
    return [
      [
        match[4] ? `${text} (${match[4]})` : text,
        { truth: match[1] === "x" ? "True" : "False", correction: below ?? "" },
      ],
    ];
  }),
);

describe("calls from print", function () {
  this.timeout(60_000);

  it("says whom a list is for, also where there is one class, and nothing where there is none", async () => {
    const said = async (front: string): Promise<string> => {
      const { pages } = await printed(callsUnit(story, "slip: none", `teaches: pt\n${front}`));
      return (pages[0]?.texts ?? []).map(({ text }) => text).join(" ");
    };
    assert.match(await said("classes: [23]\n"), /For 23 learners in 11 groups Statements/);
    assert.match(await said("classes: [23, 8]\n"), /For hour 1 of 2, 23 learners in 11 groups Statements/);
    assert.doesNotMatch(await said(""), /For (?!ties)/);
  });

  for (const paper of ["A4", "Letter"]) {
    it(`${paper}: each list has each statement once with its answer and correction`, async () => {
      const front = `teaches: pt\npaper: ${paper}\nclasses: [24, 27, 31]\n`;
      const { names, pages } = await printed(callsUnit(story, "reserve: 2\nslip: none\nseed: 4", front));
      // Nothing is cut: there is no file of cards.
      assert.ok(!names.some((name) => name.includes("card")));
      assert.equal(pages.length, 3);
      const orders = pages.map((page) => {
        const rows = rowsOf(page);
        assert.equal(rows.length, written.size);
        for (const [, text = "", answer, correction = ""] of rows) {
          assert.deepEqual({ truth: answer, correction }, written.get(text), text);
        }
        assert.equal(new Set(rows.map(([, text]) => text)).size, written.size);
        const called = rows.filter(([number]) => !number?.startsWith("+"));
        assert.equal(called.length, written.size - 2);
        assert.doesNotMatch(called.map(([, , answer]) => answer?.charAt(0)).join(""), /T{4}|F{4}/);
        return called.map(([, text]) => text).join("|");
      });
      assert.equal(new Set(orders).size, 3);
      assert.equal(new Set(pages.map(({ texts }) => texts.find(({ text }) => text.startsWith("hour"))?.text)).size, 3);
    });
  }

  it("prints a slip for each pair of all classes, or of the largest where they are wiped, and a sheet for teams", async () => {
    const front = "teaches: pt\nclasses: [24, 27, 31]\n";
    const count = ({ pages }: { pages: PrintedPage[] }, head: string): number =>
      pages.flatMap(({ texts }) => texts.filter(({ text }) => text === head)).length;
    // 12 + 13 + 15 pairs, the odd ones with a trio.
    const once = await printed(callsUnit(story, "teams: 3", front));
    assert.equal(count(once, "Pair:"), 40);
    assert.equal(count(once, "Team 3"), 3);
    const wiped = await printed(callsUnit(story, "reuse: laminate\nteams: 2", front));
    assert.equal(count(wiped, "Pair:"), 15);
    assert.equal(count(wiped, "Team 2"), 1);
    assert.equal(count(wiped, "Team 3"), 0);
  });
});
