import assert from "node:assert/strict";
import { paperPages } from "../support/guide";
import { applyEdits, readUnitText, unitOf } from "../support/units";

/** A unit with tiles and a board, for classes of these sizes, and a plan of stations with these options. */
function unit(classes: string, options: string, players = 2): string {
  const board = unitOf(12, `players: ${players}\nslip: none`)
    .replace("make: tiles", "make: board")
    .replace("## Words", "## More");
  return `${unitOf(12, "", `---\nclasses: [${classes}]\n---\n\n`)}\n${board}\n\`\`\`stations\nminutes: 5\nperiod: 90\n${options}\n\`\`\`\n`;
}

const small = async (text: string) => (await readUnitText(text)).findings.filter(({ code }) => code === "small-groups");

describe("groups of a plan of stations", () => {
  it("are told where a class is too small for them, with the number that fits", async () => {
    for (const [classes, options, message, groups] of [
      ["4", "groups: 6", /class of 4, 2 of 6 groups stay empty and 4 learners sit alone\. With 2 groups/, 2],
      ["24, 5", "groups: 3", /class of 5, 1 learner sits alone\. With 2 groups each has at least 2/, 2],
      ["3", "groups: 2", /class of 3, 1 learner sits alone\. With 1 group each/, 1],
    ] as const) {
      const text = unit(classes, options);
      const [finding, ...more] = await small(text);
      assert.ok(finding && more.length === 0);
      assert.match(finding.message, message);
      assert.equal(text.slice(finding.range.start, finding.range.end), options);
      const mended = applyEdits(text, finding.fixes[0]?.edits ?? []);
      assert.ok(mended.includes(`groups: ${groups}\n`));
      assert.deepEqual(await small(mended), []);
    }
    for (const [classes, options] of [
      ["6", "groups: 3"],
      ["12", "groups: 6"],
    ] as const)
      assert.deepEqual(await small(unit(classes, options)), []);
    assert.deepEqual(await small(unit("4", "groups: 6").replace("classes: [4]", "seed: 2")), []);
  });

  it("have as many as play at a board", async () => {
    const [finding] = await small(unit("5", "groups: 2", 3));
    assert.match(finding?.message ?? "", /1 group is too small for a board for 3\. With 1 group each has at least 3/);
    assert.deepEqual(await small(unit("5", "groups: 2", 2)), []);
  });

  it("have somebody to call, where the teacher cannot call at all stations", async () => {
    const calls = `\n## Said\n\n- [x] Chove.\n- [x] Neva.\n- [ ] O selim ri.\n- [ ] O raio dorme.\n\n\`\`\`activity\nmake: calls\n\`\`\`\n`;
    const two = (classes: string, options: string): string => unit(classes, options) + calls;
    const [finding, ...more] = await small(two("8", "groups: 3"));
    assert.deepEqual(more, []);
    assert.equal(
      finding?.message,
      "In the class of 8, 1 group has nobody left over to call, and you can call at one station. With 2 groups each has at least 3.",
    );
    assert.deepEqual(await small(two("9", "groups: 3")), []);
    // One station has a caller, or all desks hear the same one.
    assert.deepEqual(await small(unit("8", "groups: 3")), []);
    assert.deepEqual(await small(two("8", "stations: [tiles, calls]\ngroups: 3")), []);
    assert.deepEqual(await small(two("8", "stations: [board, calls]\ndesks: 3\ngroups: 3")), []);
  });

  it("cannot be mended by fewer groups for a single learner", async () => {
    const [finding] = await small(unit("1", "groups: 2"));
    assert.match(finding?.message ?? "", /class of 1, 1 of 2 groups stays empty and 1 learner sits alone/);
    assert.deepEqual(finding?.fixes, []);
  });

  it("are not made as many as stations where the class is too small for that", async () => {
    const fixes = async (classes: string) =>
      (await readUnitText(unit(classes, "groups: 1"))).findings.find(({ code }) => code === "uneven-stations")?.fixes;
    assert.deepEqual(await fixes("3"), []);
    assert.equal((await fixes("4"))?.length, 1);
  });

  it("that stay empty stand in the plan", async () => {
    assert.match((await paperPages(unit("4", "groups: 6"))).join(" "), /4 groups of 1; 2 groups stay empty/);
  });
});
