import { expect } from "chai";
import { soundAlike, soundingAlike } from "../../src/match/heard";
import type { LookAlikes } from "../../src/match/look-alikes";

describe("what is heard of words", () => {
  const group: LookAlikes = {
    lang: "pt",
    keys: ["A roda gira.", "a roda gira", "A roda gira?", "A roda, gira!", "Á roda gira."],
    differences: ["case", "punctuation", "accent"],
  };

  it("are groups of those that sound the same, each with its own differences", () => {
    expect(soundingAlike(group)).to.deep.equal([
      { lang: "pt", keys: ["A roda gira.", "a roda gira", "A roda, gira!"], differences: ["case", "punctuation"] },
    ]);
  });

  it("is found once for a group", () => {
    expect(soundingAlike(group)).to.equal(soundingAlike(group));
  });

  it("tells a question from what is said", () => {
    expect(soundAlike(["O selim é baixo?", "o selim é baixo"])).to.equal(false);
    expect(soundAlike(["O selim é baixo!", "o selim… é baixo"])).to.equal(true);
  });
});
