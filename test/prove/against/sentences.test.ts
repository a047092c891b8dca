import assert from "node:assert/strict";
import fc from "fast-check";
import { planUnit } from "../../../src/activities/plan";
import { rebuild } from "../../../src/activities/rebuild/kind";
import { buildable, countStrings, otherSentences, type Sentence } from "../../../src/prove/orders/orders";
import { readUnit } from "../../../src/unit/read";
import { permutations } from "../orders/naive";
import { type Covers, openCovers } from "./cover";
import { drawn, forAll, verdict } from "./runs";

const upTo = (count: number) => Array.from({ length: count }, (_, i) => i);

/** Cards of a sentence and further accepted orders as permutations by number. */
const sentenceOf = (words: readonly string[], longest: number) =>
  fc.record({
    parts: fc.array(fc.constantFrom(...words), { minLength: 1, maxLength: longest, size: "max" }),
    further: fc.oneof(
      { weight: 3, arbitrary: fc.constant([]) },
      { weight: 2, arbitrary: fc.array(fc.nat(), { maxLength: 3, size: "max" }) },
    ),
  });

const allOrders = new Map(upTo(7).map((size) => [size, permutations(size)]));

function ordersOf({ parts, further }: { parts: readonly string[]; further: readonly number[] }): number[][] {
  const all = allOrders.get(parts.length) ?? [];
  return [parts.map((_, i) => i), ...further.map((pick) => all[pick % all.length] ?? [])];
}

const readAs = (parts: readonly string[], order: readonly number[]) => order.map((part) => parts[part]).join(" ");

/** Every row of some cards as it reads: each card at a place of its own. */
function rowsBy(covers: Covers, parts: readonly string[]): Set<string> {
  const options = parts.flatMap((_, place) =>
    parts.map((text, card) => ({ data: [place, text] as const, primary: [`place ${place}`, `card ${card}`] })),
  );
  const rows = covers(options).map((cover) => [...cover].sort(([a], [b]) => a - b).map(([, text]) => text));
  return new Set(rows.map((row) => row.join(" ")));
}

/** Every row of some cards as it reads, tried one by one. */
function rowsTried(parts: readonly string[]): Set<string> {
  return new Set((allOrders.get(parts.length) ?? []).map((order) => readAs(parts, order)));
}

describe(`rebuilding sentences against others (${drawn})`, function () {
  this.timeout(0);

  const words = ["roda", "freio", "selim", "pedal"];
  const units = fc.array(sentenceOf(words, 5), { minLength: 1, maxLength: 3 });
  const kinds = ["one", "several", "a sentence without a wrong order", "orders that read alike"];

  /** A unit as a teacher writes it: the number of right ways, and how the cards lie, against the sentences' own rows. */
  function dealHolds(
    sentences: readonly { parts: readonly string[]; further: readonly number[] }[],
    rowsOf: (parts: readonly string[]) => Set<string>,
  ): string[] {
    // One card is no sentence to rebuild: the reader leaves it out.
    const cut = sentences.filter(({ parts }) => parts.length > 1);
    fc.pre(cut.length > 0);
    const accepted = cut.map((each) => ordersOf(each).map((order) => order.map((part) => each.parts[part] ?? "")));
    const items = accepted.flatMap(([first = [], ...others], i) => [
      `- ${first.join(" | ")} = ${i + 1}`,
      ...others.map((order) => `  - ${order.join(" | ")}`),
    ]);
    const text = `## Repair\n\n${items.join("\n")}\n\n\`\`\`activity\nmake: rebuild\n\`\`\`\n`;
    const [activity] = planUnit(readUnit(text)).activities;
    assert.ok(activity?.request, text);
    const [deal] = rebuild.deal(activity.request).deals;
    assert.ok(deal, text);
    const readings = accepted.map((orders) => new Set(orders.map((order) => order.join(" "))));
    const count = readings.reduce((product, { size }) => product * size, 1);
    assert.deepEqual([deal.proof.count, deal.proof.status, deal.proof.capped], [count, verdict(count), false], text);
    assert.equal(deal.proof.second !== undefined, count > 1);
    if (deal.proof.second) {
      const second = deal.proof.second.map((order, i) => readAs(cut[i]?.parts ?? [], order));
      assert.ok(second.every((reading, i) => readings[i]?.has(reading)));
      assert.notDeepEqual(
        second,
        accepted.map(([first = []]) => first.join(" ")),
      );
    }
    const idle = cut.flatMap(({ parts }, i) => {
      const rows = rowsOf(parts);
      assert.equal(countStrings(parts), BigInt(rows.size));
      return rows.size === readings[i]?.size ? [i] : [];
    });
    assert.deepEqual(deal.inOrder, idle, text);
    cut.forEach((_, i) => {
      const lying = deal.dealt.filter(({ sentence }) => sentence === i).map((card) => card.text);
      assert.equal(readings[i]?.has(lying.join(" ")), idle.includes(i), text);
    });
    const alike = readings.some(({ size }, i) => size < (accepted[i]?.length ?? 0));
    return [
      deal.proof.status,
      ...(idle.length > 0 ? ["a sentence without a wrong order"] : []),
      ...(alike ? ["orders that read alike"] : []),
    ];
  }

  it("agrees with an exact cover in the number of right ways and in what can be dealt", async () => {
    const covers = await openCovers();
    forAll(units, kinds, (sentences) => dealHolds(sentences, (parts) => rowsBy(covers, parts)));
  });

  it("agrees with trying every row", () => {
    forAll(units, kinds, (sentences) => dealHolds(sentences, rowsTried));
  });
});

