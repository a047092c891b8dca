import assert from "node:assert/strict";
import { applyEdits, readUnitText, unitOf } from "../support/units";

/** Tiles for classes of 12 in pairs, six sets, and a plan of stations with these options. */
const unit = (options: string, own = ""): string =>
  `${unitOf(12, `title: Benches\n${own}`, "---\nclasses: [12, 7]\n---\n\n")}\n\`\`\`stations\nminutes: 2\nperiod: 90\n${options}\n\`\`\`\n`;

const few = async (text: string) => (await readUnitText(text)).findings.filter(({ code }) => code === "few-sets");

describe("places of a plan of stations", () => {
  it("have a set each, or it is told", async () => {
    const text = unit("desks: 8\ngroups: 3");
    const [finding, ...more] = await few(text);
    assert.ok(finding && more.length === 0);
    assert.equal(finding.message, "8 desks have “Benches”, but only 6 sets are printed.");
    assert.equal(text.slice(finding.range.start, finding.range.end), "desks: 8");
    const [print, lay] = finding.fixes.map(({ edits }) => applyEdits(text, edits));
    assert.ok(print?.includes("copies: 8\n") && lay?.includes("desks: 6\n"));
    for (const mended of [print, lay]) assert.deepEqual(await few(mended ?? ""), []);
    assert.deepEqual(await few(unit("desks: 6\ngroups: 3")), []);
    assert.deepEqual(await few(unit("desks: 8\ngroups: 3", "copies: by copier")), []);
  });

  it("count sets of all levels and versions, and stations that come again", async () => {
    assert.deepEqual(await few(unit("desks: 8\ngroups: 3", "versions: 2\ncopies: 8")), []);
    const [finding] = await few(unit("stations: [Benches, Benches]\ngroups: 2", "copies: 1"));
    assert.equal(finding?.message, "2 stations have “Benches”, but only 1 set is printed.");
    assert.equal(finding?.fixes.length, 1);
  });
});
