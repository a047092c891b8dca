import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import * as fc from "fast-check";
import { parseFixture } from "../check/fixture";

/*
 * Texts to read: units put together from the shapes of items and from what is easily mistaken for them, and real units with
 * stretches taken out, put in or doubled.
 */

const words = [
  "pão",
  "bread",
  "o mel",
  "honey",
  "e\u0301te\u0301",
  "n\u0303",
  "שלום",
  "مرحبا",
  "𝒳𝒴",
  "👩‍🍳",
  "水",
  "l'école",
  "a\u00A0b",
  "a\u200Bb",
  "x\u3000y",
  "\u202Eabc",
  "☀",
  "ﬃ",
  "3. Oktober",
  "1.",
  "12",
  "#5",
  "K7",
] as const;

/** Pieces with a meaning of their own in Markdown, in YAML or in a unit. */
const signs = [
  " = ",
  "=",
  " ＝ ",
  "\u00A0=\u00A0",
  " / ",
  "/",
  " ／ ",
  "|",
  " | ",
  "｜",
  "\\|",
  "\\=",
  "\\",
  "`a = b`",
  "`",
  "*b*",
  "**b**",
  "_",
  "__",
  "___",
  "[...]",
  "[x]",
  "[ ] ",
  "[]",
  "[meço](#medir)",
  '[meço](#medir "eu")',
  "[x](<#More verbs/medir>)",
  "[t][ref]",
  "![a spoon](img/spoon.png)",
  "![a](my spoon.png)",
  "![](x.png)",
  "<!-- by: K7 -->",
  "<!-- allow duplicate-answer: meant -->",
  "<!-- allow duplicate-answer -->",
  "<!-- allow nonsense: why -->",
  "<!-- note -->",
  "<!--",
  "-->",
  "<b>",
  "&amp;",
  "&nbsp;",
  ": ",
  " – ",
  " -> ",
  "\t",
  '"',
  "'",
  "„",
  "“",
  ".",
  "...",
  "  ",
  "☐ ",
  "(x) ",
  "[х]",
  "**",
  "*b / c*",
  "**b = c**",
  "![a] (spoon.png)",
  "<!-- by: K7",
  "<!-- by K7 -->",
  "<!-- Allow duplicate-answer - so -->",
  "<old>",
  "<u>b</u>",
  "<br>",
  "~~b~~",
  "a*b c*d",
  "[^1]",
  "/ b",
  "[meço] (#medir)",
  "![[spoon.png]]",
  "[ ... ]",
  "\\_\\_\\_",
  "[F]",
  "[o] ",
  "Falso: A sopa ",
  "** b **",
  "*b *",
  "<!- by: K7 ->",
  "‹!—- note -—›",
  "[meço](medir)",
  "[meço][#medir]",
  "[meço](#medir eu)",
  "[meço]{#medir}",
  "meço(#medir)",
  "[meço](#medir ",
  " .....",
  " -----",
  "Ela sai. (Ela entra.)",
  " → ",
  "Ela | sai.",
  "[a](x.png)",
  "![a][x.png]",
  "![b](y.png)",
  " // ",
  " ¦ ",
  "‖",
  " ═ ",
  "\nEla volta.",
  "\n  Quero pão fresco.",
] as const;

const phrase = fc
  .array(
    fc.oneof(
      { weight: 5, arbitrary: fc.constantFrom(...words) },
      { weight: 2, arbitrary: fc.constantFrom(...signs) },
      { weight: 1, arbitrary: fc.string({ unit: "grapheme", maxLength: 4 }) },
    ),
    { minLength: 0, maxLength: 4 },
  )
  .chain((parts) => fc.constantFrom(" ", " ", "").map((glue) => parts.join(glue)));

const plainWord = fc.constantFrom(...words);

/** What stands behind a bullet. */
const itemText = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(plainWord, plainWord).map(([a, b]) => `${a} = ${b}`) },
  { weight: 3, arbitrary: fc.tuple(phrase, phrase).map(([a, b]) => `${a} = ${b}`) },
  { weight: 2, arbitrary: fc.tuple(phrase, phrase, phrase).map(([a, b, c]) => `${a} | ${b} = ${c}`) },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constantFrom("[x]", "[ ]", "[X]", "[]", "[ x ]"), phrase).map((p) => p.join(" ")),
  },
  { weight: 2, arbitrary: phrase },
);

