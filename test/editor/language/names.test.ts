import assert from "node:assert/strict";
import { filesOf, mentionAt, mentionsOf } from "../../../src/editor/language/names/mentions";
import { keyOf, type Mention, type World } from "../../../src/editor/language/names/named";
import { applied, rename } from "../../../src/editor/language/names/rename";
import { readUnit } from "../../../src/unit/read";
import { slice } from "../../support/units";

const verbs = `## Verbs <!-- allow same-section: on purpose -->

|     | medir   | to bring | x\\|y |
| --- | ------- | -------- | ---- |
| eu  | meço    | trago    | a    |
| ela | mede    | traz     | b    |
| você | mede   | traz     | c    |

## More verbs

|    | medir |
| -- | ----- |
| eu | meço  |

## Story, **first** part

- [x] Ela [traz](<#to bring> "ela") o pão.
- [ ] Eu [meço](#Verbs/medir) a conta.
- [x] Eu [meço](<#More verbs/medir>) a conta.

### o
- disco

### a
- mochila

### o
- copo

\`\`\`activity
make: tiles
from: ["Story, first part", Verbs]
\`\`\`

\`\`\`activity
make: tiles
from: Verbs
\`\`\`

\`\`\`activity
make: tiles
from:
  - 'Verbs'
  - Nowhere
\`\`\`
`;

const other = `## Mine

- a = b

\`\`\`activity
make: tiles
from: [verbs.unit.md#Verbs, "verbs.unit.md#Story, first part", Mine]
\`\`\`
`;

function world(texts: Record<string, string>): World {
  return {
    units: new Map(Object.entries(texts).map(([file, text]) => [file, readUnit(text)])),
    resolve: (_, path) => path,
  };
}

const both = { "verbs.unit.md": verbs, "other.unit.md": other };

function at(near: string, add = 0, texts: Record<string, string> = both, file = "verbs.unit.md"): Mention | undefined {
  return mentionAt(world(texts), file, (texts[file] ?? "").indexOf(near) + add);
}

function sites(mention: Mention | undefined): string[] {
  assert.ok(mention);
  return mentionsOf(world(both), mention.named).map(({ file, range, defines }) => {
    const text = file === "verbs.unit.md" ? verbs : other;
    const line = readUnit(text).lines.lineAt(range.start) + 1;
    return `${file[0]}${line} ${slice(text, range)}${defines ? " *" : ""}`;
  });
}

/** The units after a renaming, or the refusal. */
function renamed(mention: Mention | undefined, name: string, texts: Record<string, string> = both) {
  assert.ok(mention);
  const result = rename(world(texts), mention.named, name);
  if ("refusal" in result) return result.refusal;
  return Object.fromEntries(
    Object.entries(texts).map(([file, text]) => [file, applied(text, result.edits.get(file) ?? [])]),
  );
}

/** Lines that are not as they were. */
function changes(result: string | Record<string, string>, texts: Record<string, string> = both): string[] {
  if (typeof result === "string") return [result];
  return Object.entries(result).flatMap(([file, text]) => {
    const before = (texts[file] ?? "").split("\n");
    return text.split("\n").filter((line, i) => line !== before[i]);
  });
}

describe("definition and references", () => {
  it("of a section: its heading, `from` in all forms, ties, other units", () => {
    const wanted = ["v1 Verbs *", "v32 Verbs", "v37 Verbs", "v43 Verbs", "v18 Verbs", "o7 Verbs"];
    for (const mention of [at("Verbs <!"), at("Verbs]"), at("'Verbs'", 3), at("#Verbs/medir", 3)])
      assert.deepEqual(sites(mention), wanted);
    assert.deepEqual(sites(at("#Verbs", 2, both, "other.unit.md")), wanted);
    assert.deepEqual(sites(at("Story, **")), [
      "v15 Story, **first** part *",
      "v32 Story, first part",
      "o7 Story, first part",
    ]);
  });

  it("of a section behind the sign of another unit, with and without space", () => {
    const spaced = other.replace("verbs.unit.md#Verbs", "verbs.unit.md#  Verbs");
    const texts = { "verbs.unit.md": verbs, "other.unit.md": spaced };
    const mention = mentionAt(world(texts), "other.unit.md", spaced.indexOf("#  Verbs") + 4);
    assert.equal(mention && slice(spaced, mention.range), "Verbs");
    assert.deepEqual(mention?.named, at("Verbs <!")?.named);
  });

  it("of a column and a person: the table, and the ties that lead to it", () => {
    assert.deepEqual(sites(at("#to bring", 3)), ["v3 to bring *", "v17 to bring"]);
    assert.deepEqual(sites(at("| medir   |", 3)), ["v3 medir *", "v18 medir"]);
    assert.deepEqual(sites(at("More verbs/medir", 13)), ["v11 medir *", "v19 medir"]);
    assert.deepEqual(sites(at('"ela"', 2)), ["v6 ela *", "v17 ela"]);
  });

  it("of a pile: all headings of its name in the section", () => {
    assert.deepEqual(sites(at("### o", 4)), ["v21 o *", "v27 o *"]);
  });

  it("is nothing in plain text, and where a name leads nowhere", () => {
    assert.equal(at("disco", 2), undefined);
    assert.equal(at("Nowhere", 2), undefined);
    assert.equal(at("Story, first", 2, { "verbs.unit.md": "## A\n" }), undefined);
  });

  it("keeps two sections of one name apart: the first is the one that is named", () => {
    const text = "## A\n\n- a = b\n\n## A\n\n- c = d\n\n```activity\nmake: tiles\nfrom: A\n```\n";
    const twice = { "verbs.unit.md": text };
    const from = mentionAt(world(twice), "verbs.unit.md", text.lastIndexOf("A\n"));
    const second = mentionAt(world(twice), "verbs.unit.md", text.lastIndexOf("## A") + 3);
    assert.ok(from && second);
    assert.notEqual(keyOf(from.named), keyOf(second.named));
  });
});

