import assert from "node:assert/strict";
import { dealBoard } from "../../src/activities/board/deal";
import type { DealtBoard } from "../../src/activities/board/model";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";
import { boardUnit } from "./unit";

const bench = [
  "a roda = the wheel",
  "a chave = the spanner",
  "o selim = the saddle",
  "o óleo = the oil",
  "a bomba = the pump",
  "o farol = the lamp",
  "o sino = the bell",
  "o cesto = the basket",
];

function dealt(options: string, pairs: readonly string[] = bench): DealtBoard {
  const request = planUnit(readUnit(boardUnit(pairs, options))).activities[0]?.request;
  assert.ok(request);
  return dealBoard(request);
}

const calledIn = ({ words, targets }: DealtBoard): string[] => words.slice(0, targets).map(({ shown }) => shown.text);

describe("words that a board names as never called", () => {
  it("are called nowhere where enough others are left, whatever the seed", () => {
    for (let seed = 1; seed <= 12; seed++) {
      const six = dealt(`grid: 2 x 4\ntake: 6\ndistractors: [a roda, a chave]\nseed: ${seed}`);
      assert.deepEqual(
        calledIn(six).sort(),
        bench
          .slice(2)
          .map((pair) => pair.split(" = ")[0])
          .sort(),
      );
      const glosses = dealt(
        `grid: 2 x 4\nshow: gloss\nclue: word\ndistractors: [the wheel, the spanner]\nseed: ${seed}`,
      );
      for (const { doubles, deals } of [six, glosses]) {
        assert.deepEqual(doubles, []);
        assert.deepEqual(
          deals.map(({ proof }) => proof.status),
          ["one"],
        );
      }
    }
  });

  it("make the board smaller where nothing says how large it is", () => {
    const board = dealt("distractors: [a roda, a chave]");
    assert.equal(board.targets, 6);
    assert.equal(board.words.length, 8);
    assert.deepEqual(board.doubles, []);
  });

  it("leave out words whose call fits them while others are left", () => {
    const pairs = [...bench, "o aro = the wheel / the rim"];
    for (let seed = 1; seed <= 12; seed++) {
      const board = dealt(`grid: 2 x 4\ntake: 7\ndistractors: [a roda]\nseed: ${seed}`, pairs);
      assert.ok(!calledIn(board).includes("o aro") && !calledIn(board).includes("a roda"));
      assert.deepEqual(board.doubles, []);
    }
  });

  it("are called where too few others are left, and that is told", () => {
    const board = dealt("grid: 2 x 4\ntake: 7\ndistractors: [a roda]", bench.slice(0, 7));
    assert.equal(board.targets, 7);
    assert.equal(board.doubles.length, 1);
  });
});
