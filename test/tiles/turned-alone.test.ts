import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

describe("a tile that look-alikes let lie turned in its place", () => {
  it("is named alone: no other one is mistaken for it", async () => {
    const pairs = ["cabo = pedals", "cabo! = cable", "Cabo = saddle", "porca = bell"];
    const block = "make: tiles\ngrid: 2 x 2\nseed: 37\ndecoys: [Pedals, cáble, pórca]";
    const text = `---\nteaches: pt\nexplains: en\n---\n\n## S\n\n${pairs.map((pair) => `- ${pair}\n`).join("")}\n\`\`\`activity\n${block}\n\`\`\`\n`;
    const { findings } = await readUnitText(text);
    const told = findings.filter(({ code, severity }) => code === "look-alike" && severity === "information");
    assert.equal(told.length, 1);
    assert.match(told[0]?.message ?? "", /, in “S – tiles”: nothing else says how tile \w\w is turned\.$/u);
  });

  it("is not meant where two are exchanged", async () => {
    const pairs = ["eixo = axle", "Eixo = axes", "eixo! = rim", "luz = lamp"];
    const text = `---\nteaches: pt\nexplains: en\n---\n\n## S\n\n${pairs.map((pair) => `- ${pair}\n`).join("")}\n\`\`\`activity\nmake: tiles\ngrid: 2 x 2\n\`\`\`\n`;
    const { findings } = await readUnitText(text);
    const told = findings.filter(({ code, severity }) => code === "look-alike" && severity === "information");
    for (const { message } of told) assert.match(message, /keeps tiles \w\w(, \w\w)* and \w\w apart/u);
  });
});
