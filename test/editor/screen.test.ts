import assert from "node:assert/strict";
import type { Deal, DealtActivity, View } from "../../src/activities/contract";
import type { Finding } from "../../src/check/finding";
import { screenOf } from "../../src/editor/preview/screen";
import { proofInShort, proofSentence } from "../../src/editor/preview/sentences";
import { nothingAround, type Reading, type Workshop } from "../../src/make/workshop";
import type { Sheet } from "../../src/page/sheet";
import { readUnit } from "../../src/unit/read";

const one: Deal["proof"] = { status: "one", count: 1, capped: false, nodes: 1, by: "certificate" };
const two: Deal["proof"] = { status: "several", count: 2, capped: true, nodes: 9, by: "search", second: {} };

const deal = (level: string, version: number, proof = one): Deal => ({
  code: `${level}${version}`,
  level,
  version,
  copies: 12,
  attempt: 0,
  proof,
});

const activity = (index: number, title: string, deals: readonly Deal[]): DealtActivity => ({
  index,
  make: "tiles",
  title,
  summary: "3 × 3 tiles",
  deals,
});

const finding = (severity: Finding["severity"], message: string, about?: number): Finding => ({
  code: "any",
  severity,
  range: { start: 1, end: 2 },
  message,
  related: [],
  fixes: [],
  ...(about === undefined ? {} : { activities: [about] }),
});

const reading = (activities: readonly DealtActivity[], findings: readonly Finding[] = []): Reading => ({
  file: { name: "food", text: "" },
  around: nothingAround,
  unit: readUnit(""),
  activities,
  findings,
  elsewhere: [],
});

/** Draws a sheet as its label, which says what was asked for. */
const workshop: Workshop = {
  read: () => reading([]),
  *reading() {
    yield "Reading";
    return reading([]);
  },
  needs: () => ({ units: [], pictures: [] }),
  *needing() {
    yield "Reading";
    return { units: [], pictures: [] };
  },
  blockers: () => [],
  concerning: () => [],
  find: () => [],
  deals: () => [],
  reprint: async () => new Uint8Array(),
  view: (_reading, { title }, { code, proof }, view: View): readonly Sheet[] =>
    (view === "second" && proof.second === undefined) || (view === "papers" && title !== "Calls")
      ? []
      : [{ width: 210, height: 297, stock: "card", label: `${title} ${code} ${view}`, lang: "en", items: [] }],
  draw: (_reading, { label }, prefix) => `${prefix}: ${label}`,
  make: async () => [],
};

const several = reading([
  activity(0, "Counter", [deal("gentle", 1), deal("gentle", 2), deal("hard", 1, two)]),
  activity(1, "Kitchen", [deal("plain", 1)]),
]);

const labels = (of: Reading, choice: Parameters<typeof screenOf>[2]): readonly string[] =>
  screenOf(workshop, of, choice).columns.flatMap(({ sheets }) => sheets.map(({ label }) => label));

