import assert from "node:assert/strict";
import { copiesOf, setsFor } from "../../src/activities/copies";
import { innerCount, innerEdges, largestFrame, outerCount, outerEdges } from "../../src/activities/tiles/frame";
import type { TilesDeal } from "../../src/activities/tiles/model";
import { dealCode, markAlphabet, pieceMark } from "../../src/base/mark";
import { upTo } from "../../src/base/seed";
import { readUnitText, unitOf, word } from "../support/units";

async function deals(text: string): Promise<readonly TilesDeal[]> {
  const { activities } = await readUnitText(text);
  return activities.flatMap((activity) => activity.deals) as unknown as readonly TilesDeal[];
}

describe("frames of tiles", () => {
  // Values of the shared table of inner and outer edges: R(C − 1) + C(R − 1) and 2(R + C).
  const table: [number, number, number, number][] = [
    [3, 3, 12, 12],
    [3, 4, 17, 14],
    [4, 4, 24, 16],
    [5, 5, 40, 20],
    [6, 6, 60, 24],
  ];
  for (const [rows, columns, inner, outer] of table) {
    it(`${rows} × ${columns} has ${inner} inner and ${outer} outer edges, each spot once`, () => {
      const frame = { rows, columns };
      assert.equal(innerCount(frame), inner);
      assert.equal(outerCount(frame), outer);
      const spots = [...innerEdges(frame).flat(), ...outerEdges(frame)].map(({ cell, side }) => `${cell}/${side}`);
      assert.equal(new Set(spots).size, 4 * rows * columns);
    });
  }

  it("takes the largest frame that the pairs fill", () => {
    const frames = [3, 4, 6, 7, 9, 12, 17, 23, 24, 264].map((pairs) => largestFrame(pairs));
    const shown = frames.map((frame) => (frame ? `${frame.rows}x${frame.columns}` : "none"));
    assert.deepEqual(shown, ["none", "2x2", "2x2", "2x3", "2x3", "3x3", "3x4", "3x5", "4x4", "12x12"]);
  });
});

describe("copies", () => {
  it("make pairs with one trio where a class is odd, and threes with some fours", () => {
    assert.deepEqual(
      [21, 23, 24, 27, 30, 31].map((learners) => setsFor(learners, 2)),
      [10, 11, 12, 13, 15, 15],
    );
    assert.equal(setsFor(26, 3), 8);
    assert.equal(setsFor(1, 2), 1);
  });

  it("are for the largest class and shared out among levels and versions", () => {
    const plans = [{ level: "gentle" }, { level: "hard" }];
    assert.deepEqual(copiesOf({ group: 2 }, [24, 27, 31], plans), [8, 7]);
    assert.deepEqual(copiesOf({ group: 2, copies: { gentle: 9, hard: 4 } }, [], plans), [9, 4]);
    assert.deepEqual(copiesOf({ group: 2, copies: "by copier" }, [24], plans), ["by copier", "by copier"]);
    assert.deepEqual(copiesOf({ group: 2 }, [], plans.slice(1)), [1]);
  });
});

describe("marks", () => {
  it("use no two characters that look alike, also when turned", () => {
    const alike = ["0OQD", "1IL7J", "2ZN", "5S", "69G", "3MWE", "8B", "UC", "VA", "HI"];
    for (const group of alike) {
      const both = [...group].filter((character) => markAlphabet.includes(character));
      assert.ok(both.length <= 1, both.join(""));
    }
    assert.equal(new Set(markAlphabet).size, 16);
  });

  it("say deal, copy and piece, and leave the copy out for a master", () => {
    assert.match(pieceMark("KTX4PA", 12, 143), /^KTX4PA-[A-Z0-9]{2}-[A-Z0-9]{2}$/);
    assert.match(pieceMark("KTX4PA", undefined, 3), /^KTX4PA-[A-Z0-9]{2}$/);
    const marks = new Set(Array.from({ length: 144 }, (_, i) => pieceMark("KTX4PA", 0, i)));
    assert.equal(marks.size, 144);
  });
});

