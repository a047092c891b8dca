import assert from "node:assert/strict";
import { parse } from "yaml";
import { kinds } from "../../src/activities/kinds";
import { yamlText } from "../../src/editor/completion/options";
import { settingsBlock } from "../../src/editor/completion/spot";
import {
  describe as describeOption,
  type Known,
  optionAt,
  suggestAt,
  unitsAt,
} from "../../src/editor/completion/suggest";
import { readUnit } from "../../src/unit/read";

/** Every kind that is registered is offered. */
const kindNames = kinds.map(({ name }) => name as string).sort();

const sections = ["At the counter", "The morning", "12", "o disco, a mochila", "Notes: mine"];

/** Sections of these names that hold nothing. */
const known = (names: readonly string[]): Known => ({
  sections: names.map((name) => ({ name, range: { start: -1, end: -1 }, piles: [] })),
});

/** What is offered at the `‸`. */
function at(marked: string, names: Known = known(sections)) {
  const offset = marked.indexOf("‸");
  const text = marked.replace("‸", "");
  const suggestions = suggestAt(text, offset, names);
  return {
    labels: suggestions.map(({ label }) => label),
    /** The text once a suggestion is taken. */
    taken: (label: string): string => {
      const chosen = suggestions.find((suggestion) => suggestion.label === label);
      assert.ok(chosen, `${label} is not offered`);
      return text.slice(0, chosen.start) + chosen.insert + text.slice(chosen.end);
    },
    suggestions,
  };
}

const block = (body: string): string =>
  `---\ntitle: A\n---\n\n## One\n\n- a = b\n\n\`\`\`activity\n${body}\n\`\`\`\n\nmake: ‹prose›\n`;

