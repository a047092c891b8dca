import assert from "node:assert/strict";
import { paperPages } from "../support/guide";
import { sortUnit } from "./unit";

/* What the guide says of a sort whose sets differ. */

const words = ["### o", "- disco", "- copo", "- pente", "### a", "- mochila", "- conta", "- gaivota"];
const guide = async (options: string): Promise<string> =>
  (await paperPages(sortUnit(words, options, "teaches: pt\nclasses: [8]\n"))).slice(0, -1).join(" ");

describe("the guide of a sort", () => {
  it("counts the cards of each level, and says which sets have a card that not all have", async () => {
    const said = await guide("levels: [gentle, hard]");
    // Three words a pile; the gentle header cards show one of each.
    assert.match(said, /Learners sort 4 cards \(gentle\) or 6 \(hard\) into 2 piles/);
    const answers = said.slice(said.indexOf("Answers"));
    assert.equal(answers.match(/o: \S+ \(hard\)/g)?.length, 1);
    assert.equal(answers.match(/a: \S+ \(hard\)/g)?.length, 1);
    assert.doesNotMatch(answers, /\((gentle|gentle, hard)\)/);
  });

  it("names nothing where all sets have the same cards", async () => {
    for (const options of ["", "versions: 2"]) {
      const said = await guide(options);
      assert.match(said, /Learners sort 6 cards into 2 piles/);
      assert.doesNotMatch(said.slice(said.indexOf("Answers")), /: \S+ \(/);
    }
  });

  it("names versions that have different cards", async () => {
    const answers = (said: string): string => said.slice(said.indexOf("Answers"));
    const said = await guide("take: 5\nversions: 2");
    assert.match(said, /Learners sort 5 cards into 2 piles/);
    assert.match(answers(said), /: \S+ \(version 1\)/);
    assert.match(answers(said), /: \S+ \(version 2\)/);
  });
});