const bullet = fc.constantFrom(
  "- ",
  "- ",
  "- ",
  "* ",
  "+ ",
  "-",
  "-   ",
  "-      ",
  "-\t",
  "1. ",
  "2. ",
  "7) ",
  "• ",
  "–",
  "− ",
  "",
  "10. ",
  "9.",
  "a. ",
  "-[x] ",
);
const indent = fc.constantFrom("", "", "", "", "  ", "   ", "    ", "\t", " ", "> ");

const listLine = fc.tuple(indent, bullet, itemText).map((parts) => parts.join(""));

const options = fc.constantFrom(
  "make: tiles",
  "make: tile",
  "make: sort",
  "grid: 2 x 2",
  "grid: 3 x 2",
  "grid: auto",
  "grid: 99 x 1",
  "gird: 2 x 2",
  "fill: blank",
  "outer: decoys",
  "decoys: 3",
  "decoys: [pão, xyz, שלום]",
  "levels: [gentle, hard]",
  "levels: [easy]",
  "versions: 2",
  "turn: fixed",
  "turn: free",
  "seed: 2",
  "seed: 1.5",
  "size: 25",
  "size: 200",
  "margin: 3",
  "take: 4",
  "blanks: 2",
  "from: One",
  "from: Oen",
  "from: [One, Two, 3]",
  "from: Bread, butter",
  "from: [Bread, butter]",
  "from: 12",
  "from: #3",
  "from: At: noon",
  "from: other.unit.md#One",
  "from: One #2",
  "from: [One #2, *Two]",
  "from: *One",
  "from: - One",
  "from:One",
  "from: {One}",
  "from: [One",
  "from:\n\t- One\n\t- 12",
  "from:\n  - B: C\n  - Two #2",
  "make = tiles",
  "make：tiles",
  "tiles",
  "- make: tiles",
  "---",
  "...",
  "\tseed: 3",
  "title: 'It's'",
  'title: "open',
  "levels: gentle, hard",
  "title: null",
  "title:",
  "title: ☀",
  "allow:\n  unused-pairs: later",
  "allow: {duplicate-answer: so}",
  "copies: by copier",
  "copies: 0",
  "- list",
  "? a",
  "a: &x 1",
  "b: *x",
  "c: |+\n  text",
  "[",
  "{",
  "'",
  "\t",
  "# comment",
  "",
);

const activity = fc
  .tuple(
    fc.constantFrom("```", "```", "```", "~~~", "````", "   ```", "> ```"),
    fc.constantFrom("activity", "activity", "activity", "activity", "Activity", "activty", "stations", "text", ""),
    fc.array(options, { maxLength: 5 }),
    fc.constantFrom(true, true, true, true, false),
  )
  .map(([fence, name, lines, closed]) => {
    const lead = /^\s*(?:> )?/.exec(fence)?.[0] ?? "";
    const make = lines.some((line) => line.startsWith("make")) ? [] : ["make: tiles"];
    return [
      `${fence}${name}`,
      ...[...make, ...lines].map((line) => lead + line.replaceAll("\n", `\n${lead}`)),
      ...(closed ? [fence] : []),
    ].join("\n");
  });

const heading = fc.constantFrom(
  "## One",
  "## Two",
  "## One",
  "## Bread, butter",
  "## #3",
  "## At: noon",
  "## *Two* <!-- allow unused-pairs: later -->",
  "## <!-- allow unused-pairs -->",
  "##Three",
  "##",
  "### pile",
  "### o",
  "# Title",
  "Under\n---",
  "Under\n===",
  "    ## code",
  "## 水 #",
);

