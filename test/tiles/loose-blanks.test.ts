import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

describe("a shared answer on tiles that may lie in several ways", () => {
  const told = async (pairs: string, grid: string): Promise<string[]> => {
    const text = `## Drinks\n\n${pairs}\n\`\`\`activity\nmake: tiles\ngrid: ${grid}\nfill: blank\nseed: 30\n\`\`\`\n`;
    const { findings } = await readUnitText(text);
    return findings
      .filter(({ code, severity }) => code === "duplicate-answer" && severity === "error")
      .map(({ message }) => message);
  };

  it("is not blamed alone where most edges are blank", async () => {
    const [message, ...more] = await told("- chá = tea\n- infusão / chá = brew\n", "3 x 2");
    assert.deepEqual(more, []);
    assert.match(message ?? "", /in more than one way\. 5 of 7 inner edges are blank.*too little says/u);
  });

  it("is where the tiles would have one solution if the words were not shared, though an edge is blank", async () => {
    const words = [
      "chá",
      "mate",
      "tisana",
      "cidreira",
      "tília",
      "menta",
      "hibisco",
      "camomila",
      "funcho",
      "salva",
      "lúcia",
    ];
    const messages = await told(words.map((word) => `- ${word} = tea\n`).join(""), "3 x 3");
    assert.ok(messages.length > 0);
    for (const message of messages) assert.match(message, /in more than one way\.$/u);
  });

  it("is where no edge is blank", async () => {
    const words = ["chá", "mate", "tisana", "cidreira"];
    const pairs = words
      .map((word, i) => `- ${word} = tea\n- ${words[(i + 1) % 4]} = brew\n- ${word} = drink\n`)
      .join("");
    const messages = await told(pairs, "3 x 3");
    assert.ok(messages.length > 0);
    for (const message of messages) assert.match(message, /in more than one way\.$/u);
  });
});
