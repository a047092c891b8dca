import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { checkUnit } from "../../src/check/check";
import { allRules, generalRules, type RuleFacts } from "../../src/check/rules";
import { readUnitText } from "../support/units";

/** Codes whose example cannot be a unit on its own: they need earlier exports or a fault in the program. */
const told = new Set(["moved-deal", "no-solution", "rule-failed", "unsettled-proof"]);

const source = fileURLToPath(new URL("../../src", import.meta.url));

/** What each file in the folders of rules exports; the lists of rules left out. */
async function ruleFiles(): Promise<{ readonly file: string; readonly exported: readonly unknown[] }[]> {
  const files = readdirSync(source, { recursive: true, encoding: "utf8" })
    .map((file) => file.replaceAll("\\", "/"))
    .filter((file) => /^(?:check|activities\/\w+)\/rules\/.*\.ts$/.test(file) && !file.endsWith("/index.ts"))
    .sort();
  return Promise.all(
    files.map(async (file) => {
      const exports: Record<string, unknown> = await import(pathToFileURL(path.join(source, file)).href);
      return { file, exported: Object.values(exports) };
    }),
  );
}

function isRule(value: unknown): value is RuleFacts {
  return typeof value === "object" && value !== null && "code" in value && "check" in value;
}

describe("the list of rules", () => {
  it("has each code once, in kebab case", () => {
    const codes = allRules.map(({ code }) => code);
    assert.equal(new Set(codes).size, codes.length);
    for (const code of codes) assert.match(code, /^[a-z]+(-[a-z]+)*$/);
  });

  it("finds every rule in one file, alone and named after its code", async () => {
    const files = (await ruleFiles()).map(({ file, exported }) => ({ file, rules: exported.filter(isRule) }));
    const declared = files.filter(({ rules }) => rules.length > 0);
    assert.deepEqual(
      declared.map(({ file, rules }) => [path.posix.basename(file, ".ts"), ...rules.map(({ code }) => code)]),
      declared.map(({ rules }) => [rules[0]?.code, rules[0]?.code]),
    );
    const all = new Set(declared.flatMap(({ rules }) => rules));
    assert.deepEqual(
      allRules.filter((rule) => !all.has(rule)).map(({ code }) => code),
      [],
      "on the list, but in no file of their own",
    );
    assert.deepEqual(
      [...all].filter((rule) => !allRules.includes(rule)).map(({ code }) => code),
      [],
      "in a file, but not on the list",
    );
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