describe(`cards of several sentences in one heap against others (${drawn})`, function () {
  this.timeout(0);

  const heaps = fc
    .array(sentenceOf(["a", "b", "c"], 3), { maxLength: 4, size: "max" })
    .map((list) => list.map((each): Sentence => ({ parts: each.parts, accepted: ordersOf(each) })));
  const kinds = ["another", "no other", "no other, several sentences"];

  const count = (texts: readonly string[], text: string) => texts.filter((each) => each === text).length;

  /** Sentences that read alike, by the first of them: its place, its cards and how often it is there. */
  function different(sentences: readonly Sentence[]): { place: number; parts: readonly string[]; times: number }[] {
    const names = sentences.map(({ parts, accepted }) =>
      [...new Set(accepted.map((order) => readAs(parts, order)))].sort().join("/"),
    );
    return sentences.flatMap(({ parts }, place) => {
      const times = names.filter((name) => name === names[place]).length;
      return names.indexOf(names[place] ?? "") === place ? [{ place, parts, times }] : [];
    });
  }

  /** `choices`: how often each of the different sentences is laid, in every way that takes all cards. */
  function holds(sentences: readonly Sentence[], choices: ReadonlySet<string>): string[] {
    const kept = different(sentences);
    const meant = kept.map(({ times }) => times).join();
    assert.ok(choices.has(meant));
    const other = otherSentences(sentences);
    assert.notEqual(other, "unsettled");
    assert.equal(other !== undefined, choices.size > 1);
    if (Array.isArray(other)) {
      const laid = kept.map(({ place }) => other[place]).join();
      assert.ok(choices.has(laid) && laid !== meant, `${laid} is no other choice`);
      assert.equal(
        other.reduce((sum, times) => sum + times, 0),
        kept.reduce((sum, { place }) => sum + (other[place] ?? 0), 0),
      );
    }
    const pairs = sentences.flatMap(({ parts }, sentence) =>
      sentences.flatMap(({ parts: cards }, from) =>
        sentence !== from && parts.every((text) => count(cards, text) >= count(parts, text))
          ? [{ sentence, from, leftOver: cards.length - parts.length }]
          : [],
      ),
    );
    assert.deepEqual(buildable(sentences), pairs);
    const several = sentences.length > 1 ? ["no other, several sentences"] : [];
    return choices.size > 1 ? ["another"] : ["no other", ...several];
  }

  /** All ways to take cards for some texts out of a heap, cards of one text in order. */
  function takings(parts: readonly string[], heap: readonly string[]): number[][] {
    const [text, ...rest] = [...parts].sort();
    if (text === undefined) return [[]];
    return takings(rest, heap).flatMap((taken) => {
      const next = Math.min(heap.length, ...taken.filter((card) => heap[card] === text));
      return heap.flatMap((each, card) => (each === text && card < next ? [[card, ...taken]] : []));
    });
  }

  it("agrees with an exact cover on whether other sentences come out", async () => {
    const covers = await openCovers();
    const enough = 4000;
    forAll(heaps, kinds, (sentences) => {
      const heap = sentences.flatMap(({ parts }) => parts);
      const kept = different(sentences);
      const options = kept.flatMap(({ parts }, i) => takings(parts, heap).map((primary) => ({ data: i, primary })));
      const found = covers(
        options,
        heap.map((_, card) => card),
        enough,
      );
      fc.pre(found.length < enough);
      const choices = found.map((cover) => kept.map((_, i) => cover.filter((each) => each === i).length).join());
      return holds(sentences, new Set(choices));
    });
  });

  it("agrees with trying how often each is laid", () => {
    forAll(heaps, kinds, (sentences) => {
      const heap = sentences.flatMap(({ parts }) => parts).sort();
      const kept = different(sentences);
      const choices = new Set<string>();
      const lay = (times: readonly number[], cards: readonly string[]): void => {
        if (cards.length > heap.length) return;
        const next = kept[times.length];
        if (!next) {
          if ([...cards].sort().join() === heap.join()) choices.add(times.join());
          return;
        }
        for (let n = 0; n <= heap.length; n++) lay([...times, n], [...cards, ...upTo(n).flatMap(() => next.parts)]);
      };
      lay([], []);
      return holds(sentences, choices);
    });
  });
});
