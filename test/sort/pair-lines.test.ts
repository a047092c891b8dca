import assert from "node:assert/strict";
import { printedAs } from "../support/printed";
import { textsIn } from "../support/rectangles";
import { sortUnit } from "./unit";

/* Where the two sides of a pair on one card are parted. */

const shed = [
  "- o cortador de relva = the lawnmower with a basket",
  "- a tesoura de podar = the garden shears",
  "- o carrinho de mão = the little wheelbarrow",
  "- a mangueira = the hose",
  "- o regador = the watering can",
  "- a enxada = the hoe",
];

/** The lines of words in a box, top to bottom, without the mark. */
async function linesOfCards(items: readonly string[], options: string): Promise<{ text: string; lines: string[] }[]> {
  const { card, pieces } = await printedAs("sort", sortUnit(items, options, "teaches: pt\nclasses: [2]\n"));
  return pieces.pieces.map(({ faces, at: [place] }) => {
    const page = place && card[place.page - 1];
    assert.ok(page);
    const texts = textsIn(page, place).filter(({ size }) => size > 5.5);
    return {
      text: faces[0]?.text ?? "",
      lines: [...texts].sort((a, b) => a.y - b.y).map(({ text }) => text),
    };
  });
}

describe("a pair on one card", () => {
  it("that takes two lines is parted at its equals sign, and no blank of it is changed", async () => {
    const cards = (await linesOfCards(shed, "headers: none")).filter(({ text }) => text.includes(" = "));
    const two = cards.filter(({ lines }) => lines.length === 2);
    assert.ok(two.length >= 3, JSON.stringify(cards));
    for (const { text, lines } of two) {
      assert.ok(lines[0]?.endsWith(" =") || lines[1]?.startsWith("= "), JSON.stringify(lines));
      assert.equal(lines.join(" "), text);
      assert.doesNotMatch(lines.join(""), /\u00a0/);
    }
  });

  it("whose side needs lines of its own is parted where it is evenest", async () => {
    const long = shed.map((line) => `${line} that stands behind the house by the garden gate`);
    const cards = await linesOfCards(long, "headers: none\ncards: 8");
    assert.ok(cards.some(({ lines }) => lines.length > 2));
    for (const { text, lines } of cards) assert.equal(lines.join(" "), text);
  });
});
