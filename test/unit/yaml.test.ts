import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";
import { applyEdits } from "../support/units";

/*
 * Options that YAML reads otherwise than they were meant: one problem for each cause, and its fix makes the text what was meant.
 */

const block = (options: string): string => `## Rodas\n\n- roda = wheel\n\n\`\`\`activity\n${options}\n\`\`\`\n`;

/** Written, the options that were meant, and the places that are told. */
const meant: readonly (readonly [written: string, wanted: string, ...told: string[]])[] = [
  ["from: Roda #3", 'from: "Roda #3"', "Roda #3"],
  ["from: #3", 'from: "#3"', "#3"],
  ["from: [Roda #3, Selim]", 'from: ["Roda #3", Selim]', "Roda #3"],
  ["from: [Selim, Roda #3]", 'from: [Selim, "Roda #3"]', "Roda #3"],
  ["from:\n  - Roda #3\n  - Selim", 'from:\n  - "Roda #3"\n  - Selim', "Roda #3"],
  ["title: Volta #2 # a minha", 'title: "Volta #2" # a minha', "Volta #2"],
  ["directions:\n  en: Take card #3", 'directions:\n  en: "Take card #3"', "Take card #3"],
  ["from: *S", 'from: "*S"', "*S"],
  ["from: [*S, &T]", 'from: ["*S", "&T"]', "*S", "&T"],
  ["title: !S", 'title: "!S"', "!S"],
  ["title: & Filhos", 'title: "& Filhos"', "& Filhos"],
  ["make: loop\n---\nseed: 2", "make: loop\nseed: 2", "---"],
  ["make: loop\n...\nseed: 2", "make: loop\nseed: 2", "..."],
  ["make: loop\n...\nfrom:\n\t- A", "make: loop\nfrom:\n  - A", "...", "\t"],
  ["make:loop", "make: loop", ":"],
  ['title: "Volta" # or "Roda"\nmake:loop', 'title: "Volta" # or "Roda"\nmake: loop', ":"],
  ["title: Volta\n  a = b\nmake:loop", "title: Volta\n  a = b\nmake: loop", ":"],
  ['title: "Volta\n  a = b"\nmake:loop', 'title: "Volta\n  a = b"\nmake: loop', ":"],
  ["make:loop\nfrom:Rodas\nseed: 2", "make: loop\nfrom: Rodas\nseed: 2", ":", ":"],
  ["make loop", "make: loop", "make"],
  ["make: loop\ntake 4\nseed: 2", "make: loop\ntake: 4\nseed: 2", "take"],
  ["make   loop", "make:   loop", "make"],
  ["make: tiles\ngrid 3 x 3\nseed: 2", "make: tiles\ngrid: 3 x 3\nseed: 2", "grid"],
  ["make: tiles\nseed: 2\nturn fixed", "make: tiles\nseed: 2\nturn: fixed", "turn"],
  ["make = loop", "make: loop", " = "],
  ["make = loop\nfrom = Rodas", "make: loop\nfrom: Rodas", " = ", " = "],
  ["make：loop\nseed: 2", "make: loop\nseed: 2", "："],
  ["- make: loop", "make: loop", "-"],
  ["- make: loop\n- seed: 2", "make: loop\nseed: 2", "-"],
  ["- make: loop\n  seed: 2", "make: loop\nseed: 2", "-"],
  ["loop", "make: loop", "loop"],
  ["loop\nseed: 2", "make: loop\nseed: 2", "loop"],
  ["make: loop\n\tseed: 2", "make: loop\nseed: 2", "\t"],
  ["from:\n\t- A\n\t- B", "from:\n  - A\n  - B", "\t"],
  ['title: "Volta\nseed: 2', 'title: "Volta"\nseed: 2', '"Volta'],
  ["title: 'Volta\nseed: 2", "title: 'Volta'\nseed: 2", "'Volta"],
  ["title: 'It's'\nseed: 2", 'title: "It\'s"\nseed: 2', "'It's'"],
  ['title: "He "x" it"\nseed: 2', "title: 'He \"x\" it'\nseed: 2", '"He "x" it"'],
  ["from: [A, B\nseed: 2", "from: [A, B]\nseed: 2", "[A, B"],
  ["from: {S\nseed: 2", 'from: "{S"\nseed: 2', "{S"],
  ["make: tiles, grid: 2 x 2", "make: tiles\ngrid: 2 x 2", "grid"],
  ["make: tiles; grid: 2 x 2 ;seed: 3", "make: tiles\ngrid: 2 x 2\nseed: 3", "grid"],
  ["make: tiles grid: 2 x 2 seed: 3", "make: tiles\ngrid: 2 x 2\nseed: 3", "grid"],
  ["make: tiles\ngrid: 2 x 2, seed: 3", "make: tiles\ngrid: 2 x 2\nseed: 3", "seed"],
  ["make: tiles\n  grid: 2 x 2", "make: tiles\ngrid: 2 x 2", "  "],
  ["  make: tiles\ngrid: 2 x 2", "make: tiles\ngrid: 2 x 2", "  "],
  ["make: tiles\n  grid: 2 x 2\n  seed: 3", "make: tiles\ngrid: 2 x 2\nseed: 3", "  "],
  ["  make: tiles\ndecoys:\n  - S\ngrid: 2 x 2", "make: tiles\ndecoys:\n  - S\ngrid: 2 x 2", "  "],
  ["from: - A\nseed: 2", "from: A\nseed: 2", "- A"],
  ["from: - A\n      - B\nseed: 2", "from:\n      - A\n      - B\nseed: 2", "- A"],
];

