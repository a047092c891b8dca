import assert from "node:assert/strict";
import { board } from "../../src/activities/board/kind";
import type { Press } from "../../src/activities/contract";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";
import { type ShapeName, shapes, workshopUnit } from "../activities/material";
import { printedAs } from "../support/printed";
import { rectanglesOn } from "../support/rectangles";
import { testTypeface } from "../support/typeface";

/* What learners are told at a board: of words and of forms, and who sits where. */

const langs = ["en", "es", "fr", "de", "pt"];

async function told(unit: string): Promise<{ readonly summary: string; readonly steps: readonly string[] }> {
  const [activity] = planUnit(readUnit(unit)).activities;
  assert.ok(activity?.request);
  const dealt = board.deal(activity.request);
  assert.ok(dealt.deals.length > 0);
  const press: Press = { typeface: await testTypeface(), pictures: new Map(), unitTitle: "Board" };
  const steps = langs.map((lang) => (board.directions(dealt, lang) ?? []).join("\n"));
  return { summary: board.guide(dealt, press).summary, steps };
}

const about = (shape: ShapeName, options: string): string => workshopUnit("board", shape, options);

describe("directions of a board", () => {
  it("say of forms that a form, or a verb and a person, are called, in each language", async () => {
    const words = await told(about("words", "grid: 3 x 4"));
    const forms = await told(about("forms", "grid: 3 x 4"));
    const persons = await told(about("forms", "grid: 3 x 4\nshow: gloss\nclue: word"));
    assert.match(words.summary, /The caller says a word’s translation;/);
    assert.match(forms.summary, /The caller says a form of a verb;/);
    assert.match(persons.summary, /The caller says a verb and a person;/);
    assert.match(words.steps[0] ?? "", /means the same/);
    const own = [
      [/Listen to the form and touch the cell with its verb and person\./, /Listen to the verb and the person/],
      [/Escuchad la forma .* su verbo y su persona/, /Escuchad el verbo y la persona/],
      [/Écoutez la forme .* son verbe et sa personne/, /Écoutez le verbe et la personne/],
      [/Hört die Form .* ihrem Verb und ihrer Person/, /Hört Verb und Person/],
      [/Ouçam a forma .* o verbo e a pessoa dela/, /Ouçam o verbo e a pessoa/],
    ] as const;
    own.forEach(([form, person], i) => {
      assert.match(forms.steps[i] ?? "", form);
      assert.match(persons.steps[i] ?? "", person);
      assert.doesNotMatch(words.steps[i] ?? "", form);
    });
  });

  it("speak of neither alone where words and forms are called", async () => {
    const both = about("words", "grid: 5 x 6").replace("[Bench, Road]", "[Bench, Road, Forms]");
    const { summary, steps } = await told(both);
    assert.match(summary, /a word’s translation or a form of a verb;/);
    assert.match(steps[0] ?? "", /touch the cell that belongs to what you hear/);
    const plain = (await told(about("words", "grid: 3 x 4"))).steps;
    for (const [i, each] of steps.entries()) assert.notEqual(each, plain[i]);
  });

  it("seat three at a board that is read from two sides", async () => {
    const three = await told(about("words", "grid: 3 x 4\nfacing: opposite\nplayers: 3"));
    assert.match(three.summary, /^Three learners sit at a board of 3 × 4 cells, two of them opposite the third\. /);
    assert.match(three.steps[0] ?? "", /^Sit round the board, two of you on one side and the third opposite\./);
    const two = await told(about("words", "grid: 3 x 4\nfacing: opposite"));
    const side = await told(about("words", "grid: 3 x 4\nplayers: 3"));
    assert.match(two.summary, /^Two learners sit opposite each other at a board of 3 × 4 cells\. /);
    assert.match(side.summary, /^Three learners sit side by side at a board of 3 × 4 cells\. /);
    const first = ({ steps }: { readonly steps: readonly string[] }): string[] =>
      steps.map((each) => each.split("\n")[0] ?? "");
    for (const [i, step] of first(three).entries())
      for (const other of [two, side]) assert.notEqual(step, first(other)[i]);
  });

  it("part what is read from either side by a line through the middle of each cell", async () => {
    assert.equal(shapes.words.items, 20);
    for (const facing of ["opposite", "side"]) {
      const options = `grid: 4 x 3\nblanks: 2\nfacing: ${facing}`;
      const [page] = (await printedAs("board", about("words", options))).card;
      assert.ok(page);
      const cells = rectanglesOn(page, 0.5);
      assert.equal(cells.length, 12);
      const parting = page.lines.filter(({ weight }) => weight === 0.25);
      assert.equal(parting.length, facing === "opposite" ? 12 : 0);
      for (const cell of facing === "opposite" ? cells : []) {
        const inside = parting.filter(
          ({ x1, y1, y2 }) =>
            x1 > cell.x && x1 < cell.x + cell.w && y1 === y2 && Math.abs(y1 - (cell.y + cell.h / 2)) < 0.05,
        );
        assert.equal(inside.length, 1);
      }
    }
  });
});
