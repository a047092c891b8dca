import assert from "node:assert/strict";
import { fold } from "../../src/match/fold";
import { answerKey, Relation } from "../../src/match/relation";
import { readUnit } from "../../src/unit/read";

describe("the same text", () => {
  const same: [string, string][] = [
    ["a  cup", "a cup"],
    ["cafe\u0301", "café"],
    ["«o copo»", "o copo"],
    ["“Yes.”", "Yes"],
    ["»Ja«.", "Ja"],
    ["the end.", "the end"],
    ["「猫」", "猫"],
  ];
  for (const [a, b] of same) it(`${a} is ${b}`, () => assert.equal(fold(a), fold(b)));

  const other: [string, string][] = [
    ["Sie", "sie"],
    ["año", "ano"],
    ["really?", "really"],
    ["stop!", "stop"],
    ["and so on...", "and so on"],
    ["it's", "its"],
  ];
  for (const [a, b] of other) it(`${a} is not ${b}`, () => assert.notEqual(fold(a), fold(b)));

  it("stays as written where nothing would be left", () => {
    assert.equal(fold("."), ".");
    assert.equal(fold("“”"), "“”");
  });
});

describe("which texts answer which", () => {
  const relation = new Relation(
    readUnit(
      "## S\n\n- el jefe = the boss / the chief\n- el dueño = the owner / the boss\n- slow = lento\n- ![x](a.png) = o gato\n",
    ).sections.flatMap((section) => section.pairs),
  );

  it("counts alternatives like the printed answer, in both directions", () => {
    assert.ok(relation.fits("el jefe", "the boss"));
    assert.ok(relation.fits("the boss", "el dueño"));
    assert.ok(relation.fits("el jefe", "the chief"));
    assert.deepEqual([...relation.partners("the boss")], ["el jefe", "el dueño"]);
    assert.equal(relation.because("the boss", "el dueño").length, 1);
  });

  it("is not transitive and relates no text to itself", () => {
    assert.ok(!relation.fits("el jefe", "el dueño"));
    assert.ok(!relation.fits("the boss", "the boss"));
    assert.ok(!relation.fits("el dueño", "the chief"));
  });

  it("takes a picture for itself, not for its alternative text", () => {
    const [pair] = relation.pairs.slice(-1);
    assert.ok(pair);
    assert.notEqual(answerKey(pair.left.answers[0]), "x");
    assert.ok(relation.fits(answerKey(pair.left.answers[0]), "o gato"));
    assert.ok(!relation.fits("x", "o gato"));
  });
});