describe("what the preview shows", () => {
  it("is the first deal, as it is cut, where nothing was chosen", () => {
    assert.deepEqual(labels(several, { view: "dealt" }), ["Counter gentle1 dealt"]);
  });

  it("is what was chosen", () => {
    const choice = { activity: "Counter", level: "gentle", version: 2, view: "solved" } as const;
    assert.deepEqual(labels(several, choice), ["Counter gentle2 solved"]);
    assert.deepEqual(screenOf(workshop, several, choice).choice, choice);
  });

  it("falls back to what exists", () => {
    assert.deepEqual(labels(several, { activity: "Gone", level: "gone", version: 9, view: "second" }), [
      "Counter gentle1 solved",
    ]);
    assert.deepEqual(labels(several, { activity: "Kitchen", level: "hard", version: 2, view: "dealt" }), [
      "Kitchen plain1 dealt",
    ]);
  });

  it("offers a second solution only where there is one, and shows it beside the first", () => {
    const views = (level: string) =>
      screenOf(workshop, several, { level, view: "dealt" }).views.map(({ value }) => value);
    assert.deepEqual(views("gentle"), ["dealt", "solved"]);
    assert.deepEqual(views("hard"), ["dealt", "solved", "second"]);
    const screen = screenOf(workshop, several, { level: "hard", view: "second" });
    assert.deepEqual(
      screen.columns.map(({ sheets }) => sheets[0]?.label),
      ["Counter hard1 solved", "Counter hard1 second"],
    );
    const ids = screen.columns.flatMap(({ sheets }) => sheets.map(({ svg }) => svg.split(":")[0]));
    assert.equal(new Set(ids).size, ids.length, "two drawings share their ids");
  });

  it("offers papers where there are some, and shows them where nothing is cut", () => {
    const calls = reading([activity(0, "Calls", [deal("plain", 1)])]);
    const screen = screenOf(workshop, calls, { view: "papers" });
    assert.deepEqual(
      screen.views.map(({ value }) => value),
      ["dealt", "solved", "papers"],
    );
    assert.deepEqual(labels(calls, { view: "papers" }), ["Calls plain1 papers"]);
    const uncut: Workshop = {
      ...workshop,
      view: (of, about, which, view) => (view === "papers" ? workshop.view(of, about, which, view) : []),
    };
    assert.equal(screenOf(uncut, calls, { view: "dealt" }).choice.view, "papers");
  });

  it("names versions by number and levels by name", () => {
    const screen = screenOf(workshop, several, { view: "dealt" });
    assert.deepEqual(
      screen.levels.map(({ value }) => value),
      ["gentle", "hard"],
    );
    assert.deepEqual(
      screen.versions.map(({ label }) => label),
      ["Version 1", "Version 2"],
    );
  });

  it("calls versions at desks desks", () => {
    assert.equal(screenOf(workshop, several, { view: "dealt" }).versionName, "Version");
    const desks = reading([
      activity(
        0,
        "Rescue",
        [1, 2].map((desk) => ({ ...deal("plain", desk), desk })),
      ),
    ]);
    const screen = screenOf(workshop, desks, { view: "dealt" });
    assert.deepEqual([screen.versionName, ...screen.versions.map(({ label }) => label)], ["Desk", "Desk 1", "Desk 2"]);
  });

  it("tells errors and warnings about this activity and about the unit, no others", () => {
    const findings = [
      finding("error", "mine", 0),
      finding("warning", "the unit's"),
      finding("error", "another's", 1),
      finding("information", "a remark", 0),
      finding("hint", "a hint"),
    ];
    const screen = screenOf(workshop, reading(several.activities, findings), { view: "dealt" });
    assert.deepEqual(
      screen.remarks.map(({ message }) => message),
      ["mine", "the unit's"],
    );
  });

  it("says why there is nothing to see", () => {
    const none = screenOf(workshop, reading([], [finding("error", "x")]), { view: "solved" });
    assert.equal(none.state, "empty");
    assert.match(none.line, /no activity yet/);
    assert.equal(none.remarks.length, 1);
    const undealt = screenOf(workshop, reading([activity(0, "A", [])]), { view: "dealt" });
    assert.equal(undealt.state, "empty");
    assert.match(undealt.line, /cannot be laid out/);
  });
});

describe("proofs in words", () => {
  it("claim no more than is known", () => {
    assert.match(proofSentence(one, false), /^One solution, proven/);
    assert.match(proofSentence(two, false), /^At least two ways.*Both solutions/);
    assert.match(proofSentence(two, true), /shown beside/);
    assert.match(proofSentence({ status: "several", count: 2, capped: false }, true), /^Two ways/);
    assert.match(proofSentence({ status: "several", count: 5, capped: false }, true), /^5 ways/);
    assert.doesNotMatch(proofSentence({ status: "unsettled", count: 1, capped: false }, false), /proven/);
    const free = { status: "several", count: 12, capped: false, accepted: true } as const;
    assert.equal(proofSentence(free, false), "12 ways are right, proven; the key tells them.");
    assert.equal(proofInShort([one, free]), "all 2 proven to have one solution, or several that are right");
    assert.match(proofSentence({ status: "none", count: 0, capped: false }, false), /no solution/);
  });

  it("are counted for the status bar", () => {
    assert.equal(proofInShort([]), "");
    assert.equal(proofInShort([one]), "proven to have one solution");
    assert.equal(proofInShort([one, one]), "all 2 proven to have one solution");
    assert.equal(proofInShort([one, two]), "1 of 2 proven to have one solution");
    const free = { status: "several", count: 2, capped: false, accepted: true } as const;
    assert.equal(proofInShort([free]), "right ways proven");
    assert.equal(proofInShort([two, free]), "1 of 2 proven to have one solution, or several that are right");
  });
});