const sorting = `## Articles

### o
- disco

### a, as
- conta

### o
- sal

## More

### o
- fio

### um
- dia

## Apart

### o
- pneu

## Sorting

\`\`\`activity
make: sort
from: [Articles, More]
piles: [o, "a, as", 'um']
\`\`\`

\`\`\`activity
make: sort
title: Two piles
from: Articles
piles:
  - o
  - nowhere
\`\`\`

\`\`\`activity
make: board
from: Articles
\`\`\`

\`\`\`stations
stations: [Two piles, "Articles – board", sort, tiles]
\`\`\`
`;
const sorted = { "s.unit.md": sorting };
const inSorting = (near: string, add = 0) => at(near, add, sorted, "s.unit.md");
const sitesOf = (mention: Mention | undefined, texts: Record<string, string> = sorted): string[] => {
  assert.ok(mention);
  return mentionsOf(world(texts), mention.named).map(({ file, range, defines }) => {
    const line = readUnit(texts[file] ?? "").lines.lineAt(range.start) + 1;
    return `${file[0]}${line} ${slice(texts[file] ?? "", range)}${defines ? " *" : ""}`;
  });
};

describe("piles that an activity names", () => {
  const wanted = ["s3 o *", "s9 o *", "s14 o *", "s30 o", "s38 o"];

  it("are the headings of all sections that it sorts", () => {
    for (const mention of [inSorting("### o", 4), inSorting("[o, ", 1), inSorting("  - o", 4)])
      assert.deepEqual(sitesOf(mention), wanted);
    assert.deepEqual(sitesOf(inSorting("'um'", 2)), ["s17 um *", "s30 um"]);
    assert.deepEqual(sitesOf(inSorting('"a, as"', 2)), ["s6 a, as *", "s30 a, as"]);
    // A section that nothing sorts together with the others has a pile of its own.
    assert.deepEqual(sitesOf(inSorting("## Apart\n\n### o", 14)), ["s22 o *"]);
    assert.equal(inSorting("nowhere", 2), undefined);
  });

  it("are headings also in the section that the activity stands in, and not for other kinds", () => {
    const text = "## A\n\n### o\n- a\n\n```activity\nmake: sort\npiles: [o, b]\n```\n";
    assert.deepEqual(sitesOf(at("[o", 1, { "s.unit.md": text }, "s.unit.md"), { "s.unit.md": text }), [
      "s3 o *",
      "s8 o",
    ]);
    const other = text.replace("sort", "board");
    assert.equal(at("[o", 1, { "s.unit.md": other }, "s.unit.md"), undefined);
  });

  it("get a new name everywhere", () => {
    assert.deepEqual(changes(renamed(inSorting("### o", 4), "os, eles", sorted), sorted), [
      "### os, eles",
      "### os, eles",
      "### os, eles",
      `piles: ["os, eles", "a, as", 'um']`,
      "  - os, eles",
    ]);
    assert.deepEqual(changes(renamed(inSorting("'um'", 2), "d'uns", sorted), sorted), [
      "### d'uns",
      "piles: [o, \"a, as\", 'd''uns']",
    ]);
    assert.match(String(renamed(inSorting("### o", 4), "um", sorted)), /has a pile “um” already/);
  });

  it("are followed into other units", () => {
    const texts = {
      "a.unit.md": "## Articles\n\n### o\n- disco\n",
      "b.unit.md":
        "## Mine\n\n### o\n- sal\n\n```activity\nmake: sort\nfrom: [Mine, a.unit.md#Articles]\npiles: [o, a]\n```\n",
    };
    const from = (near: string, add: number, file: string) => at(near, add, texts, file);
    for (const mention of [from("### o", 4, "a.unit.md"), from("### o", 4, "b.unit.md"), from("[o", 1, "b.unit.md")]) {
      assert.deepEqual(sitesOf(mention, texts), ["a3 o *", "b3 o *", "b9 o"]);
      assert.ok(mention);
      assert.deepEqual(filesOf(world(texts), mention.named), ["a.unit.md", "b.unit.md"]);
    }
  });
});

