import assert from "node:assert/strict";
import { checkUnit } from "../../src/check/check";
import { allRules, generalRules } from "../../src/check/rules";
import { readUnitText } from "../support/units";

/** Codes whose example cannot be a unit on its own: they need earlier exports or a fault in the program. */
const told = new Set(["moved-deal", "no-solution", "unsettled-proof"]);

describe("the list of rules", () => {
  it("has each code once, in kebab case", () => {
    const codes = allRules.map(({ code }) => code);
    assert.equal(new Set(codes).size, codes.length);
    for (const code of codes) assert.match(code, /^[a-z]+(-[a-z]+)*$/);
  });

  for (const { code, example } of allRules) {
    if (told.has(code)) continue;
    it(`${code}: its example gives it, and the mended example does not`, async () => {
      const wrong = await readUnitText(example.wrong);
      assert.ok(
        wrong.findings.some((finding) => finding.code === code),
        wrong.findings.map((finding) => finding.code).join(", "),
      );
      const right = await readUnitText(example.right);
      assert.ok(!right.findings.some((finding) => finding.code === code));
    });
  }

  it("turns a rule that throws into a finding and goes on", async () => {
    const reading = await readUnitText("---\nteaches: pt\n---\n\n## A\n\n- [x] a b\n- [x] c d\n- [x] e f\n- [x] g h\n");
    const broken = { ...reading, press: undefined, plan: undefined, severities: new Map<string, string>() };
    // A context without a plan makes the rules that need one fail; the one about statements does not.
    const findings = checkUnit(broken as never);
    assert.ok(findings.some(({ code }) => code === "rule-failed"));
    assert.ok(findings.some(({ code }) => code === "unbalanced-statements"));
    assert.ok(generalRules.length > 5);
  });
});
