import assert from "node:assert/strict";
import { planUnit } from "../../src/activities/plan";
import { stripsGuide } from "../../src/activities/strips/guide";
import { strips } from "../../src/activities/strips/kind";
import type { DealtStrips } from "../../src/activities/strips/model";
import { readUnit } from "../../src/unit/read";
import { readUnitText } from "../support/units";
import { morning, storyUnit } from "./unit";

/* Sets of a story that lie on desks, which all groups visit in turn. */

const front = "teaches: pt\nclasses: [24, 31]\n";

function dealt(text: string): DealtStrips {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request);
  return strips.deal(activity.request);
}

describe("strips on desks", () => {
  it("says of the largest class how many groups have no desk, and offers what helps", async () => {
    // 31 learners in pairs: 14 pairs and a trio, 15 groups.
    const text = storyUnit(morning, "desks: 6", front);
    const [finding, ...more] = (await readUnitText(text)).findings;
    assert.deepEqual(more, []);
    assert.equal(finding?.message, "The class of 31 makes 15 groups for 6 desks: 9 wait in each round.");
    // In fives there are six groups, one of six.
    assert.deepEqual(
      finding.fixes.map(({ title }) => title),
      ["Make groups of 5", "Lay out 15 desks"],
    );
    const { summary, minutes } = stripsGuide(dealt(text));
    assert.match(summary, /The class of 31 makes 15 groups, so 9 of them wait in each of 15 rounds/);
    // 120 s, 15 rounds of 180 s, 14 moves of 20 s: 3100 s.
    assert.equal(minutes, 52);
  });

  it("says nothing of as many groups, of classes that are not told, and where a plan says who waits", async () => {
    for (const text of [
      storyUnit(morning, "desks: 15", front),
      storyUnit(morning, "desks: 6"),
      `${storyUnit(morning, "desks: 6", front)}\n\`\`\`stations\ndesks: 6\nminutes: 3\n\`\`\`\n`,
    ]) {
      assert.deepEqual((await readUnitText(text)).findings, []);
      assert.doesNotMatch(stripsGuide(dealt(text)).summary, /wait/);
    }
    const other = `${storyUnit(morning, "desks: 6", front)}\n## Other\n\n${morning.join("\n")}\n\n\`\`\`activity\nmake: strips\ntitle: Other\nseed: 2\n\`\`\`\n\n\`\`\`stations\nstations: [Other]\ndesks: 6\nminutes: 3\n\`\`\`\n`;
    assert.deepEqual(
      (await readUnitText(other)).findings.map(({ code }) => code),
      ["more-groups-than-desks"],
    );
  });

  it("gives the blank strips to the first group at a desk, in guide and directions", () => {
    for (const [events, first] of [
      [morning, /still empty\?/],
      [[], /^At your first desk/],
    ] as const) {
      const result = dealt(storyUnit(events, "blanks: 3\ndesks: 4"));
      assert.match(stripsGuide(result).summary, /for the first group at a desk/);
      const steps = strips.directions(result, "en") ?? [];
      assert.equal(steps.filter((step) => first.test(step)).length, 1, steps.join("\n"));
      const counts = ["en", "es", "fr", "de", "pt"].map((lang) => strips.directions(result, lang)?.length);
      assert.deepEqual(new Set(counts), new Set([steps.length]));
      // Without desks each group has its own.
      const own = dealt(storyUnit(events, "blanks: 3"));
      assert.doesNotMatch((strips.directions(own, "en") ?? []).join(" "), /desk/);
      assert.doesNotMatch(stripsGuide(own).summary, /first group/);
    }
  });
});
