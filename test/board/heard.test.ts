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

describe("words of a board that sound alike", () => {
  /** Look-alikes that are told of a board, by severity. */
  async function told(pairs: readonly string[], options: string): Promise<string[]> {
    const { activities, findings } = await readUnitText(boardUnit(pairs, options, "teaches: pt\nexplains: en\n"));
    assert.deepEqual(
      activities.flatMap(({ deals }) => deals.map(({ proof }) => proof.status)),
      ["one"],
    );
    return findings
      .filter(({ code }) => code === "look-alike")
      .map(({ severity, message }) => `${severity}: ${message}`);
  }

  it("are told where the caller says the very word: nobody hears a capital or a mark", async () => {
    const [one, ...more] = await told(["o eixo = the axle", "O eixo! = the axis", ...others], "clue: word");
    assert.deepEqual(more, []);
    assert.match(one ?? "", /^warning: .*Whoever listens cannot hear that and may touch the wrong word/u);
    const gloss = await told(["o eixo = the axle", "o cubo = the axle!", ...others], "clue: gloss\nshow: gloss");
    assert.match(gloss[0] ?? "", /^warning: .*nothing else keeps “the axle” and “the axle!” apart/u);
    const same = await told(["o eixo = the axle", "O eixo! = the axle", ...others], "clue: word");
    assert.equal(same.length, 1);
    const never = await told(["o eixo = the axle", ...others], "clue: word\ngrid: 2 x 3\ndistractors: [O eixo!]");
    assert.match(never[0] ?? "", /^warning: /u);
  });

  it("are no fault where what differs is heard: telling it from its like is the game", async () => {
    const said = (found: readonly string[]): string[] => found.filter((each) => !each.startsWith("hint"));
    assert.deepEqual(said(await told(["a avó = the granny", "a avô = the grandpa", ...others], "clue: word")), []);
    assert.deepEqual(
      said(await told(["o eixo = the axle", "O eixo! = the axis", ...others], "clue: word\ntake: 4\ngrid: 2 x 2")),
      [],
    );
  });
});