describe("dealing tiles", () => {
  it("puts every pair on two touching edges and nothing on the outer ones", async () => {
    const [deal] = await deals(unitOf(24, "grid: 4 x 4"));
    assert.ok(deal);
    for (const [p, q] of innerEdges(deal.frame)) {
      const a: string = deal.solved[p.cell]?.[p.side]?.text ?? "";
      const b: string = deal.solved[q.cell]?.[q.side]?.text ?? "";
      assert.equal(a.slice(0, -1), b.slice(0, -1));
      assert.notEqual(a, b);
    }
    for (const { cell, side } of outerEdges(deal.frame)) assert.equal(deal.solved[cell]?.[side], undefined);
    assert.equal(deal.proof.status, "one");
    assert.deepEqual(
      [...deal.tiles.map(({ cell }) => cell)].sort((a, b) => a - b),
      Array.from({ length: 16 }, (_, i) => i),
    );
  });

  it("moves no piece when a word is mended, but changes the code", async () => {
    const text = unitOf(12, "grid: 3 x 3");
    const [before] = await deals(text);
    const [after] = await deals(text.replace(`- ${word(3)}a`, "- mended"));
    assert.ok(before && after);
    assert.deepEqual(after.tiles, before.tiles);
    const places = ({ solved }: TilesDeal, text: string): string[] =>
      solved.flatMap((face, cell) => face.flatMap((edge, side) => (edge?.text === text ? [`${cell}/${side}`] : [])));
    assert.deepEqual(places(after, "mended"), places(before, `${word(3)}a`));
    assert.notEqual(after.code, before.code);
  });

  it("gives the same deal again, and another for another seed or version", async () => {
    const codes = async (options: string): Promise<string[]> =>
      (await deals(unitOf(12, options))).map(({ code }) => code);
    assert.deepEqual(await codes("grid: 3 x 3"), await codes("grid: 3 x 3"));
    assert.notDeepEqual(await codes("grid: 3 x 3"), await codes("grid: 3 x 3\nseed: 2"));
    const versions = await codes("grid: 3 x 3\nversions: 3");
    assert.equal(new Set(versions).size, 3);
  });

  it("turns tiles when they may be turned, and not when they show which way is up", async () => {
    const [free] = await deals(unitOf(24, "turn: free"));
    const [fixed] = await deals(unitOf(24, "turn: fixed"));
    assert.ok(new Set(free?.tiles.map(({ turn }) => turn)).size > 1);
    assert.deepEqual([...new Set(fixed?.tiles.map(({ turn }) => turn))], [0]);
  });

  it("takes decoys that fit nothing on the tiles", async () => {
    const { unit, activities } = await readUnitText(
      `## More\n\n- xoxo = xixi\n- ${word(1)}a = xuxu\n- xexe = xaxa\n\n${unitOf(12, "grid: 3 x 3\nlevels: [gentle, hard]\ndecoys: 3").replace("## Words", "## Words")}`,
    );
    const found = activities[0]?.deals as unknown as readonly TilesDeal[];
    assert.deepEqual(
      found.map(({ level }) => level),
      ["gentle", "hard"],
    );
    const [gentle, hard] = found;
    const outside = (deal: TilesDeal | undefined): string[] =>
      outerEdges({ rows: 3, columns: 3 }).flatMap(({ cell, side }) => deal?.solved[cell]?.[side]?.text ?? []);
    assert.deepEqual(outside(gentle), []);
    // Three pairs are unused, but one of them shares a word with a pair on the tiles.
    for (const decoy of outside(hard)) assert.ok(["xoxo", "xixi", "xexe", "xaxa"].includes(decoy), decoy);
    assert.equal(outside(hard).length, 2);
    assert.equal(unit.problems.length, 0);
    assert.equal(hard?.proof.status, "one");
  });

  it("takes words for decoys, and no sentences", async () => {
    const sentences = upTo(12).map((i) => `- the long road to ${word(40 + i)} = a estrada longa para ${word(60 + i)}`);
    const words = ["xoxo", "xexe", "xuxu", "xaxa"];
    const text = (decoys: number): string =>
      `${unitOf(12, `grid: 3 x 3\nouter: decoys\ndecoys: ${decoys}`)}\n## Said\n\n${sentences.join("\n")}\n\n## More\n\n${words.map((each) => `- ${each} = ${each}s`).join("\n")}\n`;
    const outside = async (decoys: number): Promise<string[]> => {
      const [deal] = await deals(text(decoys));
      return outerEdges({ rows: 3, columns: 3 }).flatMap(({ cell, side }) => deal?.solved[cell]?.[side]?.text ?? []);
    };
    assert.deepEqual((await outside(4)).map((each) => each.slice(0, 4)).sort(), [...words].sort());
    assert.equal((await outside(6)).length, 4);
  });

  it("deals again where the first arrangement has a second solution", async () => {
    const shared =
      "## S\n\n- a = x\n- b = x\n- c = x\n- d = x\n- e = x\n- f = x\n- g = y\n\n```activity\nmake: tiles\nseed: SEED\n```\n";
    let again = 0;
    for (let seed = 1; seed <= 30; seed++) {
      const [deal] = await deals(shared.replace("SEED", String(seed)));
      if (deal?.proof.status === "one" && deal.attempt > 0) again++;
    }
    assert.ok(again > 0);
  });

  it("passes over a pair that shares an answer while others are left", async () => {
    const text = unitOf(12, "grid: 3 x 3").replace("## Words\n", "## Words\n\n- zwei = zwoo\n- drei = zwoo\n");
    for (let seed = 1; seed <= 20; seed++) {
      const [deal] = await deals(text.replace("grid:", `seed: ${seed}\ngrid:`));
      const zwoo = deal?.solved.flat().filter((edge) => edge?.text === "zwoo").length ?? 0;
      assert.ok(zwoo <= 1);
    }
  });

  it("shows a second assembly that really fits, for words that cannot be kept apart", async () => {
    const words = ["rapido", "veloz", "ligero", "raudo", "presto", "pronto", "agil"];
    const items = words.map((own, i) => `- ${own} = ${[...words.slice(i + 1), ...words.slice(0, i)].join(" / ")}`);
    const { activities } = await readUnitText(`## S\n\n${items.join("\n")}\n\n\`\`\`activity\nmake: tiles\n\`\`\`\n`);
    const [deal] = (activities[0]?.deals ?? []) as unknown as readonly TilesDeal[];
    assert.equal(deal?.proof.status, "several");
    const second = deal.proof.second;
    assert.ok(second);
    assert.equal(new Set(second.cells.map(({ tile }) => tile)).size, second.cells.length);
    // Checked here by the rule of the words alone: any two different words of the list answer each other.
    const shown = (cell: number, side: number): string | undefined => {
      const placed = second.cells[cell];
      return placed && deal.solved[placed.tile]?.[(side - placed.turn + 4) % 4]?.text;
    };
    for (const [p, q] of innerEdges(second)) {
      const [a, b] = [shown(p.cell, p.side), shown(q.cell, q.side)];
      assert.ok(a !== undefined && b !== undefined && a !== b, `${a} against ${b}`);
    }
  });
});

describe("a deal's code", () => {
  it("is the hash of all that can be seen, whatever signs the words have", async () => {
    const words = ['the "big" one', "the **bold** one", "a back\\\\slash", "o ânimo"];
    const [deal] = await deals(
      `## A\n\n${words.map((each, i) => `- ${word(i)} = ${each}\n`).join("")}\n\`\`\`activity\nmake: tiles\n\`\`\`\n`,
    );
    assert.ok(deal);
    const { level, version, frame, tiles, solved } = deal;
    const faces = solved.map((face) => face.map((edge) => (edge ? [edge.picture?.path ?? "", edge.runs] : 0)));
    assert.equal(deal.code, dealCode(JSON.stringify(["tiles", level, version, "free", frame, tiles, faces])));
  });
});

describe("edges that fit though they are no pair", () => {
  it("are found where there is only one such couple", async () => {
    // “slow”, a further answer of the last pair, is printed in the first: only “langsam” fits it besides.
    const text =
      "## A\n\n- lento = slow\n- alto = tall\n- bajo = short\n- leise / slow = langsam\n\n```activity\nmake: tiles\n```\n";
    const { findings } = await readUnitText(text);
    assert.ok(findings.some(({ code }) => code === "ambiguous-edge"));
  });
});
