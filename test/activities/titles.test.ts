import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

const titles = async (...written: string[]): Promise<string[]> => {
  const blocks = written.map((title) => `\`\`\`activity\nmake: loop\ntitle: ${title}\n\`\`\`\n`);
  const text = `## Bancada\n\n- roda = wheel\n- selim = saddle\n- sino = bell\n- pneu = tyre\n\n${blocks.join("\n")}`;
  return (await readUnitText(text)).activities.map(({ title }) => title);
};

describe("titles of activities", () => {
  it("have no white space at their ends, and single spaces within, however YAML writes them", async () =>
    assert.deepEqual(await titles(">\n  A volta\n  toda", '"  Uma\\troda "', "|\n  Duas\n  rodas"), [
      "A volta toda",
      "Uma roda",
      "Duas rodas",
    ]));

  it("are told apart by numbers where only white space tells them apart", async () =>
    assert.deepEqual(await titles("Volta", '" Volta"'), ["Volta", "Volta 2"]));
});
