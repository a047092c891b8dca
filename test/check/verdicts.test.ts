import { strict as assert } from "node:assert";
import { kinds } from "../../src/activities/kinds";
import { allRules } from "../../src/check/rules";
import { verdicts } from "../../src/check/verdicts";
import { readUnitText } from "../support/units";

describe("the list of verdicts", () => {
  for (const { make, title, example, unit, says, codes } of verdicts) {
    if (!unit) continue;
    it(`${make}: ${title}: the unit that is shown gets it`, async () => {
      const { activities, findings } = await readUnitText(example);
      const proof = activities[0]?.deals[0]?.proof;
      assert.ok(proof, findings.map(({ message }) => message).join(" "));
      assert.equal(activities[0]?.make, make);
      assert.deepEqual({ ...says, accepted: proof.accepted }, { ...pick(proof, says), accepted: says.accepted });
      const found = new Set(findings.map(({ code }) => code));
      assert.deepEqual(
        codes.filter((code) => !found.has(code)),
        [],
        "findings that are named",
      );
      const loud = findings.filter(({ severity }) => severity === "error" || severity === "warning");
      assert.deepEqual(
        loud.filter(({ code }) => !codes.includes(code)).map(({ message }) => message),
        [],
        "findings that are not named",
      );
    });
  }

  it("tells of every kind that deals statements what becomes of one that is true and false", () => {
    const without = kinds.filter(
      ({ name, takes }) =>
        takes.includes("statements") && !verdicts.some(({ make, says }) => make === name && says.status === "none"),
    );
    assert.deepEqual(
      without.map(({ name }) => name),
      [],
    );
  });

  it("has one for every kind, and names findings that exist", () => {
    assert.deepEqual(
      kinds.filter(({ name }) => !verdicts.some(({ make }) => make === name)).map(({ name }) => name),
      [],
    );
    const known = new Set(allRules.map(({ code }) => code));
    assert.deepEqual(
      verdicts.flatMap(({ codes }) => codes.filter((code) => !known.has(code))),
      [],
    );
  });
});

function pick(proof: object, like: object): object {
  return Object.fromEntries(Object.entries(proof).filter(([key]) => key in like));
}
