import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";
import { applyEdits } from "../support/units";

/** The item as the first fix of its only problem leaves it. */
function mended(item: string): string {
  const head = "## Section\n\n- mel = honey\n- sal = salt\n- chá = tea\n";
  const text = `${head}${item}\n`;
  const [problem, ...more] = readUnit(text).problems;
  assert.ok(problem?.fixes[0] && more.length === 0, item);
  return applyEdits(text, problem.fixes[0].edits).slice(head.length).trimEnd();
}

describe("what a fix leaves", () => {
  it("has no space where a misplaced comment stood before a full stop, and one between words", () => {
    assert.equal(mended("- [x] Ela ri <!-- by: K7 -->."), "- [x] Ela ri. <!-- by: K7 -->");
    assert.equal(mended("- [x] Ela ri<!-- by: K7 -->."), "- [x] Ela ri. <!-- by: K7 -->");
    assert.equal(mended("- [x] Ela ri <!-- by: K7 --> ?"), "- [x] Ela ri ? <!-- by: K7 -->");
    assert.equal(mended("- [x] Ela <!-- by: K7 --> ri."), "- [x] Ela ri. <!-- by: K7 -->");
    assert.equal(mended("- [x] Ela<!-- by: K7 --> ri."), "- [x] Ela ri. <!-- by: K7 -->");
    assert.equal(mended("- [x] Ela <!-- by: K7 -->ri."), "- [x] Ela ri. <!-- by: K7 -->");
    assert.equal(mended("- [x] Ela <!-- by: K7 -->(e eu) ri."), "- [x] Ela (e eu) ri. <!-- by: K7 -->");
  });

  it("has one space on each side of the sign that parts a pair", () => {
    for (const item of [
      "- ovo：egg",
      "- ovo： egg",
      "- ovo ：egg",
      "- ovo ： egg",
      "- ovo\u3000：\u3000egg",
      "- ovo : egg",
    ]) {
      assert.equal(mended(item), "- ovo = egg", item);
    }
  });
});
