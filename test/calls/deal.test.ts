import assert from "node:assert/strict";
import type { CallsDeal, DealtCalls } from "../../src/activities/calls/model";
import { mixedOrder } from "../../src/activities/mixed-order";
import { trueShare } from "../../src/activities/statements";
import type { Reading } from "../../src/make/workshop";
import { readUnitText } from "../support/units";
import { callsUnit, story, verbs } from "./unit";

function isCalls(dealt: unknown): dealt is DealtCalls {
  return typeof dealt === "object" && dealt !== null && "reserve" in dealt && "claims" in dealt;
}

function callsOf(reading: Reading): DealtCalls {
  const checked: unknown = "checked" in reading ? reading.checked : undefined;
  assert.ok(Array.isArray(checked));
  const dealt: unknown = checked[0]?.dealt;
  assert.ok(isCalls(dealt));
  return dealt;
}

async function dealt(...args: Parameters<typeof callsUnit>): Promise<DealtCalls> {
  return callsOf(await readUnitText(callsUnit(...args)));
}

const truths = ({ claims }: DealtCalls, { order }: CallsDeal): string =>
  order.map((i) => (claims[i]?.truth ? "T" : "F")).join("");

describe("orders without a pattern", () => {
  it("keeps a statement away from its twin where it can", () => {
    const answers = Array.from({ length: 12 }, (_, i) => i < 6);
    const together = (a: number, b: number): boolean => Math.abs(a - b) === 6;
    for (let seed = 0; seed < 50; seed++) {
      const order = mixedOrder(answers, `${seed}`, together);
      assert.ok(order.every((item, i) => i === 0 || !together(order[i - 1] ?? 0, item)));
    }
  });

  it("have no row of four equal answers and do not change all the way, whatever the seed", () => {
    for (const count of [8, 10, 12, 20, 40]) {
      const answers = Array.from({ length: count }, (_, i) => i % 2 === 0);
      for (let seed = 0; seed < 20; seed++) {
        const order = mixedOrder(answers, `${seed}`);
        assert.deepEqual(
          [...order].sort((a, b) => a - b),
          answers.map((_, i) => i),
        );
        const print = order.map((i) => (answers[i] ? "T" : "F")).join("");
        assert.doesNotMatch(print, /T{4}|F{4}|(TF){4}|(FT){4}/, print);
      }
    }
  });

  it("are drawn from all of them: with 4 + 4 answers each of the right keys is met", () => {
    // Of 70 balanced keys of eight 62 have no row over three; six of these are one half twice, four more change seven times in a row.
    const answers = [true, true, true, true, false, false, false, false];
    const met = new Map<string, number>();
    for (let seed = 0; seed < 3000; seed++) {
      const key = mixedOrder(answers, `${seed}`)
        .map((i) => Number(answers[i]))
        .join("");
      met.set(key, (met.get(key) ?? 0) + 1);
    }
    const allowed = Array.from({ length: 256 }, (_, i) => i.toString(2).padStart(8, "0")).filter(
      (key) => [...key].filter((c) => c === "1").length === 4 && !/0000|1111|(01){3}0|(10){3}1|^(....)\3$/.test(key),
    );
    assert.deepEqual([...met.keys()].sort(), allowed);
    assert.ok(Math.min(...met.values()) > 20 && Math.max(...met.values()) < 120);
  });

  it("come near where there is none", () => {
    const print = mixedOrder(
      Array.from({ length: 11 }, (_, i) => i < 9),
      "a",
    )
      .map((i) => (i < 9 ? "T" : "F"))
      .join("");
    assert.match(print, /^T{3}F?T{3}F?T{3}$/);
  });
});

