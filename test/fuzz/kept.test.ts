import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { createRequire } from "node:module";
import path from "node:path";
import * as fc from "fast-check";
import { nothingAround, type Reading, type Surroundings, type Workshop } from "../../src/make/workshop";
import { png } from "../render/sheets";
import { testAssets } from "../support/typeface";
import { testWorkshop, word } from "../support/units";
import { changes, edited, seedTexts } from "./texts";

/*
 * What is kept from one reading to the next changes no result: after any edits, an engine that has read every text on the way
 * says what one says that has just been loaded, and has read nothing.
 */

const load = createRequire(__filename);
const source = path.join(__dirname, "../../src") + path.sep;

/** An engine from modules loaded afresh, so that nothing is kept in them, and nothing will be. */
function freshWorkshop(): Promise<Workshop> {
  const kept = Object.entries(load.cache).filter(([file]) => file.startsWith(source));
  for (const [file] of kept) delete load.cache[file];
  const { openWorkshop } = load("../../src/make/workshop") as typeof import("../../src/make/workshop");
  const { Recent } = load("../../src/base/recent") as typeof import("../../src/base/recent");
  Recent.prototype.get = (_, make) => make();
  Recent.prototype.find = () => undefined;
  for (const file of Object.keys(load.cache)) if (file.startsWith(source)) delete load.cache[file];
  for (const [file, module] of kept) load.cache[file] = module;
  return openWorkshop(testAssets());
}

/** All that a reading says, as plain data. */
function said({ unit, activities, findings }: Reading): unknown {
  const { sections, front, activities: blocks, problems, silences } = unit;
  return JSON.parse(JSON.stringify({ sections, front, blocks, problems, silences, activities, findings }));
}

const runs = Math.max(24, Math.ceil(Number(process.env["CUTWORK_FUZZ_RUNS"] ?? 0) / 400));
const seed = Number(process.env["CUTWORK_FUZZ_SEED"] ?? 7);

type Edit = (text: string) => string;

/** The right side of one pair becomes that of another, so that they answer each other or come apart again. */
function copiedAnswer(text: string, from: number, to: number): string {
  const pair = /^(- .+ = )(.+)$/;
  const lines = text.split("\n");
  const pairs = lines.flatMap((line, i) => (pair.test(line) ? [i] : []));
  const [source, target] = [pairs[from % pairs.length] ?? -1, pairs[to % pairs.length] ?? -1];
  const answer = pair.exec(lines[source] ?? "")?.[2];
  if (answer !== undefined) lines[target] = (lines[target] ?? "").replace(pair, (_, left: string) => left + answer);
  return lines.join("\n");
}

/** Typing: letters at one place, then an answer taken from another pair or a careless edit. */
const typing: fc.Arbitrary<Edit[]> = fc
  .tuple(
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.array(fc.constantFrom("a", "é", " ", "=", "/", "*", "\n"), { maxLength: 6 }),
    fc.array(fc.tuple(fc.nat({ max: 30 }), fc.nat({ max: 30 })), { maxLength: 3 }),
    fc.option(changes, { nil: [], freq: 2 }),
  )
  .map(([at, letters, answers, careless]) => [
    ...letters.map(
      (put): Edit =>
        (text) =>
          edited(text, { at, length: 0, text: put, how: "insert" }),
    ),
    ...answers.map(
      ([from, to]): Edit =>
        (text) =>
          copiedAnswer(text, from, to),
    ),
    ...careless.map(
      (change): Edit =>
        (text) =>
          edited(text, change),
    ),
  ]);