describe("activities that a plan of stations names", () => {
  it("are found by their title and by a kind that there is once", () => {
    assert.deepEqual(sitesOf(inSorting("[Two", 2)), ["s35 Two piles *", "s48 Two piles"]);
    assert.deepEqual(sitesOf(inSorting('"Articles – board"', 2)), ["s42 activity *", "s48 Articles – board"]);
    // Two activities sort, none makes tiles.
    for (const near of [", sort, ", ", tiles]"]) assert.equal(inSorting(near, 4), undefined, near);
    const one = sorting.replace("sort, tiles", "board");
    assert.deepEqual(sitesOf(at(", board]", 4, { "s.unit.md": one }, "s.unit.md"), { "s.unit.md": one }), [
      "s42 activity *",
      "s48 Articles – board",
      "s48 board",
    ]);
  });

  it("get another title in both places, an own one where they had none", () => {
    assert.deepEqual(changes(renamed(inSorting("[Two", 2), "Piles: two", sorted), sorted), [
      'title: "Piles: two"',
      'stations: ["Piles: two", "Articles – board", sort, tiles]',
    ]);
    const own = renamed(inSorting('"Articles – board"', 2), "Touch", sorted);
    assert.ok(typeof own !== "string");
    assert.match(
      own["s.unit.md"] ?? "",
      /from: Articles\ntitle: Touch\n```\n\n```stations\nstations: \[Two piles, "Touch",/,
    );
    assert.match(String(renamed(inSorting("[Two", 2), "Articles – board", sorted)), /has an activity .* already/);
  });

  it("keep being named when the section that gives the title gets another name", () => {
    const result = changes(renamed(inSorting("## Articles", 5), "Words", sorted), sorted);
    assert.deepEqual(result, [
      "## Words",
      "from: [Words, More]",
      "from: Words",
      "from: Words",
      'stations: [Two piles, "Words – board", sort, tiles]',
    ]);
  });
});

describe("rename", () => {
  it("a section everywhere, each place in its own way", () => {
    assert.deepEqual(changes(renamed(at("Verbs <!"), "Verbos: o, a")), [
      "## Verbos: o, a <!-- allow same-section: on purpose -->",
      "- [ ] Eu [meço](<#Verbos: o, a/medir>) a conta.",
      'from: ["Story, first part", "Verbos: o, a"]',
      'from: "Verbos: o, a"',
      "  - 'Verbos: o, a'",
      'from: ["verbs.unit.md#Verbos: o, a", "verbs.unit.md#Story, first part", Mine]',
    ]);
    assert.deepEqual(changes(renamed(at("Verbs <!"), "12")).slice(2, 5), [
      'from: ["Story, first part", "12"]',
      'from: "12"',
      "  - '12'",
    ]);
  });

  it("a section from another unit", () => {
    assert.deepEqual(changes(renamed(at("#Story", 2, both, "other.unit.md"), "Story")), [
      "## Story",
      'from: ["Story", Verbs]',
      'from: [verbs.unit.md#Verbs, "verbs.unit.md#Story", Mine]',
    ]);
  });

  it("escapes what Markdown would take for its own", () => {
    assert.equal(changes(renamed(at("Story, **"), "*all* of it"))[0], "## \\*all\\* of it");
    assert.equal(changes(renamed(at("| medir   |", 3), "a | b"))[0]?.slice(0, 16), "|     | a \\| b  ");
  });

  it("a column and a person", () => {
    assert.deepEqual(changes(renamed(at("#to bring", 3), "trazer")), [
      "|     | medir   | trazer | x\\|y |",
      '- [x] Ela [traz](#trazer "ela") o pão.',
    ]);
    assert.deepEqual(changes(renamed(at('"ela"', 2), 'ela "a"')), [
      '| ela "a" | mede    | traz     | b    |',
      '- [x] Ela [traz](<#to bring> "ela \\"a\\"") o pão.',
    ]);
  });

  it("a pile at all its headings", () => {
    assert.deepEqual(changes(renamed(at("### o", 4), "os")), ["### os", "### os"]);
  });

  it("lets what named nothing find its section", () => {
    assert.notEqual(typeof renamed(at("Verbs <!"), "Nowhere"), "string");
  });

  it("is refused with a sentence where it cannot be right", () => {
    const refusals: readonly (readonly [Mention | undefined, string, RegExp])[] = [
      [at("Verbs <!"), " ", /needs a name/],
      [at("Verbs <!"), "More verbs", /has a section “More verbs” already/],
      [at("### o", 4), "a", /has a pile “a” already/],
      [at("#to bring", 3), "medir", /has a column “medir” already/],
      [at('"ela"', 2), "eu", /has a row “eu” already/],
      [at("Verbs <!"), "to/from", /cannot be written/],
      [at("#to bring", 3), "a/b", /cannot be written/],
    ];
    for (const [mention, name, sentence] of refusals) assert.match(String(renamed(mention, name)), sentence);
  });

  it("is refused where a tie would no longer say which table it means", () => {
    const text =
      "## A\n\n|  | x |\n|--|--|\n| i | a |\n\n## B\n\n|  | y |\n|--|--|\n| i | b |\n\n## S\n\n- [x] [a](#x) c.\n";
    const mention = at("| y |", 2, { "verbs.unit.md": text });
    assert.match(String(renamed(mention, "x", { "verbs.unit.md": text })), /would mean something else/);
  });
});
