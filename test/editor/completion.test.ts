import assert from "node:assert/strict";
import { parse } from "yaml";
import { kinds } from "../../src/activities/kinds";
import { yamlText } from "../../src/editor/completion/options";
import { describe as describeOption, optionAt, suggestAt } from "../../src/editor/completion/suggest";

/** Every kind that is registered is offered. */
const kindNames = kinds.map(({ name }) => name as string).sort();

const sections = ["At the counter", "The morning", "12", "o disco, a mochila", "Notes: mine"];

/** What is offered at the `‸`. */
function at(marked: string) {
  const offset = marked.indexOf("‸");
  const text = marked.replace("‸", "");
  const suggestions = suggestAt(text, offset, sections);
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