describe("completion in an activity block", () => {
  it("offers the options that are not there yet, with what they do", () => {
    const { labels, suggestions } = at(block("make: tiles\n‸\ncopies: 3"));
    assert.ok(labels.includes("grid"));
    assert.ok(labels.includes("seed"));
    assert.ok(!labels.includes("make"));
    assert.ok(!labels.includes("copies"));
    assert.match(suggestions.find(({ label }) => label === "seed")?.documentation ?? "", /Default: `1`/);
  });

  it("keeps to its own block below one that is not closed yet", () => {
    const text = "## A\n\n```activity\nmake: tiles\n‹\n\n## B\n\n```activity\n›\n```\n";
    const first = at(text.replace("‹", "‸").replace("›", "make: sort")).labels;
    assert.ok(first.includes("grid") && !first.includes("make") && !first.includes("piles"));
    const second = at(text.replace("‹", "").replace("›", "make: sort\n‸")).labels;
    assert.ok(second.includes("piles") && !second.includes("make") && !second.includes("grid"));
    assert.ok(at(text.replace("‹", "").replace("›", "‸")).labels.includes("make"));
    assert.deepEqual(at("````md\n```activity\n‸\n```\n````\n").labels, []);
  });

  it("puts a colon behind a key, but not a second one", () => {
    assert.match(at(block("make: tiles\ngr‸")).taken("grid"), /\ngrid: \n/);
    assert.match(at(block("make: tiles\ngr‸id: 3 x 3")).taken("fill"), /\nfill: 3 x 3\n/);
    assert.match(at(block("make: tiles\ngr‸: 3 x 3")).taken("grid"), /\ngrid: 3 x 3\n/);
  });

  it("offers kinds, choices and examples", () => {
    assert.deepEqual([...at(block("make: ‸")).labels].sort(), kindNames);
    assert.deepEqual(at(block("make: tiles\nturn: ‸")).labels, ["free", "fixed"]);
    assert.ok(at(block("make: tiles\ngrid: 3‸")).labels.includes("4 x 4"));
  });

  it("replaces the whole value that is being typed", () => {
    assert.match(at(block("make: tiles\nturn: fr‸ee # why")).taken("fixed"), /\nturn: fixed # why\n/);
    assert.match(at(block("make: tiles\ngrid: 3 ‸x 3")).taken("4 x 4"), /\ngrid: 4 x 4\n/);
  });

  it("offers sections, quoted where YAML would misread them", () => {
    const { labels, taken } = at(block("make: tiles\nfrom: ‸"));
    assert.deepEqual(labels, sections);
    assert.match(taken("At the counter"), /from: At the counter\n/);
    assert.match(taken("12"), /from: "12"\n/);
    assert.match(taken("o disco, a mochila"), /from: o disco, a mochila\n/);
    assert.match(taken("Notes: mine"), /from: "Notes: mine"\n/);
  });

  it("offers the items of a list that are not in it yet", () => {
    const flow = at(block("make: tiles\nfrom: [At the counter, ‸, 'The morning']"));
    assert.deepEqual(flow.labels, ["12", "o disco, a mochila", "Notes: mine"]);
    assert.match(flow.taken("o disco, a mochila"), /from: \[At the counter, "o disco, a mochila", 'The morning'\]/);
    const dashes = at(block("make: tiles\nfrom:\n  - At the counter\n  - ‸\n  - 12"));
    assert.deepEqual(dashes.labels, ["The morning", "o disco, a mochila", "Notes: mine"]);
    assert.deepEqual(at(block("make: tiles\nlevels: [gentle, ‸]")).labels, ["hard"]);
    assert.deepEqual(at(block("make: tiles\nlevels: ‸")).labels, ["[gentle, hard]", "[gentle]", "[hard]"]);
  });

  it("says nothing in comments, after a closed list, in unknown options", () => {
    for (const body of ["make: tiles # t‸", "levels: [gentle] ‸", "nothing: ‸", "# ‸"]) {
      assert.deepEqual(at(block(body)).labels, [], body);
    }
  });

  it("works in a block that is not closed yet, with tildes and with Windows line endings", () => {
    assert.deepEqual([...at("## A\n\n~~~activity\nmake: ‸").labels].sort(), kindNames);
    assert.deepEqual([...at("## A\r\n\r\n```activity\r\nmake: ‸\r\n```\r\n").labels].sort(), kindNames);
  });
});

describe("completion of names", () => {
  const unit = readUnit(
    "## Articles\n\n### o\n- disco\n### a, as\n- conta\n### o\n- sal\n\n## More\n\n### um\n- fio\n\n## Words\n\n- a = b\n",
  );
  const names: Known = {
    sections: unit.sections,
    activities: ["Articles – sort", "sort", "board", "board"],
    units: new Map([
      ["other.unit.md", undefined],
      ["../a, b.unit.md", ["Mine", "12", "Two: more"]],
    ]),
  };
  const inUnit = (body: string, kind = "activity") => at(`${unit.text}\n\`\`\`${kind}\n${body}\n\`\`\`\n`, names);

  it("of other units: first the file, then its sections", () => {
    const { labels, taken, suggestions } = inUnit("make: tiles\nfrom: ‸");
    assert.deepEqual(labels, ["Articles", "More", "Words", "other.unit.md", "../a, b.unit.md"]);
    assert.match(taken("other.unit.md"), /\nfrom: other\.unit\.md#\n/);
    assert.deepEqual(
      suggestions.map(({ more }) => more),
      [false, false, false, true, true],
    );
    const inside = inUnit("make: tiles\nfrom: ../a, b.unit.md#Mi‸ # mine");
    assert.deepEqual(inside.labels, ["Mine", "12", "Two: more"]);
    assert.match(inside.taken("12"), /\nfrom: \.\.\/a, b\.unit\.md#12 # mine\n/);
    assert.match(inside.taken("Two: more"), /\nfrom: "\.\.\/a, b\.unit\.md#Two: more" # mine\n/);
    assert.deepEqual(inUnit("make: tiles\nfrom: nowhere.unit.md#‸").labels, []);
  });

  it("of other units in a list, in quotation marks where a comma would part them", () => {
    const flow = inUnit("make: tiles\nfrom: [Words, ‸]");
    assert.deepEqual(flow.labels, ["Articles", "More", "other.unit.md", "../a, b.unit.md"]);
    // Left open for the section, which closes it.
    assert.match(flow.taken("../a, b.unit.md"), /from: \[Words, "\.\.\/a, b\.unit\.md#\]/);
    for (const typed of ['"../a, b.unit.md#‸', '"../a, b.unit.md#‸"'])
      assert.match(
        inUnit(`make: tiles\nfrom: [Words, ${typed}, More]`).taken("Mine"),
        /from: \[Words, "\.\.\/a, b\.unit\.md#Mine", More\]/,
      );
    const taken = inUnit('make: tiles\nfrom: ["../a, b.unit.md#Mine", "../a, b.unit.md#‸"]');
    assert.deepEqual(taken.labels, ["12", "Two: more"]);
  });

  it("keeps the quotation marks that are there", () => {
    assert.match(inUnit("make: tiles\nfrom: 'Wo‸'").taken("Words"), /from: 'Words'\n/);
    assert.match(inUnit('make: tiles\nfrom: ["Wo‸", More]').taken("Words"), /from: \["Words", More\]/);
    assert.match(inUnit('make: tiles\nfrom:\n  - "Wo‸"').taken("Words"), / {2}- "Words"\n/);
  });

  it("of piles: those of the sections that the block takes", () => {
    assert.deepEqual(inUnit("make: sort\nfrom: Articles\npiles: [‸]").labels, ["o", "a, as"]);
    assert.match(inUnit("make: sort\nfrom: Articles\npiles: [o, ‸]").taken("a, as"), /piles: \[o, "a, as"\]/);
    const both = ["from: [More, Articles]", "from:\n  - Articles\n  - 'More'"];
    for (const from of both)
      assert.deepEqual([...inUnit(`make: sort\n${from}\npiles:\n  - o\n  - ‸`).labels].sort(), ["a, as", "um"]);
    const whole = inUnit("make: sort\nfrom: Articles\npiles: ‸");
    assert.deepEqual(whole.labels, ["auto", "truth", "headings", '[o, "a, as"]']);
    // Without `from` it is the section that the block stands in, of which this one has no piles.
    assert.deepEqual(inUnit("make: sort\npiles: [‸]").labels, []);
  });

  it("of activities in a plan of stations", () => {
    assert.deepEqual(inUnit("stations: [‸]", "stations").labels, ["Articles – sort", "sort", "board"]);
    assert.deepEqual(inUnit("stations:\n  - board\n  - ‸", "stations").labels, ["Articles – sort", "sort"]);
    assert.deepEqual(inUnit("stations: ‸", "stations").labels, ["[Articles – sort, sort, board]"]);
  });

  it("asks for other units only where they can be named", () => {
    const asks = (marked: string) => {
      const offset = marked.indexOf("‸");
      return unitsAt(marked.replace("‸", ""), offset);
    };
    assert.deepEqual(asks(block("make: tiles\nfrom: ‸")), {});
    assert.deepEqual(asks(block("make: tiles\nfrom: [A, '../o.unit.md#‸']")), { path: "../o.unit.md" });
    for (const body of ["make: ‸", "make: sort\npiles: [‸]", "‸"]) assert.equal(asks(block(body)), undefined, body);
  });
});

describe("completion in a `cutwork.yml`", () => {
  const labels = (marked: string): readonly string[] => {
    const text = marked.replace("‸", "");
    return suggestAt(text, marked.indexOf("‸"), { sections: [] }, settingsBlock(text)).map(({ label }) => label);
  };

  it("offers what may stand there, with its values", () => {
    assert.ok(labels("‸").includes("teaches"));
    assert.ok(!labels("‸").includes("title"));
    assert.deepEqual(labels("teaches: pt\npaper: ‸\n"), ["A4", "Letter"]);
    assert.ok(!labels("paper: A4\n‸").includes("paper"));
    assert.equal(optionAt("paper: A4", 2, settingsBlock("paper: A4"))?.option.key, "paper");
  });
});

describe("completion at the very beginning", () => {
  it("takes the place of nothing in another line", () => {
    for (const text of ["\n", "\npaper: A4\n", "\r\npaper: A4\r\n"]) {
      const offers = suggestAt(text, 0, { sections: [] }, settingsBlock(text));
      assert.ok(offers.length > 0);
      for (const { start, end } of offers) assert.deepEqual([start, end], [0, 0]);
    }
  });
});

describe("completion elsewhere", () => {
  it("offers the front matter's own options", () => {
    const { labels } = at("---\ntitle: A\n‸\n---\n");
    assert.ok(labels.includes("teaches"));
    assert.ok(labels.includes("paper"));
    assert.ok(!labels.includes("grid"));
    assert.deepEqual(at("---\npaper: ‸\n---\n").labels, ["A4", "Letter"]);
  });

  it("stays out of prose, of other fences and of the fence lines", () => {
    const places = [
      "## A‸\n",
      "- a = ‸\n",
      "```yaml\nmake: ‸\n```\n",
      "```activity‸\n```\n",
      "```activity\nmake: tiles\n```\nma‸\n",
      "````\n```activity\nmake: ‸\n```\n````\n",
      "Text\n---\nti‸\n---\n",
    ];
    for (const place of places) assert.deepEqual(at(place).labels, [], JSON.stringify(place));
  });
});

describe("hover", () => {
  it("explains the option under the pointer", () => {
    const text = block("make: tiles\nfill: words");
    const found = optionAt(text, text.indexOf("fill") + 2);
    assert.equal(found?.option.key, "fill");
    assert.equal(text.slice(found?.start, found?.end), "fill");
    assert.ok(found);
    assert.match(describeOption(found.option), /- `blank`: .+\n\nDefault: `words`$/s);
  });

  it("is silent over values and prose", () => {
    const text = block("make: tiles\nfill: words");
    assert.equal(optionAt(text, text.indexOf("words") + 1), undefined);
    assert.equal(optionAt(text, text.indexOf("- a")), undefined);
  });
});

describe("names in YAML", () => {
  const names = [
    ...[
      "At the counter",
      "12",
      "1.10",
      "null",
      "#3",
      "a: b",
      "a #b",
      "yes",
      "O disco, a mochila",
      "- a",
      "~",
      "",
      " a",
    ],
    ...[
      "'a'",
      '"a"',
      "a'b",
      "[a]",
      "{a}",
      "*a",
      "&a",
      "!a",
      "%a",
      "@a",
      "`a`",
      "a:",
      "0x1F",
      "1e3",
      ".inf",
      "true",
      "No",
    ],
    ...[
      "2026-01-02",
      "12:30",
      "a\\b",
      "日本, 語",
      "=",
      "a\tb",
      "?",
      "1_000",
      "+1",
      "-",
      "--- a",
      "über",
      "a, b",
      "3 x 4",
    ],
  ];
  for (const name of names) {
    it(`${JSON.stringify(name)} reads back`, () => {
      assert.deepEqual(parse(`from: ${yamlText(name, false)}`), { from: name });
      assert.deepEqual(parse(`from: [${yamlText(name, true)}]`), { from: [name] });
    });
  }

  it("are quoted only where they must be", () => {
    for (const name of ["At the counter", "O disco, a mochila", "über", "3 x 4"])
      assert.equal(yamlText(name, false), name);
  });
});
