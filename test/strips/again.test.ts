import assert from "node:assert/strict";
import type { PiecesFile } from "../../src/make/pieces-file";
import { ordering, sentenceUnit } from "../rebuild/unit";
import { readPrint } from "../support/print";
import { readUnitText, testWorkshop } from "../support/units";
import { morning, storyUnit } from "./unit";

describe("lost strips and cards", function () {
  this.timeout(60_000);

  for (const [kind, text] of [
    ["strips", storyUnit(morning, "copies: 3")],
    ["rebuild", sentenceUnit(ordering, "copies: 3\npacket: 2")],
  ] as const) {
    it(`${kind}: the piece comes again with its text, size and mark`, async () => {
      const workshop = await testWorkshop();
      const files = await workshop.make(await readUnitText(text), {});
      const json = new TextDecoder().decode(files.find(({ name }) => name.endsWith(".json"))?.bytes);
      const { pieces }: PiecesFile = JSON.parse(json);
      const lost = pieces.at(-2);
      assert.ok(lost);
      const [found] = workshop.find([json], lost.mark.toLowerCase());
      assert.ok(found);
      const again = await readPrint(await workshop.reprint([found], new Map()));
      const first = await readPrint(
        files.find(({ name }) => name.endsWith(`${kind}.card.pdf`))?.bytes ?? new Uint8Array(),
      );
      const words = (page: (typeof again)[number] | undefined): string[] =>
        (page?.texts ?? []).map((each) => `${each.text} ${each.size.toFixed(2)}`);
      const here = words(again[0]);
      const there = words(first[(lost.at[0]?.page ?? 0) - 1]);
      const own = here.filter((word) => there.includes(word) && !word.startsWith("Print at"));
      const printed = own.map((word) => word.replace(/ [\d.]+$/, "")).join(" ");
      assert.ok(printed.includes(lost.faces[0]?.text ?? "?"), printed);
      assert.ok(printed.replace(/[ -]/g, "").includes(lost.mark.replaceAll("-", "")), printed);
    });
  }
});
