import assert from "node:assert/strict";
import { paperPages, prepSheet } from "../support/guide";
import { unitOf } from "../support/units";

const front = "---\nteaches: pt\nclasses: [6]\n---\n\n";
const claims = ["x", " ", "x", " ", "x", " "].map((mark, i) => `- [${mark}] O travão ${i} range.`).join("\n");
const said = (make: string, options: string): string =>
  `## About ${make}\n\n${claims}\n\n\`\`\`activity\nmake: ${make}\ntitle: My ${make}\n${options}\n\`\`\`\n`;
const tiles = (options: string): string => unitOf(12, `title: My tiles\ngrid: 3 x 3\n${options}`);
const story = (options: string): string =>
  `## Story\n\n1. Um.\n2. Dois.\n3. Três.\n4. Quatro.\n\n\`\`\`activity\nmake: strips\ntitle: My strips\n${options}\n\`\`\`\n`;
const laminate = "reuse: laminate";

describe("laminating on the prep sheet", () => {
  it("names the activities, tiles apart from cards, each at its time", async () => {
    const all = await prepSheet(`${front}${tiles(laminate)}\n${said("sort", laminate)}\n${story("slip: none")}`);
    assert.match(all, /Laminate the tiles of “My tiles” as whole sheets and cut them afterwards without a rim/);
    assert.match(all, /Laminate the pieces of “My sort” after cutting: .* 4 mm apart .* 2 mm of film/);
    assert.doesNotMatch(all, /[Ll]aminate[^.]*“My strips”/);
    const [whole, cut, pieces] = ["Laminate the tiles", "Cut along", "Laminate the pieces"].map((part) =>
      all.indexOf(part),
    );
    assert.ok(whole && cut && pieces && whole < cut && cut < pieces);
    // Three sets of tiles and three of cards, a sheet each.
    assert.match(all, /Pouches 6, each/);
    assert.doesNotMatch(await prepSheet(front + story("slip: none")), /aminate|Pouches|Sleeves|Pens/);
  });

  it("counts slips among what is laminated", async () => {
    const all = await prepSheet(front + said("calls", `slip: tally\n${laminate}`));
    assert.match(all, /Pouches 1, each/);
    assert.match(all, /slips of “My calls” after cutting/);
    assert.match(all, /Pens wipeable/);
    assert.match(all, /Laminator: its rollers|Cut along/);
  });
});

describe("laminating where learners cut", () => {
  it("takes their pieces whole and the slips after cutting: no activity's pieces are laminated twice", async () => {
    const both = `${laminate}\nblanks: 2\nslip: order\ncutting: learners`;
    const all = await prepSheet(front + story(both));
    assert.match(all, /Laminate the sheets of pieces of “My strips” whole; learners cut them/);
    assert.match(all, /Laminate the slips of “My strips” after cutting/);
    assert.doesNotMatch(all, /Laminate the pieces/);
    const teacher = await prepSheet(front + story(both.replace("learners", "teacher")));
    assert.match(teacher, /Laminate the pieces of “My strips” and the slips of “My strips” after cutting/);
  });
});

describe("sleeves", () => {
  it("are counted on the prep sheet: one for each slip and each blank piece", async () => {
    const all = await prepSheet(front + story("blanks: 2\nslip: order\nreuse: sleeve"));
    assert.match(all, /Sleeves 3 for slips, 6 for blank pieces, clear, one for each that is written on/);
    assert.match(all, /Pens wipeable, and a cloth/);
    assert.doesNotMatch(all, /Pouches|aminate/);
    assert.doesNotMatch(await prepSheet(front + story("blanks: 2")), /Sleeves|Pens/);
  });

  it("are enough for the activity with the most: a class writes on those of one at a time", async () => {
    const sleeved = (make: string, options: string): string => said(make, `${options}\nreuse: sleeve`);
    const all = await prepSheet(
      front +
        story("blanks: 2\nslip: order\nreuse: sleeve") +
        sleeved("calls", "slip: tally") +
        sleeved("sort", "blanks: 1"),
    );
    assert.match(all, /Sleeves 3 for slips, 6 for blank pieces, clear, one for each that is written on at a time/);
  });

  it("and wipeable pens stand in the guide instead of pencils", async () => {
    const words = `${front}${unitOf(12, "").replace("make: tiles", "make: board\nslip: score\nREUSE")}`;
    for (const [unit, once, sleeve, film] of [
      [
        front + story("slip: order\nREUSE"),
        "a recording slip and a pencil for each group",
        "a recording slip in a sleeve and a wipeable pen with a cloth for each group",
        "a recording slip and a wipeable pen with a cloth for each group",
      ],
      [
        front + said("calls", "slip: tally\nREUSE"),
        "a tally slip and a pencil for each group",
        "a tally slip in a sleeve and a wipeable pen",
        "a tally slip and a wipeable pen",
      ],
      [front + tiles("blanks: 2\nREUSE"), "pencils", "wipeable pens and cloths", "wipeable pens and cloths"],
      [
        words,
        "a score slip and a pencil",
        "a score slip in a sleeve and a wipeable pen",
        "a score slip and a wipeable",
      ],
    ] as const) {
      for (const [reuse, expected] of [
        ["once", once],
        ["sleeve", sleeve],
        ["laminate", film],
      ] as const) {
        const guide = (await paperPages(unit.replace("REUSE", `reuse: ${reuse}`))).join(" ");
        const [, hand = ""] = /At hand (.*?) Directions/.exec(guide) ?? [];
        assert.ok(hand.includes(expected), `${reuse}: ${hand}`);
        assert.equal(hand.includes("pencil"), reuse === "once");
      }
    }
  });
});
