import assert from "node:assert/strict";
import { safeName } from "../../src/make/file-names";
import type { PiecesFile } from "../../src/make/pieces-file";
import { BlockedError, type MadeFile, type MakeOptions, type Surroundings } from "../../src/make/workshop";
import { shapes } from "../activities/material";
import { readPrint } from "../support/print";
import { readUnitText, testWorkshop, unitOf, word } from "../support/units";

async function make(
  text: string,
  options: MakeOptions = {},
  around: Partial<Surroundings> = {},
): Promise<readonly MadeFile[]> {
  return (await testWorkshop()).make(await readUnitText(text, around), options);
}

function piecesOf(files: readonly MadeFile[]): { text: string; file: PiecesFile } {
  const found = files.find(({ name }) => name === "unit.pieces.json");
  const text = new TextDecoder().decode(found?.bytes);
  return { text, file: JSON.parse(text) };
}

const front = "---\nclasses: [4]\n---\n\n";
const two = `${unitOf(12, "title: One", front)}\n${unitOf(4, "title: Two\nseed: 2").replace("## Words", "## More")}`;

describe("making files", () => {
  it("writes cards and papers of each activity apart, and the pieces file", async () => {
    const names = (await make(two)).map(({ name }) => name);
    assert.deepEqual(names, [
      "unit.One.card.pdf",
      "unit.One.paper.pdf",
      "unit.Two.card.pdf",
      "unit.Two.paper.pdf",
      "unit.guide.pdf",
      "unit.labels.pdf",
      "unit.pieces.json",
    ]);
  });

  it("merges by stock, with pages of the merged file in the pieces file", async () => {
    const files = await make(two, { merge: true });
    assert.deepEqual(
      files.map(({ name }) => name),
      ["unit.card.pdf", "unit.paper.pdf", "unit.guide.pdf", "unit.labels.pdf", "unit.pieces.json"],
    );
    const { pieces } = piecesOf(files).file;
    assert.deepEqual([...new Set(pieces.map(({ at }) => at[0]?.file))], ["unit.card.pdf"]);
    const pages = pieces.map(({ activity, copy, at }) => `${activity} ${copy} ${at[0]?.page}`);
    assert.deepEqual([...new Set(pages)], ["One 1 1", "One 2 2", "Two 1 3", "Two 2 4"]);
  });

  it("makes one set of everything for a trial, and a master without a copy by copier", async () => {
    const trial = piecesOf(await make(two, { trial: true })).file;
    assert.deepEqual([...new Set(trial.pieces.map(({ copy }) => copy))], [1]);
    const master = piecesOf(await make(unitOf(4, "copies: by copier"))).file;
    assert.deepEqual([...new Set(master.pieces.map(({ copy }) => copy))], [null]);
    for (const { mark } of master.pieces) assert.match(mark, /^[A-Z0-9]{6}-[A-Z0-9]{2}$/);
  });

  it("makes one slip, mat and label for a trial, and the plan of the stations for the classes as they are", async () => {
    const items = Array.from({ length: 6 }, (_, i) => `${i + 1}. Passo ${word(i)}.`).join("\n");
    const piles = "### um\n\n- ba\n- be\n\n### dois\n\n- ca\n- ce\n";
    const text = `---\nclasses: [24, 27]\n---\n\n## Story\n\n${items}\n\n\`\`\`activity\nmake: strips\ntitle: One\n\`\`\`\n\n## Piles\n\n${piles}\n\`\`\`activity\nmake: sort\ntitle: Two\nmats: fields\n\`\`\`\n\n\`\`\`stations\nminutes: 5\n\`\`\`\n`;
    const said = async (options: MakeOptions): Promise<(name: string, what: string) => number> => {
      const files = await make(text, options);
      const texts = new Map<string, string[]>();
      for (const { name, bytes } of files.filter((file) => file.name.endsWith(".pdf")))
        texts.set(
          name,
          (await readPrint(bytes)).flatMap((page) => page.texts.map((each) => each.text)),
        );
      return (name, what) => texts.get(`unit.${name}.pdf`)?.filter((each) => each.includes(what)).length ?? -1;
    };
    const counts = (count: (name: string, what: string) => number): number[] => [
      count("One.paper", "Set:"),
      count("Two.paper", "mat"),
      count("labels", "set "),
      count("guide", "13 sets"),
      count("guide", "1 set)"),
      count("guide", "Class of 27"),
    ];
    // 12 + 13 slips; mats and labels for the 13 groups of the larger class.
    assert.deepEqual(counts(await said({})), [25, 13, 26, 2, 0, 1]);
    assert.deepEqual(counts(await said({ trial: true })), [1, 1, 2, 0, 2, 1]);
  });

  it("makes one list to call from for a trial, of each kind that is called", async () => {
    const statements = ["a", "b", "c", "d", "e", "f"].map(
      (each, i) => `- [${i % 2 ? "x" : " "}] Frase ${each}${each}.`,
    );
    const pairs = Array.from({ length: 9 }, (_, i) => `- ${word(i)}a = ${word(i)}o`);
    const text = `---\nclasses: [8, 6, 7]\n---\n\n## Words\n\n${pairs.join("\n")}\n\n\`\`\`activity\nmake: board\ntitle: One\n\`\`\`\n\n## Calls\n\n${statements.join("\n")}\n\n\`\`\`activity\nmake: calls\ntitle: Two\n\`\`\`\n`;
    const lists = async (options: MakeOptions): Promise<number[]> => {
      const files = await make(text, options);
      const count = async (name: string): Promise<number> =>
        (await readPrint(files.find((file) => file.name === name)?.bytes ?? new Uint8Array())).filter(({ texts }) =>
          texts.some((each) => each.text.startsWith("Caller’s list:")),
        ).length;
      return [await count("unit.One.paper.pdf"), await count("unit.Two.paper.pdf")];
    };
    assert.deepEqual(await lists({}), [3, 3]);
    assert.deepEqual(await lists({ trial: true }), [1, 1]);
  });

  it("with a title or kind leaves the other activities' entries alone", async () => {
    const before = piecesOf(await make(two));
    const changed = two.replace(`- ${word(0)}a = ${word(0)}o`, "- mended = neu");
    const after = piecesOf(await make(changed, { only: "Two" }, { pieces: before.text })).file;
    const of = (file: PiecesFile, title: string) =>
      file.pieces.filter(({ activity }) => activity === title).map(({ mark }) => mark);
    assert.deepEqual(of(after, "One"), of(before.file, "One"));
    assert.equal(after.deals.length, 2);
  });

  it("keeps earlier deals once, without copies, and what they take to be printed again", async () => {
    const first = piecesOf(await make(two));
    const mended = two.replaceAll(`${word(0)}o`, "mended");
    const second = piecesOf(await make(mended, {}, { pieces: first.text }));
    const codes = (deals: PiecesFile["deals"]): string[] => deals.map(({ code }) => code);
    assert.deepEqual(codes(second.file.past), codes(first.file.deals));
    assert.deepEqual(second.file.past[0]?.record, first.file.deals[0]?.record);
    // Back again: the old deal is current, and what was current is past.
    const third = piecesOf(await make(two, {}, { pieces: second.text }));
    assert.deepEqual(codes(third.file.deals), codes(first.file.deals));
    assert.deepEqual(codes(third.file.past), codes(second.file.deals));
  });

  it("refuses while there are errors, and names them", async () => {
    const text = unitOf(4, "grid: 3 x 3");
    await assert.rejects(
      make(text),
      (error: unknown) => error instanceof BlockedError && /9|12 inner edges/.test(error.message),
    );
    // An error of another activity does not stand in the way of this one.
    const both = `${unitOf(12, "title: Good")}\n${unitOf(4, "title: Bad\ngrid: 3 x 3").replace("## Words", "## More")}`;
    assert.ok((await make(both, { only: "Good" })).length === 3);
    await assert.rejects(make(both, { only: "Bad" }), BlockedError);
  });

  it("stops where a step throws, and gives nothing", async () => {
    let steps = 0;
    const stop = (): void => {
      if (++steps === 2) throw new Error("cancelled");
    };
    await assert.rejects(make(two, { onStep: stop }), /cancelled/);
  });

  it("tells of a code that another unit's pieces already have, and that deals moved", async () => {
    const { text } = piecesOf(await make(two));
    const { findings } = await readUnitText(two, { neighbours: [{ name: "other", text }] });
    const same = findings.filter(({ code }) => code === "same-code");
    assert.equal(same.length, 2);
    assert.match(same[0]?.message ?? "", /“One” of “other”/);
    const own = await readUnitText(two, { pieces: text });
    assert.deepEqual(
      own.findings.filter(({ code }) => code === "same-code" || code === "moved-deal"),
      [],
    );
    const moved = await readUnitText(two, { pieces: text.replaceAll('"attempt":0', '"attempt":5') });
    assert.equal(moved.findings.filter(({ code }) => code === "moved-deal").length, 2);
  });

  it("reads a damaged pieces file as far as it goes", async () => {
    for (const pieces of ["", "{", "[]", '{"deals": 3, "pieces": [1, null, {"mark": 2}]}']) {
      const { findings } = await readUnitText(two, { pieces });
      assert.deepEqual(
        findings.filter(({ severity }) => severity === "error"),
        [],
      );
      assert.equal(piecesOf(await make(two, {}, { pieces })).file.past.length, 0);
    }
  });
});

