import assert from "node:assert/strict";
import type { Press } from "../../src/activities/contract";
import { keptLayout } from "../../src/activities/kept-layout";
import { finished } from "../../src/base/steps";

describe("a layout that is kept", () => {
  it("is found once for a deal and what it is set with, and anew where either is another", () => {
    const found: string[] = [];
    const layoutOf = keptLayout(function* (dealt: { readonly name: string }, press: Press) {
      yield;
      found.push(`${dealt.name} in ${press.unitTitle}`);
      return found.length;
    });
    const titled = (unitTitle: string): Press => ({ unitTitle, pictures: new Map() }) as unknown as Press;
    const [harbour, market] = [titled("Harbour"), titled("Market")];
    const [a, b] = [{ name: "a" }, { name: "b" }] as const;
    const layouts = [
      [a, harbour],
      [a, harbour],
      [b, harbour],
      [a, market],
      [a, market],
    ] as const;
    assert.deepEqual(
      layouts.map(([dealt, press]) => finished(layoutOf(dealt, press))),
      [1, 1, 2, 3, 3],
    );
    assert.deepEqual(found, ["a in Harbour", "b in Harbour", "a in Market"]);
  });
});
