import assert from "node:assert/strict";
import { printedAs } from "../support/printed";
import { boardUnit, counter } from "./unit";

/* What a player sees at first glance: words that are broken for nothing, a word that stands out. */

const front = "teaches: pt\nclasses: [2]\n";

describe("the looks of a board", () => {
  it("lies on the side where words of the same size take fewer lines", async () => {
    const six = ["a vela = 1", "o remo = 2", "o farol = 3", "a âncora = 4", "a rede = 5", "a corda = 6"];
    for (const [grid, lying] of [
      ["2 x 3", true],
      ["3 x 2", false],
    ] as const) {
      const { card, pieces } = await printedAs("board", boardUnit(six, `grid: ${grid}`, front));
      const [page] = card;
      assert.ok(page);
      assert.equal(page.width > page.height, lying, grid);
      const words = pieces.pieces[0]?.faces.map(({ text }) => text) ?? [];
      assert.equal(words.length, 6);
      for (const word of words)
        assert.ok(
          page.texts.some(({ text }) => text === word),
          word,
        );
    }
  });

  it("takes words as long as those that are called before sentences, both of other sections", async () => {
    const sentences =
      "- o copo cai da mesa = the glass falls off the table\n- a mesa é muito grande = the table is huge\n";
    const others = `\n## Elsewhere\n\n- o muro = the wall\n${sentences}- a porta = the door\n- o teto = the roof\n`;
    for (const seed of [1, 2, 3, 4]) {
      const own = boardUnit(counter.slice(0, 6), "", front);
      const text = own.replace("make: board\n", `make: board\ngrid: 2 x 4\ndistractors: 2\nseed: ${seed}\n`);
      const { pieces } = await printedAs("board", text + others);
      const shown = pieces.pieces[0]?.faces.map(({ text: each }) => each) ?? [];
      assert.equal(shown.length, 8);
      const solution = pieces.pieces[0]?.solution;
      const called: string[] = Array.isArray(solution) ? solution[0] : [];
      const [least, most] = [Math.min, Math.max].map((of) => of(...called.map((each) => each.split(" ").length)));
      for (const word of shown.filter((each) => !called.includes(each))) {
        const length = word.split(" ").length;
        assert.ok(length >= (least ?? 0) && length <= (most ?? 0), `${word} among ${called}`);
      }
    }
  });
});