/** What is read as it was meant. */
const quiet: readonly string[] = [
  "seed: 3 #chosen",
  "seed: 3 # chosen",
  "title: Volta # draft",
  "title: Volta  #draft",
  'title: "Volta #2"',
  'title: "Volta\n  a #2 b"',
  "title: |\n  Volta #2\n  *S",
  "title: C#",
  'from: ["Roda #3", Selim] # two',
  "---\nmake: loop\n---",
  "make: loop\n...",
  "from: [A,\n  B]",
];

describe("options that YAML reads otherwise", () => {
  for (const [written, wanted, ...told] of meant) {
    for (const newline of ["\n", "\r\n"]) {
      it(JSON.stringify(written.replaceAll("\n", newline)), () => {
        const text = block(written).replaceAll("\n", newline);
        const { problems, activities } = readUnit(text);
        assert.deepEqual(
          problems.map(({ code, range }) => [code, text.slice(range.start, range.end)]),
          told.map((place) => ["unreadable-yaml", place]),
        );
        assert.equal(activities[0]?.options.broken, true);
        const edits = problems.flatMap(({ fixes: [fix] }) => fix?.edits ?? []);
        const mended = applyEdits(text, edits);
        assert.equal(mended.replaceAll("\r\n", "\n"), block(wanted));
        const after = readUnit(mended);
        assert.deepEqual(after.problems, []);
        // What was meant is known already while the text is still wrong.
        const values = (unit: typeof after) =>
          unit.activities[0]?.options.entries.map(({ key, value }) => [key, value]);
        assert.deepEqual(values(readUnit(text)), values(after));
      });
    }
  }

  it("puts no colon behind a word of a text that goes on in the next line", () => {
    const text = block("make: loop\ndirections:\n  en: Take a card\n  on the table\nseed: 2");
    const { problems } = readUnit(text);
    assert.deepEqual(
      problems.map(({ code, range, fixes }) => [code, text.slice(range.start, range.end), fixes.length]),
      [["unreadable-yaml", "on the table", 0]],
    );
    const own = block("make: tiles\ndirections:\n  en: Take a card\n  turn fixed");
    assert.deepEqual(
      readUnit(own).problems.map(({ fixes }) => fixes),
      [[]],
    );
  });

  for (const written of quiet) {
    it(`is quiet: ${JSON.stringify(written)}`, () => {
      assert.deepEqual(readUnit(block(written)).problems, []);
    });
  }
});

describe("numbers that YAML reads as others", () => {
  for (const [written, wanted, told] of [
    ["seed: 0x1F", "seed: 31", "0x1F"],
    ["seed: 1.000 # of them", "seed: 1000 # of them", "1.000"],
    ["copies: {7A: 0o17, 7B: 3}", "copies: {7A: 15, 7B: 3}", "0o17"],
    ["blanks: 1e1\ntake: 012", "blanks: 10\ntake: 012", "1e1"],
  ] as const) {
    it(JSON.stringify(written), () => {
      const text = block(written);
      const { problems, activities } = readUnit(text);
      assert.deepEqual(
        problems.map(({ code, range }) => [code, text.slice(range.start, range.end)]),
        [["unreadable-yaml", told]],
      );
      assert.equal(activities[0]?.options.broken, undefined, "all is read");
      assert.equal(applyEdits(text, problems[0]?.fixes[0]?.edits ?? []), block(wanted));
      assert.deepEqual(readUnit(block(wanted)).problems, []);
    });
  }

  it("leaves other numbers and texts alone", () => {
    for (const options of ["minutes: 7.5", "seed: 012", "seed: +3", "title: 0x1F", "margin: 5.250", "# seed: 0x1F"])
      assert.deepEqual(readUnit(block(options)).problems, [], options);
  });
});