describe("calls", () => {
  it("has a list for every class hour, all statements once in each, every hour in its own order", async () => {
    const calls = await dealt(story, "", "teaches: pt\nclasses: [24, 27, 31]\n");
    assert.equal(calls.deals.length, 3);
    for (const deal of calls.deals) {
      assert.deepEqual(
        [...deal.order].sort((a, b) => a - b),
        calls.claims.map((_, i) => i),
      );
      assert.doesNotMatch(truths(calls, deal), /T{4}|F{4}|^(TF)+T?$|^(FT)+F?$/);
      assert.equal(deal.proof.status, "one");
    }
    assert.equal(new Set(calls.deals.map(({ order }) => order.join(" "))).size, 3);
    assert.equal(new Set(calls.deals.map(({ code }) => code)).size, 3);
    assert.equal((await dealt(story)).deals.length, 1);
  });

  it("has other answers in each of 26 hours, none a repeated block, and shares them only when there are no others", async () => {
    const lines = [...[..."abcd"].map((c) => `- [x] ${c} ${c}a`), ...[..."efgh"].map((c) => `- [ ] ${c} ${c}o`)];
    const calls = await dealt(lines, "versions: 26");
    const keys = calls.deals.map((deal) => truths(calls, deal));
    assert.equal(new Set(keys).size, 26);
    for (const key of keys) assert.doesNotMatch(key, /^(.{2,4})\1+$/);
    // Three true and three false: 20 keys, two of which alternate; each of the others is taken once or twice.
    const few = await dealt([...lines.slice(0, 3), ...lines.slice(4, 7)], "versions: 26");
    const uses = new Map<string, number>();
    for (const deal of few.deals) uses.set(truths(few, deal), (uses.get(truths(few, deal)) ?? 0) + 1);
    assert.deepEqual([uses.size, Math.max(...uses.values())], [18, 2]);
  });

  it("keeps the order when a word is mended, with another code", async () => {
    const before = await dealt(story, "reserve: 2");
    const after = await dealt(
      story.map((line) => line.replace("sapato", "chapéu velho")),
      "reserve: 2",
    );
    assert.deepEqual(
      after.deals.map(({ order }) => order),
      before.deals.map(({ order }) => order),
    );
    assert.deepEqual(
      after.deals.map(({ reserve }) => reserve),
      before.deals.map(({ reserve }) => reserve),
    );
    assert.notEqual(after.deals[0]?.code, before.deals[0]?.code);
  });

  it("makes as many twins as balance needs and no more, each false, of another form, with the right one in the key", async () => {
    const tied = [
      '- [x] Eu [cantava](<#cantar (antes)> "eu") no porto.',
      "- [x] Eu [meço](#medir) a conta.",
      "- [x] Ela [mede](#medir) um disco.",
      "- [x] Nós [medimos](#medir) pão.",
      "- [x] Chove.",
      "- [x] É meio-dia.",
      "- [ ] O gato lê.",
    ];
    const calls = await dealt(tied);
    const twins = calls.claims.filter(({ twin }) => twin);
    // 6 true, 1 false, a twin in place of its true statement: (6 - w) / 7 ≤ 0.6 first holds for w = 2.
    assert.equal(twins.length, 2);
    assert.equal(calls.claims.length, 7);
    assert.equal(trueShare(calls.claims), 4 / 7);
    assert.equal((await dealt(tied, "twins: none")).claims.length, 7);
    for (let seed = 0; seed < 30; seed++) {
      const all = await dealt(tied, `twins: 4\nseed: ${seed}`);
      const made = all.claims.filter(({ twin }) => twin);
      assert.equal(made.length, 4);
      for (const { text, truth, correction, item } of made) {
        assert.equal(truth, false);
        assert.equal(correction?.text, item.text);
        assert.notEqual(text, item.text);
        const right = correction?.runs.find(({ bold }) => bold)?.text;
        assert.ok(right !== undefined && item.text.includes(right));
        // “cantava” stands for two persons: the only wrong form for “eu” is “cantávamos”.
        if (right === "cantava") assert.equal(text, "Eu cantávamos no porto.");
      }
    }
  });

  it("never calls a statement and its twin in one list, whatever is taken, at both levels", async () => {
    const tied = [...story, "- [x] Ela [mede](#medir) pão.", "- [x] Eu [meço](#medir) mel."];
    for (const options of [
      "twins: 4",
      "take: 8\ntwins: 3",
      "levels: [gentle, hard]",
      "levels: [gentle, hard]\ntake: 8",
    ])
      for (let seed = 1; seed <= 10; seed++) {
        const calls = await dealt(tied, `${options}\nseed: ${seed}`, "teaches: pt\nclasses: [24, 27]\n");
        for (const [i, hand] of calls.hands.entries()) {
          assert.equal(new Set(hand.map(({ item }) => item)).size, hand.length, options);
          const asked = Number(/twins: (\d)/.exec(options)?.[1] ?? 0);
          const made = hand.filter(({ twin }) => twin).length;
          assert.ok(asked > 0 ? made === asked : calls.deals[i]?.level === "gentle" || made > 0, `${options} ${made}`);
          if (options.includes("take")) assert.equal(hand.length, 8);
          if (!options.startsWith("twins")) assert.ok(trueShare(hand) >= 0.4 && trueShare(hand) <= 0.6);
        }
      }
  });

  it("lets hard lists be shorter where no true statement is left, and says so where that leaves too few", async () => {
    const even = [
      "- [x] Ela [mede](#medir) pão.",
      "- [x] Eu [meço](#medir) mel.",
      "- [x] Nós [medimos](#medir) chá.",
      "- [x] Chove.",
    ];
    const lines = [...even, ...[..."abcd"].map((c) => `- [ ] ${c} ${c}o`)];
    const [gentle, hard] = (await dealt(lines, "levels: [gentle, hard]")).hands;
    assert.deepEqual([gentle?.length, hard?.length], [8, 7]);
    assert.equal(hard?.filter(({ twin }) => twin).length, 1);
    const few = await readUnitText(callsUnit(lines.slice(1, 7), "levels: [gentle, hard]"));
    assert.deepEqual(
      few.findings.map(({ code, message }) => [code, message.includes("too few true ones would be left")]),
      [["same-levels", true]],
    );
  });

  it("keeps true and false statements for ties, and the list fair", async () => {
    const right = [..."abcdefgh"].map((c) => `- [x] ${c} ${c}a`);
    const wrong = [..."ijklmn"].map((c) => `- [ ] ${c} ${c}o`);
    for (let seed = 1; seed <= 20; seed++)
      for (const options of ["take: 10", "take: 12", ""]) {
        const calls = await dealt([...right, ...wrong], `${options}\nreserve: 2\nseed: ${seed}`);
        assert.deepEqual(calls.reserve.map(({ truth }) => truth).sort(), [false, true]);
        assert.ok(trueShare(calls.claims) >= 0.4 && trueShare(calls.claims) <= 0.6, `${trueShare(calls.claims)}`);
        assert.equal(
          new Set([...calls.claims, ...calls.reserve].map(({ item }) => item)).size,
          calls.claims.length + 2,
        );
      }
    for (let seed = 1; seed <= 20; seed++) {
      const lines = [...right.slice(0, 5), ...wrong.slice(0, 5)];
      const { reserve } = await dealt(lines, `take: 6\nreserve: 2\nseed: ${seed}`);
      assert.deepEqual(reserve.map(({ truth }) => truth).sort(), [false, true]);
    }
    // Without a false one to spare, a twin stands for its statement.
    const tied = ["- [x] Ela [mede](#medir) pão.", "- [x] Eu [meço](#medir) mel.", "- [x] Nós [medimos](#medir) chá."];
    const calls = await dealt([...tied, ...right.slice(0, 3), ...wrong.slice(0, 2)], "take: 6\nreserve: 2");
    assert.deepEqual(calls.reserve.map(({ truth }) => truth).sort(), [false, true]);
  });

  it("makes no twin that is true elsewhere, and none where every form is spelled alike", async () => {
    const table = "## More\n\n|     | haver |\n| --- | ----- |\n| ele | há    |\n| eu  | há    |\n";
    const plain = ["- [ ] a b", "- [x] c d", "- [ ] e f", "- [x] g h"];
    const alike = [...plain, '- [x] Ele [há](#haver "ele") pão.', '- [x] Eu [há](#haver "eu") mel.'];
    const one = callsOf(await readUnitText(`${callsUnit(alike, "twins: 2")}\n${table}`));
    assert.equal(one.claims.length, 6);
    assert.equal(one.missingTwins, 2);
    const both = [...plain, "- [x] [mede](#medir) chá", "- [x] [meço](#medir) chá", "- [x] [medimos](#medir) chá"];
    assert.equal((await dealt(both, "twins: 3")).missingTwins, 3);
  });

  it("puts the wrong form where the tie stands, also where the word stands twice, and keeps bold", async () => {
    const line = "- [x] Quem mede, diz **ela [mede](#medir)** a rir, mede bem.";
    const calls = await dealt([line, ...story.slice(0, 6)], "twins: 2");
    const twin = calls.claims.find(({ twin: each, item }) => each && item.text.startsWith("Quem"));
    assert.ok(twin);
    assert.match(twin.text, /^Quem mede, diz ela (meço|medimos) a rir, mede bem\.$/);
    assert.ok(twin.runs.find(({ bold }) => bold)?.text.includes("ela "));
  });

  it("takes a form that begins a sentence as it stands in the table, and begins its twin with a capital too", async () => {
    const line = "- [x] [Medimos](#medir) a conta.";
    const calls = await dealt([line, ...story.slice(0, 6)], "twins: 2");
    const twin = calls.claims.find(({ twin: each, item }) => each && item.text.startsWith("Medimos"));
    assert.ok(twin);
    assert.match(twin.text, /^(Meço|Mede) a conta\.$/);
    assert.equal(twin.twin?.right, "Medimos");
    assert.equal(twin.twin.wrong, twin.text.split(" ")[0]);
    // Within a sentence a capital makes it another word, which is in no table.
    const other = await dealt(["- [x] Nós [Medimos](#medir) a conta.", ...story.slice(0, 4)], "twins: 2");
    assert.ok(!other.claims.some(({ twin: each, item }) => each && item.text.startsWith("Nós M")));
  });

  it("counts twins in what it takes, and keeps a reserve that is not called", async () => {
    const taken = await dealt(story, "take: 8\ntwins: 2\nreserve: 2");
    assert.equal(taken.claims.length, 8);
    assert.equal(taken.reserve.length, 2);
    const called = new Set(taken.claims.map(({ item }) => item));
    assert.ok(taken.reserve.every(({ item }) => !called.has(item)));
    assert.equal((await dealt(story, "reserve: 3")).reserve.length, 3);
  });

  it("finds a contradiction also with a statement that is kept in reserve", async () => {
    const lines = [...story, "- [ ] Chove ao meio-dia."];
    for (const seed of [1, 2, 3]) {
      const { findings } = await readUnitText(callsUnit(lines, `reserve: 5\nseed: ${seed}`));
      assert.ok(findings.some(({ code }) => code === "contradicting-statements"));
    }
  });

  it("says nothing of balance in the section that it deals, and the section rule stays quiet", async () => {
    const text = callsUnit(
      [..."abcdef"].map((c) => `- [x] ${c} ${c}a`),
      "",
    );
    const { findings } = await readUnitText(text);
    assert.deepEqual(
      findings.map(({ code }) => code),
      ["unbalanced-calls"],
    );
    const alone = await readUnitText(text.replace(/```activity[^`]*```/, "").replace(verbs, ""));
    assert.deepEqual(
      alone.findings.map(({ code }) => code),
      ["unbalanced-statements"],
    );
  });
});
