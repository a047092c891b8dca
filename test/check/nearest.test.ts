import assert from "node:assert/strict";
import { isNear, nearest } from "../../src/check/nearest";

describe("names that are nearly another one", () => {
  it("are told nearest first, case aside", () => {
    assert.deepEqual(nearest("harbor", ["Market", "Harbour", "Arbor"]), ["Harbour", "Arbor", "Market"]);
  });

  it("are those that go on behind the whole name, before any that only share letters", () => {
    assert.deepEqual(
      nearest("Palavras", ["História {-}", "Palavras {#palavras .big}"])[0],
      "Palavras {#palavras .big}",
    );
  });

  it("are near within half of their length", () => {
    assert.deepEqual(
      ["Harbor", "Barber", "Lighthouse"].map((name) => isNear("Harbour", name)),
      [true, true, false],
    );
    assert.deepEqual(nearest("Harbour", ["Lighthouse"], true), []);
  });
});
