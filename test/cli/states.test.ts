import assert from "node:assert/strict";
import type { DealtActivity } from "../../src/activities/contract";
import { LineIndex } from "../../src/base/range";
import { referencePages } from "../../src/check/reference";
import { proofLines } from "../../src/cli/text";
import type { Proof } from "../../src/prove/proof";

/** What the line of an activity says of a proof. */
function said(proof: Pick<Proof<unknown>, "status" | "count" | "accepted">): string {
  const deal = { code: "ACDEFH", level: "gentle", version: 1, copies: 2, attempt: 0 };
  const deals = [{ ...deal, proof: { capped: false, nodes: 1, by: "search", ...proof } as const }];
  const activities: DealtActivity[] = [{ index: 0, make: "strips", title: "A", summary: "strips", deals }];
  const [line = ""] = proofLines({ file: "u", lines: new LineIndex(""), findings: [], activities });
  return line.split(": ").at(-1) ?? "";
}

describe("the line of an activity", () => {
  it("says of each proof what the reference tells", () => {
    const page = referencePages().get("verdicts.md") ?? "";
    const states = (["one", "several", "none", "unsettled"] as const).map((status) => said({ status, count: 2 }));
    states.push(said({ status: "several", count: 6, accepted: true }));
    assert.equal(new Set(states).size, 5);
    for (const state of states) assert.ok(page.includes(`“${state}”`), state);
  });
});
