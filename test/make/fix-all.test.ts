import assert from "node:assert/strict";
import { applyEdits, editBetween, fixAll, fixingAll } from "../../src/make/fix-all";
import { nothingAround } from "../../src/make/workshop";
import { items } from "../check/meaning";
import { testWorkshop } from "../support/units";

describe("fixing all", () => {
  const unit =
    "## Food\n\n- pão – bread\n- mel: honey\n- sal = salt\n- [x]Ela come.\n- sal = salt\n- chá = tea\n- uva = grape\n\n```activity\nmake: tiles\ngird: 2 x 2\n```\n";

  it("applies every preferred fix, of all codes or of one", async () => {
    const workshop = await testWorkshop();
    const find = (text: string) => workshop.read({ name: "u", text }, nothingAround).findings;
    assert.deepEqual(items(fixAll(unit, find, "meant-as-pair")), [
      "## Food",
      "pão = bread",
      "mel = honey",
      "sal = salt",
      "sal = salt",
      "chá = tea",
      "uva = grape",
    ]);
    const words = ["pão = bread", "mel = honey", "sal = salt", "chá = tea", "uva = grape"];
    const all = fixAll(unit, find);
    assert.deepEqual(items(all), ["## Food", ...words, "true: Ela come."]);
    assert.match(all, /^grid: 2 x 2$/m);
    assert.equal(fixAll(all, find), all);
  });

  it("mends what was mistyped before it changes options, which may be right then", async () => {
    const workshop = await testWorkshop();
    const find = (text: string) => workshop.read({ name: "u", text }, nothingAround).findings;
    const typo =
      "## Food\n\n- pão – bread\n- mel = honey\n- sal = salt\n- chá = tea\n- uva = grape\n- ovo = egg\n- figo = fig\n\n```activity\nmake: tiles\ngrid: 2 x 3\n```\n";
    assert.ok(find(typo).filter(({ fixes }) => fixes.some(({ preferred }) => preferred)).length > 1);
    assert.equal(fixAll(typo, find), typo.replace("–", "="));
  });

  it("is done in the steps of the readings that it takes", async () => {
    const workshop = await testWorkshop();
    const steps = fixingAll(unit, function* (text) {
      return (yield* workshop.reading({ name: "u", text }, nothingAround)).findings;
    });
    let pauses = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) pauses++;
    assert.equal(
      step.value,
      fixAll(unit, (text) => workshop.read({ name: "u", text }, nothingAround).findings),
    );
    assert.ok(pauses > 100, `${pauses} pauses`);
  });

  it("is one edit from common beginning to common end", () => {
    for (const [before, after] of [
      ["abcdef", "abXdef"],
      ["aaa", "aa"],
      ["", "x"],
      ["abab", "ababab"],
      ["x", ""],
    ] as const) {
      const edit = editBetween(before, after);
      assert.ok(edit);
      assert.equal(applyEdits(before, [edit]), after);
    }
    assert.equal(editBetween("same", "same"), undefined);
  });
});