describe("file names", () => {
  it("are safe on every file system, and keep letters of every script", () => {
    assert.equal(safeName("At the counter – tiles"), "At-the-counter-tiles");
    assert.equal(safeName("На ринку: 1/2"), "На-ринку-1-2");
    assert.equal(safeName("../../etc"), "etc");
    assert.equal(safeName("???"), "untitled");
    assert.ok(safeName("ä".repeat(300)).length <= 60);
  });
});

describe("levels in the pieces file", () => {
  it("have one name for all kinds where none are asked for, and their own where they are", async () => {
    const workshop = await testWorkshop();
    for (const [make, about] of [
      ["tiles", "words"],
      ["strips", "events"],
      ["rebuild", "sentences"],
      ["sort", "statements"],
      ["sort", "piles"],
      ["calls", "statements"],
      ["board", "words"],
      ["loop", "words"],
    ] as const) {
      for (const [options, told] of [
        ["", ["plain"]],
        ["levels: [gentle, hard]", ["gentle", "hard"]],
        ["levels: [hard]", ["hard"]],
      ] as const) {
        const { text, from } = shapes[about];
        const block = `\`\`\`activity\nmake: ${make}\nfrom: ${from}\n${options}\n\`\`\`\n`;
        const files = await workshop.make(await readUnitText(`---\nteaches: pt\n---\n\n${text}\n${block}`), {});
        const { deals, pieces } = piecesOf(files).file;
        assert.deepEqual([...new Set(deals.map(({ level }) => level))], told, `${make} ${options}`);
        if (make !== "calls") assert.deepEqual([...new Set(pieces.map(({ level }) => level))], told);
      }
    }
  });
});
