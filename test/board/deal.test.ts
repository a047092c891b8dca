import assert from "node:assert/strict";
import { board } from "../../src/activities/board/kind";
import { type BoardDeal, callsOf, type DealtBoard } from "../../src/activities/board/model";
import { playerColumns, slipCount } from "../../src/activities/board/papers";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";
import { readUnitText } from "../support/units";
import { boardUnit, counter, meanings } from "./unit";

function dealt(text: string): DealtBoard {
  const [activity] = planUnit(readUnit(text)).activities;
  assert.ok(activity?.request, "nothing to deal from");
  return board.deal(activity.request);
}

function only(result: DealtBoard): BoardDeal {
  const [deal] = result.deals;
  assert.ok(deal);
  return deal;
}

const shown = (result: DealtBoard, deal: BoardDeal): string[] =>
  deal.cells.map((word) => (word === undefined ? "" : (result.words[word]?.shown.text ?? "?")));

describe("dealing a board", () => {
  it("fills the grid, and each list calls every target exactly once, by its own clue", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const result = dealt(
        boardUnit(counter, `grid: 4 x 4\ndistractors: 3\nseed: ${seed}`, "teaches: pt\nclasses: [9, 8, 7]\n"),
      );
      const deal = only(result);
      assert.equal(new Set(shown(result, deal)).size, 16);
      assert.equal(result.targets, 13);
      assert.equal(result.lists.length, 3);
      for (const list of result.lists) {
        assert.deepEqual(
          [...list].sort((a, b) => a - b),
          Array.from({ length: 13 }, (_, i) => i),
        );
        for (const target of list) {
          const { clue, shown: face } = result.words[target] ?? {};
          assert.equal(clue?.text, meanings.get(face?.text ?? ""));
        }
      }
      assert.equal(new Set(result.lists.map((list) => list.join())).size, 3);
      assert.equal(new Set(result.lists.map((list) => list[0])).size, 3);
      assert.equal(deal.proof.status, "one");
      for (const [i, word] of deal.cells.entries())
        assert.equal(callsOf(result, word).length, (deal.cells[i] ?? 0) < 13 ? 3 : 0);
    }
  });

  it("calls in no order that the unit or the board shows", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const result = dealt(boardUnit(counter, `seed: ${seed}`, "teaches: pt\nclasses: [8, 8]\n"));
      const { cells } = only(result);
      assert.deepEqual(result.grid, { rows: 4, columns: 5 });
      const place = (target: number) => {
        const at = cells.indexOf(target);
        return { row: Math.floor(at / 5), column: at % 5 };
      };
      for (const list of result.lists) {
        list.slice(2).forEach((c, i) => {
          const [a = 0, b = 0] = list.slice(i, i + 2);
          assert.ok(!(Math.abs(b - a) === 1 && c - b === b - a), "three as in the unit");
          const [p, q, r] = [place(a), place(b), place(c)];
          const [dy, dx] = [q.row - p.row, q.column - p.column];
          const straight = r.row - q.row === dy && r.column - q.column === dx && Math.abs(dy) < 2 && Math.abs(dx) < 2;
          assert.ok(!straight, "three in a row on the board");
        });
      }
    }
  });

  it("passes over words that clash as long as others are left", () => {
    const pairs = [...counter, "a taça = the glass", "o jarro = the jug", "a nota = the bill"];
    for (let seed = 1; seed <= 40; seed++) {
      const result = dealt(boardUnit(pairs, `grid: 4 x 5\nseed: ${seed}`));
      assert.equal(result.doubles.length, 0);
      assert.equal(only(result).proof.status, "one");
    }
    const forced = dealt(boardUnit(pairs.slice(15), "grid: 2 x 4"));
    assert.ok(forced.doubles.length > 0);
    assert.equal(only(forced).proof.status, "several");
  });

  it("takes distractors that no clue fits, and never calls them", () => {
    const pairs = [...counter.slice(0, 6), "a taça = the glass", "o prato fundo = the plate", "a panela = the pot"];
    for (let seed = 1; seed <= 40; seed++) {
      const result = dealt(boardUnit(pairs, `grid: 2 x 3\ndistractors: 2\nseed: ${seed}`));
      assert.equal(result.words.length, 6);
      const called = result.words.slice(0, result.targets).map(({ clue }) => clue?.text);
      for (const { shown: word } of result.words.slice(result.targets)) {
        const gloss = pairs.map((pair) => pair.split(" = ")).find(([left]) => left === word.text)?.[1];
        assert.ok(!called.includes(gloss?.split("\n")[0]?.split(" / ")[0]), word.text);
      }
    }
  });

  it("calls by word, gloss or example", () => {
    const say = (options: string): Map<string, string | undefined> => {
      const { words, targets } = dealt(boardUnit(counter.slice(0, 6), `grid: 2 x 3\n${options}`));
      return new Map(words.slice(0, targets).map((word) => [word.shown.text, word.clue?.text]));
    };
    assert.equal(say("clue: word").get("o copo"), "o copo");
    assert.equal(say("").get("a tigela"), "the mug");
    assert.equal(say("clue: example").get("a faca"), "A faca corta bem.");
    assert.equal(say("show: gloss\nclue: word").get("the fork"), "o garfo");
    assert.equal(say("show: gloss\nclue: example").get("the fork"), "Onde está o garfo?");
    const some = dealt(boardUnit(counter.slice(0, 9), "clue: example"));
    assert.equal(some.targets, 6);
  });

  it("finds a sentence that fits two words by whole words only", () => {
    const pairs = (sentence: string): string[] => [
      `o gato = the cat\n  - ${sentence}`,
      "o cão = the dog\n  - Late muito.",
      "a vaca = the cow\n  - Come erva.",
      "o pato = the duck\n  - Nada no lago.",
    ];
    const doubles = (sentence: string): number => dealt(boardUnit(pairs(sentence), "clue: example")).doubles.length;
    assert.equal(doubles("O gato dorme."), 0);
    assert.equal(doubles("Vê O CÃO?"), 1);
    assert.equal(doubles("Vê o cãozinho."), 0);
    assert.equal(doubles("Late muito."), 2);
  });

  it("mending a word moves no cell and changes the code", () => {
    const [before] = dealt(boardUnit(counter)).deals;
    const [after] = dealt(boardUnit(counter.map((pair) => pair.replace("the fork", "a fork")))).deals;
    assert.deepEqual(after?.cells, before?.cells);
    assert.notEqual(after?.code, before?.code);
  });

  it("gives each set a board of its own with the same words, or shares out versions", () => {
    const front = "teaches: pt\nclasses: [21, 27]\n";
    const own = dealt(boardUnit(counter, "boards: different", front));
    assert.equal(own.deals.length, 13);
    assert.equal(new Set(own.deals.map(({ code }) => code)).size, 13);
    assert.equal(new Set(own.deals.map(({ cells }) => cells.join())).size, 13);
    assert.ok(own.deals.every(({ copies }) => copies === 1));
    const words = own.deals.map((deal) => shown(own, deal).sort().join());
    assert.equal(new Set(words).size, 1);
    assert.deepEqual(
      dealt(boardUnit(counter, "versions: 2", front)).deals.map(({ copies }) => copies),
      [7, 6],
    );
    assert.equal(dealt(boardUnit(counter, "players: 3", front)).deals[0]?.copies, 9);
    assert.equal(
      dealt(boardUnit(counter, "boards: different\ncopies: by copier", front)).deals[0]?.copies,
      "by copier",
    );
  });

  it("leaves blank cells, and fills what `take` leaves with words that are not called", () => {
    const result = dealt(boardUnit(counter, "grid: 4 x 4\ntake: 10\nblanks: 2"));
    assert.equal(result.targets, 10);
    assert.equal(result.words.length, 14);
    assert.equal(shown(result, only(result)).filter((text) => text === "").length, 2);
  });

  it("prints slips with a column for each player, one more where groups are larger", () => {
    const result = (options: string, classes: string): DealtBoard =>
      dealt(boardUnit(counter, options, `teaches: pt\nclasses: [${classes}]\n`));
    assert.deepEqual(playerColumns(result("", "8, 10")), ["A", "B"]);
    assert.deepEqual(playerColumns(result("", "8, 11")), ["A", "B", "C"]);
    assert.deepEqual(playerColumns(result("players: 3", "9")), ["A", "B", "C"]);
    // 4 + 5 boards.
    assert.equal(slipCount(result("", "8, 11")), 9);
    assert.equal(slipCount(result("reuse: sleeve", "8, 11")), 5);
  });

  it("has directions in five languages, as many steps in each, and none in others", () => {
    for (const options of [
      "",
      "facing: opposite",
      "clue: example\ngrid: 2 x 3",
      "clue: word",
      "show: gloss\nclue: word",
      "grid: 3 x 3\ndistractors: 2\nslip: none",
    ]) {
      const result = dealt(boardUnit(counter, options));
      assert.equal(result.deals.length, 1, options);
      const steps = ["en", "es", "fr", "de", "pt"].map((lang) => board.directions(result, lang) ?? []);
      assert.equal(new Set(steps.map((each) => each.length)).size, 1);
      assert.ok((steps[0]?.length ?? 0) >= 5);
      assert.equal(board.directions(result, "fi"), undefined);
    }
  });
});

describe("findings of a board", () => {
  it("says nothing of sound words", async () => {
    for (const options of [
      "",
      "grid: 4 x 4\ndistractors: 3\nfacing: opposite",
      "clue: example",
      "show: gloss\nclue: word\nboards: different",
    ])
      assert.deepEqual((await readUnitText(boardUnit(counter, options))).findings, [], options);
  });

  it("names both words, and each fix is one that helps", async () => {
    const { findings } = await readUnitText(boardUnit([...counter.slice(0, 5), "a taça = the glass"]));
    assert.deepEqual(
      findings.map(({ code }) => code),
      ["board-clue-fits-two"],
    );
    assert.match(findings[0]?.message ?? "", /“the glass” is called for “(o copo|a taça)” and fits “(o copo|a taça)”/);
    assert.ok((findings[0]?.fixes.length ?? 0) >= 2);
  });
});
