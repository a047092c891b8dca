import { expect } from "chai";
import { readUnitText } from "../support/units";

/* Which words of a board stand in a sentence that is called: in any script, beside a picture, with a note in brackets. */

/** Which words of a full board each sentence fits besides its own. */
async function doubles(teaches: string, items: readonly (readonly [pair: string, said: string])[], options = "") {
  const lines = items.map(([pair, said]) => `- ${pair}\n  - ${said}`).join("\n");
  const text = `---\nteaches: ${teaches}\nexplains: en\n---\n\n## Words\n\n${lines}\n\n\`\`\`activity\nmake: board\nclue: example\ngrid: 2 x 2\n${options}\`\`\`\n`;
  const { findings, activities } = await readUnitText(text);
  const told = findings.flatMap(({ code, message }) =>
    code === "board-clue-fits-two" ? (/for “(.*)” and fits “(.*)” on/u.exec(message)?.slice(1).join(" > ") ?? "") : [],
  );
  const [proof] = (activities[0]?.deals ?? []).map((deal) => deal.proof.status);
  expect(proof).to.equal(told.length === 0 ? "one" : "several");
  return told.sort();
}

describe("words in sentences that are called", () => {
  it("stand there without spaces where the script has none", async () => {
    const cat = ["猫 = cat", "猫がいる。"] as const;
    const bottle = ["水筒 = bottle", "水筒がない。"] as const;
    const room = ["へや = room", "へやが明るい。"] as const;
    expect(await doubles("ja", [cat, bottle, room, ["さかな = fish", "へやにさかながいる。"]])).to.deep.equal([
      "さかな > へや",
    ]);
    expect(await doubles("ja", [cat, bottle, room, ["さかな = fish", "猫はさかなを食べる。"]])).to.deep.equal([
      "さかな > 猫",
    ]);
    // A single character may be a part of another word.
    expect(await doubles("ja", [["水 = water", "つめたい。"], bottle, room, cat])).to.deep.equal([]);
    const boat = ["เรือ = boat", "ใหญ่มาก"] as const;
    const sea = ["ทะเล = sea", "เห็นเรือในทะเล"] as const;
    const crow = ["กา = crow", "สีดำ"] as const;
    expect(await doubles("th", [boat, sea, crow, ["กาแฟ = coffee", "กาแฟร้อน"]])).to.deep.equal(["ทะเล > เรือ"]);
  });

  it("stand there without what is noted in brackets", async () => {
    const rest = [
      ["o leme (m.) = rudder", "Está partido."],
      ["a vela = sail", "Sobe devagar."],
      ["o cais = quay", "É longo."],
    ] as const;
    expect(await doubles("pt", [...rest, ["o remo = oar", "O remo e o leme flutuam."]])).to.deep.equal([
      "o remo > o leme (m.)",
    ]);
  });

  it("stand on the right of a picture", async () => {
    const rest = [
      ["![a buoy](boia.png) = a boia", "É vermelha."],
      ["a vela = sail", "Sobe devagar."],
      ["o cais = quay", "É longo."],
    ] as const;
    for (const show of ["word", "gloss"]) {
      const found = await doubles("pt", [...rest, ["o remo = oar", "O remo bate na boia."]], `show: ${show}\n`);
      expect(found, show).to.have.length(1);
    }
  });
});
