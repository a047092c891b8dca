import assert from "node:assert/strict";
import { fold } from "../../src/match/fold";
import { answerKey, Relation } from "../../src/match/relation";
import { readUnit } from "../../src/unit/read";

describe("quotation marks round a text", () => {
  // CLDR's main and second quotation marks, and those of print; from memory.
  const marks: readonly (readonly [where: string, open: string, close: string])[] = [
    ["typewriters", '"', '"'],
    ["typewriters, single", "'", "'"],
    ["English, Spanish", "“", "”"],
    ["English, single", "‘", "’"],
    ["German", "„", "“"],
    ["German, single", "‚", "‘"],
    ["Polish, Romanian", "„", "”"],
    ["Swedish, Finnish", "”", "”"],
    ["Swedish, single", "’", "’"],
    ["French, Portuguese, Ukrainian", "«", "»"],
    ["French, single", "‹", "›"],
    ["German print, Danish", "»", "«"],
    ["German print, single", "›", "‹"],
    ["Japanese", "「", "」"],
    ["Japanese, inner", "『", "』"],
  ];
  for (const [where, open, close] of marks)
    it(`${open}…${close} (${where}) are dropped, with the space inside them and a stop on either side`, () => {
      for (const text of [`${open}a roda${close}`, `${open} a roda ${close}`, `${open}a roda.${close}`])
        assert.equal(fold(text), "a roda");
      assert.equal(fold(`${open}a roda${close}.`), "a roda");
      // One that is not closed, and one in the middle, belong to the text.
      assert.equal(fold(`${open}a roda`), `${open}a roda`);
      assert.equal(fold(`a roda${close}`), `a roda${close}`);
      assert.equal(fold(`a ${open}roda${close} nova`), `a ${open}roda${close} nova`);
    });

  it("that do not belong together stay", () => {
    for (const text of ["“колесо»", "«колесо”", "「колесо』", "»колесо»"]) assert.equal(fold(text), text);
  });

  it("round nothing stay, also before a stop", () => {
    for (const text of ["“”", "“”.", "“ ”", "“.”"]) assert.equal(fold(text), text);
  });

  it("that stand alone are the text", () => {
    for (const text of ['"', "'", "«"]) {
      assert.equal(fold(text), text);
      assert.equal(fold(`${text}.`), text);
    }
  });
});

describe("a full stop at the end", () => {
  it("is dropped with the space before it, once, in any script", () => {
    assert.equal(fold("o pneu ."), "o pneu");
    assert.equal(fold("車輪。"), "車輪");
    for (const stop of "।۔።։។") {
      assert.equal(fold(`x${stop}`), "x");
      assert.equal(fold(`x${stop}${stop}`), `x${stop}${stop}`);
    }
    assert.equal(fold("o pneu.."), "o pneu..");
    assert.equal(fold("o pneu..."), "o pneu...");
    assert.equal(fold("車輪。。"), "車輪。。");
  });

  it("elsewhere belongs to the text", () => {
    assert.equal(fold("n.º 3"), "n.º 3");
    assert.equal(fold(".5"), ".5");
  });
});

describe("space and marks", () => {
  it("of any kind and length are one space, and none at the ends", () => {
    assert.equal(fold("  a\u00a0\t roda\n da   frente "), "a roda da frente");
  });

  it("composed or not make no difference, but are a difference", () => {
    assert.equal(fold("travão"), fold("trava\u0303o"));
    assert.equal(fold("trava\u0303o"), "travão");
    assert.notEqual(fold("travao"), fold("travão"));
  });
});

describe("reasons and pictures", () => {
  const relation = new Relation(
    readUnit(
      [
        "## Na oficina",
        "",
        "- a roda = the wheel / the wheel / the «wheel».",
        "- «a roda» = the wheel",
        "- ![uma roda](wheel.png) um = the wheel",
        "- ![uma roda](wheel.png) dois = two wheels",
        "- ![uma roda](brake.png) um = the brake",
        "",
      ].join("\n"),
    ).sections.flatMap((section) => section.pairs),
  );
  const [first, second, ...pictures] = relation.pairs;

  it("names each pair that makes two texts fit once, whichever is asked for first", () => {
    assert.deepEqual(relation.because("a roda", "the wheel"), [first, second]);
    assert.deepEqual(relation.because("the wheel", "a roda"), [first, second]);
    assert.deepEqual(relation.because("the «wheel»", "a roda"), [first]);
    assert.deepEqual(relation.because("a roda", "two wheels"), []);
    assert.deepEqual([...relation.partners("nothing")], []);
    assert.equal(relation.fits("nothing", "the wheel"), false);
  });

  it("reads a caption as one text however it is styled", () => {
    const [plain, styled] = readUnit("## S\n\n- ![a](b.png) um = x\n- ![a](b.png) *u*m = y\n").sections.flatMap(
      (section) => section.pairs.map((pair) => answerKey(pair.left.answers[0])),
    );
    assert.ok(plain);
    assert.equal(plain, styled);
  });

  it("tells pictures apart by their file and by what stands beside them", () => {
    const keys = pictures.map((pair) => answerKey(pair.left.answers[0]));
    assert.equal(new Set(keys).size, 3);
    assert.ok(keys.every((key) => !relation.fits(key, "a roda") && !["um", "dois", "uma roda"].includes(key)));
    assert.deepEqual(
      keys.map((key) => [...relation.partners(key)]),
      [["the wheel"], ["two wheels"], ["the brake"]],
    );
  });
});

describe("what cannot be seen", () => {
  it("makes no other text: soft hyphens, zero width spaces, marks of direction, idle joiners, Latin ligatures", () => {
    for (const text of [
      "ri\u00ado",
      "\u200brio",
      "rio\u200b",
      "\u200erio",
      "ri\u2060o",
      "\ufeffrio",
      "ri\u200do",
      "ri\u200co",
    ])
      assert.equal(fold(text), "rio");
    assert.equal(fold("\ufb01o"), "fio");
  });

  it("stays where it changes how letters join", () => {
    // Persian and Hindi words whose spelling has a joiner.
    for (const text of ["می\u200cخواهم", "क्\u200dष"]) assert.equal(fold(text), text);
  });
});