describe(`what is kept (${runs} sequences of edits, seed ${seed})`, function () {
  this.timeout(0);

  it("changes no finding, deal or proof", async () => {
    const workshop = await testWorkshop();
    const read = (engine: Workshop, text: string): Reading => engine.read({ name: "unit", text }, nothingAround);
    const law = fc.asyncProperty(fc.constantFrom(...seedTexts), typing, async (start, edits) => {
      let text = start;
      read(workshop, text);
      for (const edit of edits) {
        text = edit(text);
        read(workshop, text);
      }
      const fresh = await freshWorkshop();
      assert.notEqual(fresh.constructor, workshop.constructor, "the engine was not loaded afresh");
      assert.deepEqual(said(read(workshop, text)), said(read(fresh, text)));
    });
    await fc.assert(law, { seed, numRuns: runs, includeErrorInReport: true });
  });

  const pairs = Array.from({ length: 20 }, (_, i) => `- o ${word(i)} = the ${word(i + 200)}\n`);
  const unit = (items: readonly string[], options: string): string =>
    `## Words\n\n${items.join("")}\n\`\`\`activity\nmake: ${options}\n\`\`\`\n`;
  const tiles = (items: readonly string[]): string => unit(items, "tiles\ngrid: 3 x 3\ndecoys: 4\nsize: 60");
  const longer = (at: number): readonly string[] =>
    pairs.map((pair, i) => (i === at ? pair.replace("\n", " over there by the door\n") : pair));
  const table = "\n|    | abrir |\n| -- | ----- |\n| eu | abro  |\n| tu | abres |\n";
  const decoyed = (last: string, forms = ""): string => {
    const own = [...pairs.slice(1, 7), last, forms].join("");
    const block = "\n```activity\nmake: tiles\ngrid: 2 x 3\ndecoys: 4\n```\n\n";
    return `## Words\n\n${own}\n${block}## More\n\n${pairs.slice(7).join("")}`;
  };
  const linked = (more: string): string =>
    `${unit(["- [casa][a] = the house\n", "- casá = the home\n", ...pairs.slice(0, 6)], "loop")}\n## More\n\n${more}\n`;
  // An activity above, and below it a section that is edited.
  const above = (options: string, below: string, own = pairs.slice(0, 8).join("")): string =>
    `## Words\n\n${own}\n\`\`\`activity\nmake: ${options}\n\`\`\`\n\n## More\n\n${below}\n`;
  const [more, others] = [pairs.slice(8, 14).join(""), pairs.slice(9, 15).join("")];
  const joining = `- o ${word(0)} = the ${word(201)}\n`;
  const statements = Array.from(
    { length: 8 },
    (_, i) => `- [${i % 4 === 0 ? " " : "x"}] Eu [abro](#abrir) o ${word(i)}.\n`,
  ).join("");
  const events = Array.from({ length: 6 }, (_, i) => `${i + 1}. Ela vê o ${word(i)}.\n`).join("");
  const stations = "```stations\ndesks: 3\nstations: [strips]\n```";
  const examples = pairs.slice(0, 8).map((pair, i) => `${pair}  - O ${word(i)} fica perto.\n`);
  const confusing = Array.from({ length: 8 }, (_, i) => `- o ${word(i)} = the ${word(200 + ((i + 1) % 8))}\n`).join("");
  // Each word has a further gloss there, and each gloss further words: once those two are pairs, none is surely wrong any more.
  const couples = pairs.slice(0, 8).flatMap((_, i) => pairs.slice(0, 8).flatMap((__, j) => (i === j ? [] : [[i, j]])));
  const bridged = (gloss: (i: number, j: number) => number): string =>
    couples.map(([i = 0, j = 0]) => `- o ${word(400 + 8 * i + j)} = the ${word(gloss(i, j))}\n`).join("");
  const further = pairs.slice(0, 8).map((_, i) => `- o ${word(i)} = the ${word(300 + i)}\n`);
  const synonyms = [...further, bridged((_, j) => 200 + j)].join("");
  const bridges = bridged((i) => 300 + i);
  const elsewhere: readonly [what: string, options: string, before: string, after: string, own?: string][] = [
    ["a pair joins two of its answers", "tiles\ngrid: 2 x 3", more, `${more}${joining}`],
    ["a pair joins two of its cards", "loop", more, `${more}${joining}`],
    ["a pair joins two of its words", "board\ngrid: 2 x 4", more, `${more}${joining}`],
    ["pairs join sides that were parted", "sort\nmispair: 4", more, `${more}${confusing}`],
    ["pairs of other words make synonyms of what is sorted", "sort\nmispair: 4", synonyms, `${synonyms}${bridges}`],
    ["decoys come from another section", "tiles\ngrid: 2 x 3\ndecoys: 4", more, others],
    ["hard levels take decoys there", "tiles\ngrid: 2 x 3\nlevels: [gentle, hard]", more, others],
    ["cards that belong nowhere come from there", "loop\ndecoys: 3", more, others],
    ["words that are never called come from there", "board\ngrid: 3 x 4\ndistractors: 4", more, others],
    ["hard boards take words there", "board\ngrid: 3 x 4\ntake: 6\nlevels: [hard]", more, others],
    ["a table makes twins of what is sorted", "sort", "Notes.", table, statements],
    ["a table makes twins of what is called", "calls", "Notes.", table, statements],
    ["a plan lays strips out at desks", "strips", "Notes.", stations, events],
    [
      "a word has its capital there too",
      "rebuild\ncapitals: hide",
      "- a b = c d",
      "- um Mar | de luz = c d",
      "- Mar | de luz | fica. = x y\n",
    ],
    [
      "a word of an example is answered there",
      "board\nshow: gloss\nclue: example\ngrid: 2 x 4",
      more,
      `${more}- fica = the ${word(203)}\n`,
      examples.join(""),
    ],
  ];
  const changed: readonly [what: string, before: string, after: readonly string[]][] = [
    [
      "words become too long for their tiles",
      tiles(pairs),
      [tiles(pairs.map((pair) => pair.replace(/- o (\S+)/, "- o $1-comprido-demais-para-se-ler-na-mesa")))],
    ],
    ["a word becomes several", tiles(pairs), pairs.map((_, i) => tiles(longer(i)))],
    [
      "items stand at the same lines in another way",
      tiles(pairs.map((pair) => pair.replace("\n", " \n"))),
      [tiles(pairs.map((pair) => ` ${pair}`)), tiles(pairs.map((pair) => pair.replace("- ", "-  ")))],
    ],
    [
      "a fix was tried that takes an answer out",
      decoyed(`- o ${word(0)} = the ${word(200)} / the ${word(201)}\n`),
      [decoyed(pairs[0] ?? "")],
    ],
    [
      "a fix was tried in a section with a forms table",
      decoyed(`- o ${word(0)} = the ${word(200)} / the ${word(201)}\n`, table),
      [decoyed(pairs[0] ?? "", table)],
    ],
    ["a link is defined in another section", linked("Notes."), [linked("[a]: #words")]],
    ...elsewhere.flatMap(([what, options, before, after, own]): (typeof changed)[number][] => [
      [what, above(options, before, own), [above(options, after, own)]],
      [`${what} no more`, above(options, after, own), [above(options, before, own)]],
    ]),
    ["a circle gets one more card", unit(pairs, "loop\ntake: 8\ndecoys: 1"), [unit(pairs, "loop\ntake: 8\ndecoys: 2")]],
  ];
  for (const [what, before, after] of changed) {
    it(`is not taken where ${what}`, async () => {
      const [workshop, fresh] = [await testWorkshop(), await freshWorkshop()];
      const read = (engine: Workshop, text: string): unknown =>
        said(engine.read({ name: "unit", text }, nothingAround));
      for (const text of after) {
        read(workshop, before);
        assert.deepEqual(read(workshop, text), read(fresh, text));
      }
    });
  }

  const words = `${pairs.slice(0, 12).join("")}- ![a bell](bell.png) = a bell that rings\n`;
  const two = `## Words\n\n${words}\n\`\`\`activity\nmake: tiles\ndecoys: 2\n\`\`\`\n\n\`\`\`activity\nmake: loop\ntake: 8\n\`\`\`\n`;
  const borrowing = "## Own\n\n- o mar = the sea\n\n```activity\nmake: tiles\nfrom: [Own, b.unit.md#Words]\n```\n";
  const [flat, tall] = [png([[0, 90, 180, 255]]), png([[0], [90], [180]])];
  const lying = (more: Partial<Surroundings>): Surroundings => ({ ...nothingAround, ...more });
  const units = (text: string): Surroundings => lying({ units: new Map([["b.unit.md", `## Words\n\n${text}`]]) });
  const surroundings: readonly [what: string, text: string, around: readonly Surroundings[]][] = [
    ["a picture", two, [flat, tall, flat].map((bytes) => lying({ pictures: new Map([["bell.png", bytes]]) }))],
    [
      "a picture, which goes and comes back",
      two,
      [
        lying({ pictures: new Map([["bell.png", tall]]) }),
        lying({}),
        lying({ pictures: new Map([["bell.png", tall]]) }),
      ],
    ],
    [
      "another unit",
      borrowing,
      [units(pairs.slice(0, 8).join("")), units(pairs.slice(1, 9).join("")), units(longer(2).slice(0, 8).join(""))],
    ],
    [
      "a settings file",
      two,
      ["explains: de", "explains: en", "seed: 9"].map((text) =>
        lying({ settings: [{ path: "cutwork.yml", text: `${text}\n` }] }),
      ),
    ],
  ];
  const made = async (engine: Workshop, reading: Reading): Promise<unknown> => {
    const files = engine.blockers(reading).length > 0 ? [] : await engine.make(reading, { trial: true });
    return files.map(({ name, bytes }) => [name, createHash("sha256").update(bytes).digest("hex")]);
  };
  for (const [what, text, arounds] of surroundings) {
    it(`says and prints what lies around it now, also where that was another before: ${what}`, async () => {
      const [workshop, fresh] = [await testWorkshop(), await freshWorkshop()];
      const seen = new Set<string>();
      for (const around of arounds) {
        const [kept, anew] = [workshop, fresh].map((engine) => engine.read({ name: "unit", text }, around)) as [
          Reading,
          Reading,
        ];
        assert.deepEqual(said(kept), said(anew));
        const files = await made(workshop, kept);
        assert.deepEqual(files, await made(fresh, anew));
        seen.add(JSON.stringify([said(kept), files]));
      }
      assert.ok(seen.size > 1, "what lies around changes something");
    });
  }

  it("prints again what was printed, whatever was read in between", async () => {
    const [workshop, fresh] = [await testWorkshop(), await freshWorkshop()];
    const read = (engine: Workshop, text: string, pieces?: string): Reading =>
      engine.read(
        { name: "unit", text },
        lying({ pictures: new Map([["bell.png", tall]]), ...(pieces ? { pieces } : {}) }),
      );
    const first = await workshop.make(read(workshop, two), {});
    const pieces = new TextDecoder().decode(first.find(({ name }) => name.endsWith(".json"))?.bytes);
    for (const text of [two.replace(word(3), `${word(3)}s`), two.replace("take: 8", "take: 9"), two]) {
      const [kept, anew] = [read(workshop, text, pieces), read(fresh, text, pieces)];
      assert.deepEqual(said(kept), said(anew));
      assert.deepEqual(await made(workshop, kept), await made(fresh, anew));
    }
  });
});
