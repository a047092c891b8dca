import assert from "node:assert/strict";
import type { Deal, Dealt, KindName } from "../../src/activities/contract";
import { blanksText, copiesOf } from "../../src/activities/copies";
import { kindNamed } from "../../src/activities/kinds";
import type { Sheet } from "../../src/page/sheet";
import { readUnitText, testWorkshop } from "../support/units";
import { dealtOf, type ShapeName, workshopUnit } from "./material";

/* What learners write on: new ones for each class where they are used once, the same again where they are wiped. */

const texts = (sheets: readonly Sheet[]): { text: string; size: number }[] =>
  sheets.flatMap(({ items }) =>
    items.flatMap((item) =>
      item.type === "text" ? [{ text: item.runs.map(({ text }) => text).join(""), size: item.size }] : [],
    ),
  );

async function sheetsOf(text: string, view: "dealt" | "papers"): Promise<readonly Sheet[]> {
  const workshop = await testWorkshop();
  const reading = await readUnitText(text);
  const [activity] = reading.activities;
  const deal = activity?.deals[0];
  assert.ok(activity && deal);
  return workshop.view(reading, activity, deal, view);
}

/** Marks that name a set and no piece stand on blank ones: `CODE-SET`, or in two lines `CODE` and `SET`. */
async function blanksOn(text: string): Promise<number> {
  const small = texts(await sheetsOf(text, "dealt")).filter(({ size }) => size === 5);
  return small.filter(({ text: mark }) => /^(?:[A-Z0-9]{6}-)?[A-Z0-9]{2}$/.test(mark)).length;
}

const kinds: readonly (readonly [KindName, ShapeName])[] = [
  ["tiles", "words"],
  ["strips", "events"],
  ["rebuild", "sentences"],
  ["sort", "words"],
  ["sort", "piles"],
  ["loop", "words"],
];

describe("blank pieces", () => {
  for (const [make, about] of kinds)
    it(`are so many for each class that writes on them: ${make} of ${about}`, async () => {
      const count = (options: string, classes = "[6, 7, 8]"): Promise<number> =>
        blanksOn(workshopUnit(make, about, `take: 8\nblanks: 2\n${options}`, `classes: ${classes}\n`));
      assert.equal(await count(""), 6);
      assert.equal(await count("", "[6]"), 2);
      assert.equal(await count("reuse: sleeve"), 2);
      assert.equal(await count("reuse: laminate"), 2);
      // At each level as many, also where a set has fewer pieces.
      assert.equal(await count("levels: [gentle, hard]"), 6);
      assert.equal(await blanksOn(workshopUnit(make, about, "take: 8", "classes: [6, 7, 8]\n")), 0);
    });

  it("are called what they are for", () => {
    assert.equal(blanksText({ blanks: 2, reuse: "once" }, [6, 7]), "4 blank (2 for each class)");
    assert.equal(blanksText({ blanks: 2, reuse: "sleeve" }, [6, 7]), "2 blank");
    // A master is copied anew for each class.
    assert.equal(blanksText({ blanks: 2, reuse: "once", copies: "by copier" }, [6, 7]), "2 blank");
    assert.equal(blanksText({ blanks: 0, reuse: "once" }, [6, 7]), undefined);
  });

  it("of calls are slips for statements, so many for each group", async () => {
    const count = async (options: string): Promise<number> => {
      const unit = workshopUnit("calls", "statements", `blanks: 3\n${options}`, "classes: [6, 9]\n");
      return texts(await sheetsOf(unit, "papers")).filter(({ text }) => text === "Right is").length;
    };
    // 3 and 4 groups of pairs.
    assert.equal(await count(""), 21);
    assert.equal(await count("reuse: sleeve"), 12);
  });
});

describe("copies by level", () => {
  const plans = [{ level: "gentle" }, { level: "hard" }];

  it("count together where no levels are asked for, and leave the rest to a level that they do not name", () => {
    assert.deepEqual(copiesOf({ group: 2, copies: { gentle: 9, hard: 4 } }, [], [{ level: "hard" }]), [13]);
    assert.deepEqual(
      copiesOf({ group: 2, levels: ["hard"], copies: { gentle: 9, hard: 4 } }, [], [{ level: "hard" }]),
      [4],
    );
    assert.deepEqual(copiesOf({ group: 2, levels: ["gentle", "hard"], copies: { gentle: 9 } }, [27], plans), [9, 4]);
    assert.deepEqual(copiesOf({ group: 2, levels: ["gentle", "hard"], copies: { gentle: 9 } }, [], plans), [9, 1]);
  });
});

describe("directions", () => {
  const all: readonly (readonly [KindName, ShapeName])[] = [...kinds, ["board", "words"], ["calls", "statements"]];
  const languages = ["en", "es", "fr", "de", "pt"];
  const stepsOf = (make: KindName, about: ShapeName, options: string): (number | undefined)[] => {
    const dealt = dealtOf(workshopUnit(make, about, options), (_): _ is Dealt<Deal> => true);
    return languages.map((lang) => kindNamed(make)?.directions(dealt, lang)?.length);
  };

  for (const [make, about] of all)
    it(`tell of blanks and of levels in each language: ${make} of ${about}`, () => {
      const plain = stepsOf(make, about, "");
      const [count = 0] = plain;
      assert.deepEqual(plain, Array(5).fill(count));
      assert.deepEqual(stepsOf(make, about, "blanks: 2"), Array(5).fill(count + 1));
      const levels = stepsOf(make, about, "levels: [gentle, hard]");
      assert.equal(new Set(levels).size, 1);
    });
});
