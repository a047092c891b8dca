import assert from "node:assert/strict";
import { fold } from "../../src/match/fold";
import { answerKey, differingKeys, keysOf, Relation } from "../../src/match/relation";
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

describe("what two relations do not have in common", () => {
  const groupOf = (...items: readonly string[]) => {
    const { sections } = readUnit(`## S\n\n${items.map((item) => `- ${item}\n`).join("")}`);
    const pairs = sections.flatMap((section) => section.pairs);
    return { pairs, keys: pairs.map(keysOf) };
  };
  const relationOf = (...groups: readonly ReturnType<typeof groupOf>[]): Relation =>
    new Relation(
      groups.flatMap(({ pairs }) => pairs),
      groups.map(({ keys }) => keys),
    );
  const differ = (from: Relation, to: Relation): string[] => [...differingKeys(from, to)].sort();
  const [quay, market] = [groupOf("o cais = the quay", "a maré = the tide"), groupOf("a banca = the stall")];

  it("is nothing where both have the same pairs, in whatever groups and however often", () => {
    const again = groupOf("a maré = the tide", "o cais = the quay", "a banca = the stall", "o cais = the quay");
    assert.deepEqual(differ(relationOf(quay, market), relationOf(market, quay)), []);
    assert.deepEqual(differ(relationOf(quay, market), relationOf(again)), []);
    assert.deepEqual(differ(relationOf(again), relationOf(quay, market)), []);
  });

  it("are the texts of the pairs that one of them lacks", () => {
    const longer = groupOf("o cais = the quay", "as marés = the tides");
    const changed = ["a maré", "as marés", "the tide", "the tides"];
    assert.deepEqual(differ(relationOf(quay, market), relationOf(longer, market)), changed);
    assert.deepEqual(differ(relationOf(longer, market), relationOf(quay, market)), changed);
    assert.deepEqual(differ(relationOf(quay, market), relationOf(quay)), ["a banca", "the stall"]);
    assert.deepEqual(differ(relationOf(quay), relationOf(quay, market)), ["a banca", "the stall"]);
    assert.deepEqual(differ(relationOf(quay), relationOf(quay)), []);
  });

  it("are all texts of a pair of which one is another, joined or parted otherwise", () => {
    const [one, two, joined] = [groupOf("ab = cd"), groupOf("ab = c / d"), groupOf("a / b = cd")];
    assert.deepEqual(differ(relationOf(one), relationOf(two)), ["ab", "c", "cd", "d"]);
    assert.deepEqual(differ(relationOf(one), relationOf(joined)), ["a", "ab", "b", "cd"]);
    assert.deepEqual(differ(relationOf(groupOf("a / b = c")), relationOf(groupOf("a = b / c"))), ["a", "b", "c"]);
  });

  it("is asked anew for another relation", () => {
    const last = relationOf(quay, market);
    assert.deepEqual(differ(relationOf(quay), last), ["a banca", "the stall"]);
    assert.deepEqual(differ(relationOf(market), last), ["a maré", "o cais", "the quay", "the tide"]);
    assert.deepEqual(differ(relationOf(quay), last), ["a banca", "the stall"]);
  });
});

describe("keys that are given with the pairs", () => {
  it("are the relation's", () => {
    const pairs = readUnit("## S\n\n- o cais = the quay / the pier\n- a doca = the dock\n").sections.flatMap(
      (s) => s.pairs,
    );
    const given = new Relation(pairs, [pairs.slice(0, 1).map(keysOf), pairs.slice(1).map(keysOf)]);
    assert.deepEqual(given.groups.flat(), new Relation(pairs).groups.flat());
    assert.deepEqual([...given.partners("o cais")], ["the quay", "the pier"]);
    assert.deepEqual([...given.partners("the dock")], ["a doca"]);
    assert.deepEqual([...given.partners("the dock")], ["a doca"]);
    assert.deepEqual([...given.partners("the boat")], []);
    assert.ok(
      given.fits("the dock", "a doca") && !given.fits("the dock", "o cais") && !given.fits("the boat", "a doca"),
    );
  });
});
