import assert from "node:assert/strict";
import { Patience } from "../../src/editor/patience";
import { HandClock } from "./handClock";

function workbench() {
  const clock = new HandClock();
  const over: string[] = [];
  return { clock, over, patience: new Patience((key) => over.push(key), clock) };
}

describe("patience with a line that is being typed", () => {
  it("lasts until a pause", () => {
    const { clock, over, patience } = workbench();
    patience.typed("a", 3);
    clock.pass(900);
    patience.typed("a", 3);
    clock.pass(900);
    assert.ok(patience.isTyped("a", 3, 3));
    assert.deepEqual(over, []);
    clock.pass(200);
    assert.ok(!patience.isTyped("a", 0, 99));
    assert.deepEqual(over, ["a"]);
  });

  it("ends when the cursor goes to another line, and only then", () => {
    const { clock, over, patience } = workbench();
    patience.typed("a", 3);
    patience.moved("a", 3);
    patience.moved("b", 7);
    assert.ok(patience.isTyped("a", 3, 3));
    patience.moved("a", 4);
    assert.ok(!patience.isTyped("a", 0, 99));
    assert.deepEqual(over, ["a"]);
    clock.pass(5000);
    assert.deepEqual(over, ["a"]);
  });

  it("is for what lies over the line as well", () => {
    const { patience } = workbench();
    patience.typed("a", 3);
    for (const [first, last, typed] of [
      [2, 4, true],
      [3, 8, true],
      [0, 3, true],
      [0, 2, false],
      [4, 9, false],
    ] as const)
      assert.equal(patience.isTyped("a", first, last), typed, `${first}–${last}`);
    assert.equal(patience.isTyped("b", 2, 4), false);
  });

  it("moves on with the typing", () => {
    const { clock, over, patience } = workbench();
    patience.typed("a", 3);
    patience.typed("a", 4);
    assert.ok(patience.isTyped("a", 4, 4));
    clock.pass(1000);
    assert.deepEqual(over, ["a"]);
  });

  it("is forgotten with the document", () => {
    const { clock, over, patience } = workbench();
    patience.typed("a", 3);
    patience.typed("b", 3);
    patience.forget("a");
    clock.pass(1000);
    assert.deepEqual(over, ["b"]);
  });
});
