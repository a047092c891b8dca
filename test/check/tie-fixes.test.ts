import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const unit = (tie: string): string =>
  `## Verbs\n\n|     | medir | trazer |\n| --- | ----- | ------ |\n| eu  | meço  | trago  |\n| ela | mede  | traz   |\n\n## Story\n\n- [x] Eu ${tie} a conta.\n- [ ] Ela ri.\n`;

/** What each fix of the only `unknown-form` makes of a tie. */
async function fixed(tie: string): Promise<string[]> {
  const text = unit(tie);
  const found = (await readUnitText(text)).findings.filter(({ code }) => code === "unknown-form");
  assert.equal(found.length, 1, tie);
  return (found[0]?.fixes ?? []).map(
    ({ edits }) => /^- \[x\] Eu (.*) a conta/m.exec(applyEdits(text, edits))?.[1] ?? "",
  );
}

describe("fixes of ties", () => {
  for (const [tie, ...wanted] of [
    ["[meco](#medir)", "[meço](#medir)"],
    ["[Meco](#medir)", "[Meço](#medir)"],
    ["[meço](#medri)", "[meço](#medir)"],
    ['[trago](#trazer "ela")', '[trago](#trazer "eu")', '[traz](#trazer "ela")'],
    ['[trago](#trazer "Eu")', '[trago](#trazer "eu")'],
    ["[canto](#medir)"],
    ["[*meco*](#medir)"],
  ] as const) {
    it(`${tie} is ${wanted.join(" or ") || "not guessed"}`, async () => assert.deepEqual(await fixed(tie), wanted));
  }
});
