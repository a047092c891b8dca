import assert from "node:assert/strict";
import { materialWords, paperLanguages } from "../../src/activities/paper-words";
import { planUnit } from "../../src/activities/plan";
import { stripsGuide } from "../../src/activities/strips/guide";
import { strips } from "../../src/activities/strips/kind";
import type { DealtStrips } from "../../src/activities/strips/model";
import { readUnit } from "../../src/unit/read";
import type { PrintedPage } from "../support/print";
import { printedAs } from "../support/printed";
import { readUnitText } from "../support/units";
import { stripsOn } from "./reader";
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

/** Two stories and strips of both, on desks. */
const evening = ["A Leonor fecha a janela.", "Chove.", "O último cliente sai.", "Ela apaga a luz.", "O gato dorme."];
const twoStories = (options: string, front = "classes: [10]\npaper: A4\n"): string =>
  `---\nteaches: pt\n${front}---\n\n## Morning\n\n${morning.join("\n")}\n\n## Evening\n\n${evening
    .map((event, i) => `${i + 1}. ${event}`)
    .join("\n")}\n\n\`\`\`activity\nmake: strips\nfrom: [Morning, Evening]\ntitle: Round\n${options}\n\`\`\`\n`;

/** Of the line with this code in the key of the desks, the desk and the order. */
function lineOf({ texts }: PrintedPage, code: string): (string | undefined)[] {
  const row = texts.find(({ text }) => text === code);
  const beside = texts.filter(({ y }) => Math.abs(y - (row?.y ?? -1)) < 0.5);
  const number = beside.find(({ x }) => x < (row?.x ?? 0));
  return [number?.text, beside.find(({ text }) => /^[A-G( )]{5,}$/.test(text))?.text];
}

describe("sets of desks from print", function () {
  this.timeout(60_000);

  for (const paper of ["A4", "Letter"]) {
    it(`${paper}: each desk tells one of the stories in turn, with letters and a key of its own`, async () => {
      const text = twoStories("desks: 5\nblanks: 1\nreuse: laminate", `classes: [10]\npaper: ${paper}\n`);
      const { card, paper: papers, pieces } = await printedAs("strips", text.replace("title: Round", "title: strips"));
      const strips = card.flatMap((page) => stripsOn(page));
      const desks = [...new Set(strips.map(({ desk }) => desk))];
      assert.deepEqual(desks, ["1", "2", "3", "4", "5"]);
      const overview = papers.find(({ texts }) => texts.some((each) => each.text.startsWith("Key of the desks")));
      assert.ok(overview);
      const orders = new Set<string>();
      for (const desk of desks) {
        const own = strips.filter((each) => each.desk === desk);
        const printed = own.filter((each) => /^[A-Z]$/.test(each.sign));
        assert.equal(own.length, printed.length + 1, "a blank one");
        const [code = "?"] = own[0]?.mark.split("-") ?? [];
        assert.ok(own.every(({ mark }) => mark.startsWith(`${code}-`)));
        const [number, order = ""] = lineOf(overview, code);
        assert.equal(number, desk);
        const signs = order.replace(/[^A-G]/g, "");
        const told = [...signs].map((sign) => printed.find((each) => each.sign === sign)?.text);
        const story = Number(desk) % 2 === 1 ? morning : evening;
        assert.deepEqual(
          told,
          story.map((event) => event.replace(/^ *(\d+\.|-) /, "")),
        );
        orders.add(signs);
        // The set's own key says the same.
        const key = papers.find(({ texts }) => texts.some((each) => each.text.includes(`deal code ${code}`)));
        assert.ok(key?.texts.some((each) => each.text === order));
        assert.ok(key?.texts.some((each) => each.text.includes(`desk ${desk}`)));
        const filed = pieces.pieces.filter(({ mark }) => mark.startsWith(`${code}-`));
        assert.equal(filed.length, own.length);
      }
      assert.equal(orders.size, 5, "no two desks have one order");
      // A slip has a column a desk, and tells where a story has no more places.
      const slip = papers.find(({ texts }) => texts.some((each) => each.text.startsWith("Write each desk’s letters")));
      assert.ok(slip);
      const slips = slip.texts.filter((each) => each.text.startsWith("Write each desk’s letters")).length;
      // 8 rows; the second story has 6 places with the blank one, at two desks.
      assert.equal(slip.texts.filter((each) => each.text === "–").length, 4 * slips);
    });
  }

  it("are told apart wherever a version is named", async () => {
    const { summary } = stripsGuide(dealt(twoStories("desks: 4")));
    assert.match(summary, /Each of 4 desks has a set with letters and a key of its own; 2 stories lie there in turn/);
    const answers = stripsGuide(dealt(twoStories("desks: 4"))).answers.map((runs) =>
      runs.map(({ text }) => text).join(""),
    );
    assert.equal(answers.filter((line) => /^Desk [13] \([A-Z0-9]{6}\): [A-G( )]+$/.test(line)).length, 2);
    assert.equal(dealt(twoStories("desks: 4")).summary, "5–7 strips");
  });

  it("are as many as a plan has, which then says when to move on", async () => {
    const plan = (options: string): string => `\n\`\`\`stations\nminutes: 4\n${options}\n\`\`\`\n`;
    for (const [options, count] of [
      ["stations: [Round]\ndesks: 3", 3],
      ["desks: 3\ncopies: 2", 6],
      ["stations: [strips]\ndesks: 4", 4],
      ["stations: [Round]", 1],
    ] as const) {
      const result = dealt(twoStories("") + plan(options));
      assert.equal(result.deals.length, count, options);
    }
    // Where one activity stands alone, both stories are one.
    assert.equal(dealt(twoStories("")).deals[0]?.events.length, 12);
    for (const text of [twoStories("desks: 3") + plan(""), twoStories("desks: 3") + plan("desks: 3")]) {
      const result = dealt(text);
      const { materials, summary } = stripsGuide(result);
      assert.doesNotMatch(materials(materialWords("en")).join(), /timer/);
      assert.match(summary, /the plan of the stations says who works where/);
      for (const lang of paperLanguages) {
        const steps = (strips.directions(result, lang) ?? []).join("\n");
        assert.doesNotMatch(steps, /move on|mesa siguiente|table suivante|nächsten Tisch|mesa seguinte/, lang);
      }
    }
    const alone = dealt(twoStories("desks: 3"));
    assert.match(stripsGuide(alone).materials(materialWords("en")).join(), /timer/);
    assert.match((strips.directions(alone, "en") ?? []).join(), /move on to the next desk/);
  });

  it("need a story each that is long enough, and no versions besides", async () => {
    const short = twoStories("desks: 3").replace(/3\. O último[^#`]*O gato dorme\.\n/s, "");
    const [finding, ...more] = (await readUnitText(short)).findings;
    assert.deepEqual(more, []);
    assert.match(finding?.message ?? "", /at least 3 events \(numbered items\); “Evening” has 2\./);
    const twice = (await readUnitText(twoStories("desks: 5\nversions: 2"))).findings;
    assert.deepEqual(
      twice.map(({ code }) => code),
      ["overruled-option"],
    );
  });
});
