import assert from "node:assert/strict";
import type { TilesDeal } from "../../../src/activities/tiles/model";
import { readUnitText } from "../../support/units";

describe("one word in both languages", () => {
  const words = ["a roda = the wheel", "o selim = the saddle", "o freio = the brake", "o cubo = the hub"];
  const unit = (items: readonly string[]): string =>
    `## Parts\n\n${items.map((item) => `- ${item}\n`).join("")}\n\`\`\`activity\nmake: tiles\ngrid: 2 x 2\nouter: decoys\ndecoys: 2\n\`\`\`\n`;

  for (const option of ["frame: told", "frame: untold"])
    it(`on an outer edge fits nothing, since an edge never lies against itself (${option})`, async () => {
      let outside = 0;
      for (let seed = 1; seed <= 12; seed++) {
        const text = unit([...words, "pedal = pedal"]).replace("make: tiles", `make: tiles\nseed: ${seed}\n${option}`);
        const { activities, findings } = await readUnitText(text);
        const [deal] = (activities[0]?.deals ?? []) as unknown as TilesDeal[];
        if (deal?.decoys.edges.some((edge) => edge.text === "pedal")) outside++;
        assert.equal(deal?.proof.status, "one");
        const codes = findings.map(({ code }) => code);
        assert.ok(!codes.includes("ambiguous-edge") && !codes.includes("no-solution"), codes.join());
      }
      assert.ok(outside > 0);
    });
});
