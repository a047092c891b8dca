import assert from "node:assert/strict";
import { readUnitText } from "../support/units";
import { boardUnit } from "./unit";

const others = ["o lago = the lake", "o sol = the sun", "a lua = the moon", "a rua = the street"];

async function judged(pairs: readonly string[], options: string): Promise<{ status: string[]; told: string[] }> {
  const front = "teaches: pt\nexplains: en\n";
  const { activities, findings } = await readUnitText(boardUnit([...pairs, ...others], options, front));
  return {
    status: activities.flatMap(({ deals }) => deals.map(({ proof }) => proof.status)),
    told: findings.filter(({ code }) => code === "board-clue-fits-two").map(({ message }) => message),
  };
}

describe("what a caller says for a picture", () => {
  const boat = "o barco = the boat";

  it("is heard as the same words without it: never one solution", async () => {
    const pairs = [boat, "a lancha = ![boat at sea](boat.png) the boat"];
    const { status, told } = await judged(pairs, "clue: gloss");
    assert.deepEqual(status, ["several"]);
    assert.deepEqual(told, ["“the boat” is called for “o barco” and fits “a lancha” on the board as well."]);
    const alone = await judged([boat, "a lancha = ![the boat](boat.png)"], "clue: gloss");
    assert.deepEqual(alone.status, ["several"]);
    const further = await judged([boat, "a lancha = the launch / ![the boat](boat.png)"], "clue: gloss");
    assert.deepEqual(further.status, ["several"]);
    const turned = await judged(["a lancha = the launch / the boat", "o barco = ![the boat](boat.png)"], "clue: gloss");
    assert.deepEqual(turned.status, ["several"]);
    const other = await judged([boat, "a lancha = ![boat at sea](boat.png) the launch"], "clue: gloss");
    assert.deepEqual(other.status, ["one"]);
  });

  it("stands on two cells where both have the word", async () => {
    const pairs = ["o barco = the boat", "![a launch](boat.png) o barco = the launch"];
    assert.deepEqual((await judged(pairs, "clue: word")).status, ["several"]);
    assert.deepEqual((await judged(pairs, "clue: gloss")).status, ["one"]);
  });

  it("may be the very word on a cell, under a picture too", async () => {
    const pairs = ["![a folder](boat.png) pasta = the folder", "massa = pasta"];
    assert.deepEqual((await judged(pairs, "clue: gloss")).status, ["several"]);
  });
});
