import assert from "node:assert/strict";
import { readUnitText, slice } from "../support/units";

/** What is told of too few items, and the texts of the places that it shows. */
async function shown(text: string, code: string): Promise<readonly string[] | undefined> {
  const { findings, unit } = await readUnitText(text);
  const found = findings.find((finding) => finding.code === code);
  return found?.related.map(({ range }) => slice(unit.text, unit.lines.line(unit.lines.lineAt(range.start))));
}

describe("where too few items are told", () => {
  const tiles = (items: string): string => `## The workshop\n\n${items}\n\n\`\`\`activity\nmake: tiles\n\`\`\`\n`;

  it("the lines that are not read as they stand are shown as the cause", async () => {
    const text = tiles("- o selim = the saddle\n- o pneu - the tyre\n- a roda – the wheel\n- a luz = the light");
    assert.deepEqual(await shown(text, "too-few-pairs"), ["- o pneu - the tyre", "- a roda – the wheel"]);
  });

  it("what stands in other sections, or was silenced, is none", async () => {
    const silenced = "- o pneu - the tyre <!-- allow meant-as-pair: a note -->";
    const text = `${tiles(`- o selim = the saddle\n${silenced}`)}\n${tiles("- a roda – the wheel").replace("workshop", "road")}`;
    assert.deepEqual(await shown(text, "too-few-pairs"), []);
  });

  it("nothing is shown where nothing else is told", async () => {
    assert.deepEqual(await shown(tiles("- o selim = the saddle"), "too-few-pairs"), []);
  });

  it("nothing else that is told of the activity shows them", async () => {
    const pairs = [
      "o selim = the saddle",
      "a roda = the wheel",
      "a luz = the light",
      "o raio = the spoke",
      "o freio = the brake",
    ];
    const items = `${pairs.map((pair) => `- ${pair}\n`).join("")}- o pneu - the tyre`;
    const { findings } = await readUnitText(`${tiles(items)}\n${"```"}activity\nmake: strips\n${"```"}\n`);
    const [unused, ...more] = findings.filter(({ code }) => code === "unused-pairs");
    assert.ok(unused && more.length === 0 && findings.some(({ code }) => code === "too-few-events"));
    assert.ok(!unused.related.some(({ message }) => message.includes("may be one more")));
  });

  it("each kind says so of its own items", async () => {
    const of = (kind: string, items: string): string => tiles(items).replace("tiles", kind);
    assert.deepEqual(await shown(of("strips", "1. Um gato salta.\n\n#2 A lata cai."), "too-few-events"), [
      "#2 A lata cai.",
    ]);
    assert.deepEqual(await shown(of("calls", "- [x] Um gato salta.\n- [F] A lata ri."), "too-few-statements"), [
      "- [F] A lata ri.",
    ]);
    assert.deepEqual(await shown(of("sort", "- [x] Um gato salta.\n- [F] A lata ri."), "too-few-cards"), [
      "- [F] A lata ri.",
    ]);
    const pair = "- o pneu - the tyre";
    for (const [kind, code] of [
      ["loop", "loop-too-few"],
      ["board", "board-too-few"],
      ["rebuild", "no-sentences"],
    ] as const)
      assert.deepEqual(await shown(of(kind, pair), code), [pair]);
  });
});
