import { performance } from "node:perf_hooks";
import { type LoopPuzzle, proveLoop } from "../../src/prove/loops/loops";
import { below, randomFrom } from "../prove/instances";

/* How long it takes to decide loops of 1,000 cards, both verdicts, building of the relation left out: median and worst of 60 seeds,
   and the most choices. Of five runs the fastest counts, so that what else the machine is at does not. */

const cards = 1000;
const order = Array.from({ length: cards }, (_, card) => card);

/** Cards round a circle, one list of answers for each text, shared among the cards that ask for it. */
function round(
  classes: readonly number[],
  extra: readonly (readonly [text: number, answer: number])[] = [],
): LoopPuzzle {
  const lists = new Map<number, number[]>();
  classes.forEach((text, card) => {
    const list = lists.get(text);
    if (list) list.push(card);
    else lists.set(text, [card]);
  });
  for (const [text, card] of extra) {
    const list = lists.get(text);
    if (list && !list.includes(card)) list.push(card);
  }
  return { follows: classes.map((_, card) => lists.get(classes[(card + 1) % classes.length] ?? -1) ?? []) };
}

const nested = (half: number) => Math.min(half, cards - 1 - half);

const rows: readonly [string, (seed: number) => LoopPuzzle][] = [
  ["every text once", () => round(order)],
  ["every text twice, nested", () => round(order.map(nested))],
  [
    "some texts twice, at random",
    (seed) => {
      const random = randomFrom(seed);
      return round(order.map((card) => (random() < 0.01 ? below(random, cards) : card)));
    },
  ],
  ["one text a hundred times", () => round(order.map((card) => (card % 10 === 0 ? 0 : card)))],
  [
    "one circle twice over, alike",
    () => {
      const half = order.map((card) => card % (cards / 2));
      return { ...round(half), look: half };
    },
  ],
  [
    "four lists of ten, all alike",
    () => {
      const texts = order.map((card) => card % 4);
      return { ...round(texts), look: texts };
    },
  ],
  [
    "30 answers more, no classes",
    (seed) => {
      const random = randomFrom(seed);
      return round(
        order,
        Array.from({ length: 30 }, () => [below(random, cards), below(random, cards)] as const),
      );
    },
  ],
  [
    "2,000 answers more, no classes",
    (seed) => {
      const random = randomFrom(seed);
      return round(
        order,
        Array.from({ length: 2000 }, () => [below(random, cards), below(random, cards)] as const),
      );
    },
  ],
];

console.log("1,000 cards: ms median / worst, most choices, verdicts");
for (const [name, make] of rows) {
  for (const intended of [undefined, order]) {
    const times: number[] = [];
    let choices = 0;
    const verdicts = new Map<string, number>();
    for (let seed = 0; seed < 80; seed++) {
      const puzzle = make(seed);
      const runs = [1, 2, 3, 4, 5].map(() => {
        const start = performance.now();
        const { full, smaller } = proveLoop(puzzle, intended ? { intended } : {});
        return { full, smaller, time: performance.now() - start };
      });
      const [{ full, smaller, time }] = runs.sort((a, b) => a.time - b.time) as [(typeof runs)[0]];
      if (seed >= 20) times.push(time);
      choices = Math.max(choices, full.nodes);
      const verdict = `${full.status}${smaller ? ", early close" : ""} (${full.by})`;
      verdicts.set(verdict, (verdicts.get(verdict) ?? 0) + 1);
    }
    times.sort((a, b) => a - b);
    const told = intended ? "intended told" : "nothing told";
    const shown = [...verdicts].map(([verdict, count]) => `${count} × ${verdict}`).join("; ");
    console.log(
      `${name.padEnd(32)} ${told.padEnd(14)} ${times[30]?.toFixed(2).padStart(8)} / ${times.at(-1)?.toFixed(2).padStart(8)} ${String(choices).padStart(5)}   ${shown}`,
    );
  }
}