const cell = fc.oneof(phrase, plainWord, fc.constantFrom("", "a \\| b", "`x|y`", "eu", "medir"));
const table = fc
  .tuple(
    fc.array(fc.array(cell, { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
    fc.boolean(),
    fc.boolean(),
  )
  .map(([rows, forms, bare]) => {
    const columns = rows[0]?.length ?? 1;
    const line = (cells: readonly string[]): string => (bare ? cells.join(" | ") : `| ${cells.join(" | ")} |`);
    const [head = [], ...body] = rows;
    const first = forms ? ["", ...head.slice(1)] : head;
    return [line(first), line(Array.from({ length: columns }, () => "---")), ...body.map(line)].join("\n");
  });

const other = fc.oneof(
  phrase,
  fc.constantFrom(
    "===",
    "---",
    "***",
    "<div>\n- a = b\n</div>",
    "<!-- by: K7 -->",
    "<!-- allow duplicate-answer: so -->",
    "<!--\n- a = b",
    "[ref]: #medir",
    "> - a = b",
    "    - a = b",
    "Text:\n2. Ela paga.",
    "10. Ela pede:\n   - a roda\n   - o selim",
    "1. Ela pede:\n   1. a roda\n   2. o selim",
    "- [ ] Ela come.\n - Ela bebe.\n - Ela ri.",
    "- [ ] Ela come.\n  - Ela bebe.\n  - Ela ri.",
    "- a = b\n\n  ```activity\n  make: tiles\n  ```",
    "- a = b\n  ## Two",
    "~~~\nText",
    "| a | b |\n| c | d |",
    "| a | b |\n| --- |\n| c | d |",
    "```\n- a = b\n```",
    "- ```\n  a = b\n  ```",
    "- | a | b |\n  | --- | --- |\n  | c | d |",
    "- a = b\n  | a | b |\n  | --- | --- |\n  | c | d |",
    "- <div>a = b</div>",
    "- [a]: b",
    "- a = b\n  - c\n    - d\n    - e = f",
    "1. a:\n\n- b\n- c\n\n2. d",
    "1. a\n   - b\n     1. c",
    "a = b\nc = d",
    "- a = b\n\n  Ela ri.",
    "- a = b\n  - c\n\n    Ela ri.\n  > d",
    "- [ ] a\n\n  Ela ri.\n\n  Ela lê.",
    "1. a\n\n   Ela ri.\n   > Ela lê.",
    "1. Ela ri.\nEla lê.\n٢. Ela sai.",
    "1.A roda.\n\n2- Ela sai.\n\n٣. a",
    "- [x] a\n٣. b",
    "### o\nroda\nluz",
    "**o**\n\n- a\n\n**a**\n\n- b",
    "a\tb\nc\td",
    "a | b\nc | d",
    "[x] a\n[ ] b",
    "1.) a\n2.) b",
    "a) b\nb) c",
    "> 1. a\n> 2. b",
    "> ```activity\n> make: tiles\n> ```",
    "´´´activity\nmake: tiles\n´´´",
    "    ```activity\n    make: tiles\n    ```",
    "A note\n---",
    "| a | b |\n| --- | --- |\n| c | d | <!-- by: K7 -->\n\n| e <!-- by: K7 --> | f |",
    "o:\n\n- a\n\na:\n\n- b",
    "### o\n- a\nb\n\n### a\n- c\n  d",
    "   medir  pesar\neu  meço  peso\ntu  medes  pesas",
    "       medir  pesar\neu  meço  peso\ntu  medes  pesas",
    "- [ ] Ela sai.\n- Ela entra.",
    "- Ela sai hoje. = a\n  - Hoje | ela sai.",
    "|  | medir |\n| --- | --- |\n| eu | — |\n| tu | [...] |",
    "|  | a | a |\n| --- | --- | --- |\n| b | c | d |\n| b | e | f |",
    "\\",
    "",
  ),
);

const block = fc.oneof(
  { weight: 6, arbitrary: fc.array(listLine, { minLength: 1, maxLength: 6 }).map((lines) => lines.join("\n")) },
  {
    weight: 3,
    arbitrary: fc
      .array(fc.tuple(plainWord, plainWord), { minLength: 4, maxLength: 7 })
      .map((pairs) => pairs.map(([a, b], i) => `- ${a}${i} = ${b}${i}`).join("\n")),
  },
  { weight: 3, arbitrary: heading },
  { weight: 3, arbitrary: activity },
  { weight: 1, arbitrary: table },
  { weight: 2, arbitrary: other },
);

const front = fc
  .tuple(
    fc.constantFrom("", "", "---\n", "---\n", "--- \n", " ---\n", "\n---\n"),
    fc.array(
      fc.constantFrom(
        "title: The café",
        "title: 12",
        "title: null",
        "title:",
        "teaches: pt",
        "explains: en",
        "classes: [24, 27]",
        "classes: many",
        "margin: 6",
        "paper: A4",
        "grid: 2 x 2",
        "seed: 4",
        "severities:\n  unused-pairs: off",
        "severities: {nonsense: error}",
        "title: a: b",
        "title: Unit #3",
        "classes: 24, 27",
        "teaches = pt",
        "[",
        "",
      ),
      { maxLength: 4 },
    ),
    fc.constantFrom("---\n", "---\n", "...\n", "----\n", ""),
  )
  .map(([open, lines, close]) => (open === "" ? "" : `${open}${lines.map((line) => `${line}\n`).join("")}${close}`));

/** A unit put together from shapes, in one of the ways that editors end lines. */
export const builtText: fc.Arbitrary<string> = fc
  .record({
    bom: fc.constantFrom("", "", "", "\uFEFF"),
    front,
    blocks: fc.array(fc.tuple(block, fc.constantFrom("\n\n", "\n\n", "\n\n", "\n", "\n   \n")), {
      minLength: 1,
      maxLength: 8,
    }),
    ending: fc.constantFrom("\n", "\n", "\n", "\r\n", "\r"),
  })
  .map(({ bom, front: head, blocks, ending }) =>
    (bom + head + blocks.map(([text, gap]) => text + gap).join("")).replaceAll("\n", ending),
  );

const root = path.join(__dirname, "../..");
const load = (folder: string): string[] =>
  readdirSync(path.join(root, folder))
    .filter((name) => name.endsWith(".md"))
    .sort()
    .map((name) => parseFixture(readFileSync(path.join(root, folder, name), "utf8")).text);

/** Real units; the one of many solutions is left out, since each reading of it is long. */
export const seedTexts: readonly string[] = [...load("test/check/fixtures"), ...load("samples")].filter(
  (text) => text.length < 4000,
);

const snippet = fc.oneof(
  fc.constantFrom(...signs, ...words, "\n", "\n\n", "\r\n", "- ", "## ", "```\n", "---\n", "    "),
  fc.string({ unit: "binary", maxLength: 3 }),
  itemText,
);

/** A careless edit. */
export interface Change {
  /** Share of the text before it. */
  readonly at: number;
  readonly length: number;
  readonly text: string | undefined;
  readonly how: "delete" | "insert" | "double" | "move";
}

const change: fc.Arbitrary<Change> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.nat({ max: 30 }),
  text: fc.option(snippet, { nil: undefined }),
  how: fc.constantFrom("delete" as const, "insert" as const, "double" as const, "move" as const),
});

export const changes: fc.Arbitrary<Change[]> = fc.array(change, { minLength: 1, maxLength: 4 });

/** A real unit after a few careless edits. */
export const brokenText: fc.Arbitrary<string> = fc
  .tuple(fc.constantFrom(...seedTexts), changes)
  .map(([text, changes]) => changes.reduce(edited, text));

export function edited(text: string, { at, length, text: put, how }: Change): string {
  const start = Math.floor(at * text.length);
  const end = Math.min(text.length, start + length);
  const span = text.slice(start, end);
  if (how === "delete") return text.slice(0, start) + text.slice(end);
  if (how === "insert") return text.slice(0, start) + (put ?? "") + text.slice(start);
  if (how === "double") return text.slice(0, end) + span + text.slice(end);
  return span + text.slice(0, start) + text.slice(end);
}

export const anyText: fc.Arbitrary<string> = fc.oneof(builtText, builtText, brokenText);
