import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";
import type { Pair } from "../../src/unit/unit";
import { slice } from "../support/units";

function pairs(text: string): readonly Pair[] {
  return readUnit(text).sections.flatMap((section) => section.pairs);
}

function only(text: string): Pair {
  const [pair, ...others] = pairs(text);
  assert.ok(pair && others.length === 0, `${others.length + (pair ? 1 : 0)} pairs`);
  return pair;
}

const texts = (answers: readonly { readonly text: string }[]): string[] => answers.map(({ text }) => text);

describe("reading a unit", () => {
  it("reads front matter, sections and activities with their places", () => {
    const text =
      "---\ntitle: Café\nclasses: [24, 27]\n---\n\n# Not a section\n\n## At *the* counter\n\n- a = b\n\n```activity\nmake: tiles\nfrom: [A, 'B c']\n```\n";
    const unit = readUnit(text);
    assert.deepEqual(unit.problems, []);
    assert.deepEqual(
      unit.front.entries.map(({ key, value, valueRange }) => [key, value, slice(text, valueRange)]),
      [
        ["title", "Café", "Café"],
        ["classes", [24, 27], "[24, 27]"],
      ],
    );
    const [section] = unit.sections;
    assert.equal(section?.name, "At the counter");
    assert.equal(section && slice(text, section.heading), "At *the* counter");
    const [activity] = unit.activities;
    assert.ok(activity);
    assert.equal(activity.section, 0);
    assert.equal(slice(text, activity.body), "make: tiles\nfrom: [A, 'B c']\n");
    assert.deepEqual(
      activity.options.entries[1]?.items.map((range) => slice(text, range)),
      ["A", "'B c'"],
    );
    assert.deepEqual(activity.options.entries[1]?.value, ["A", "B c"]);
  });

  it("parts a pair at the first “ = ” and answers at “ / ”, with white space on both sides only", () => {
    const pair = only("## S\n\n- a/b = c=d / e /f / g\n");
    assert.deepEqual(texts(pair.left.answers), ["a/b"]);
    assert.deepEqual(texts(pair.right.answers), ["c=d", "e /f", "g"]);
  });

  it("takes full-width signs and no-break and ideographic spaces", () => {
    const pair = only("## S\n\n- 猫\u3000＝\u3000cat\u00a0/\u00a0kitten ／ puss\n");
    assert.deepEqual(texts(pair.left.answers), ["猫"]);
    assert.deepEqual(texts(pair.right.answers), ["cat", "kitten", "puss"]);
  });

  it("finds no separator in code, links, pictures, comments or behind a backslash", () => {
    const pair = only("## S\n\n- `a = b` [c = d](e) ![f = g](h.png) \\= i <!-- j = k --> = l `m / n` \\/ o\n");
    assert.deepEqual(texts(pair.left.answers), ["a = b c = d = i"]);
    assert.deepEqual(texts(pair.right.answers), ["l m / n / o"]);
  });

  it("takes the comment at the end of an item out of the last answer", () => {
    const text = "## S\n\n- a = b / c <!-- by: K7 -->\n";
    const pair = only(text);
    assert.deepEqual(
      pair.right.answers.map(({ range }) => slice(text, range)),
      ["b", "c"],
    );
  });

  it("cuts the left side at bars; white space round a bar counts once", () => {
    const spaced = only("## S\n\n- Queria | um disco, | por favor. = I'd like | a coffee\n");
    assert.equal(spaced.left.answers[0].text, "Queria um disco, por favor.");
    assert.deepEqual(texts(spaced.left.answers[0].parts), ["Queria", "um disco,", "por favor."]);
    assert.equal(spaced.right.answers[0].text, "I'd like | a coffee");
    const tight = only("## S\n\n- l'|école = school\n");
    assert.equal(tight.left.answers[0].text, "l'école");
    assert.deepEqual(texts(tight.left.answers[0].parts), ["l'", "école"]);
  });

  it("keeps bold and italic, and reads pictures with decoded paths", () => {
    const pair = only("## S\n\n- ![a spoon](img/my%20spoon.png) = the **big** *old* one\n");
    assert.deepEqual(pair.left.answers[0].picture?.path, "img/my spoon.png");
    assert.equal(pair.left.answers[0].text, "a spoon");
    assert.deepEqual(pair.right.answers[0].runs, [
      { text: "the " },
      { text: "big", bold: true },
      { text: " " },
      { text: "old", italic: true },
      { text: " one" },
    ]);
  });

  it("calls a picture by what it shows, or by its path where nothing says that", () => {
    const { left, right } = only("## S\n\n- ![](my%20mast.png) = ![a mast](mast.png) / ![](sail.png) **the sail**\n");
    assert.deepEqual(
      [...left.answers, ...right.answers].map(({ text }) => text),
      ["my mast.png", "a mast", "the sail"],
    );
  });

  it("gives exact places in CRLF files, with a byte order mark, tabs, quotes of other planes and continuation lines", () => {
    const text = "\uFEFF---\r\ntitle: T\r\n---\r\n\r\n## S 🐟\r\n\r\n-\ta 🐟 b =\r\n\te\u0301 c\r\n  - example 🐟\r\n";
    const unit = readUnit(text);
    assert.equal(unit.front.entries[0]?.value, "T");
    const pair = unit.sections[0]?.pairs[0];
    assert.ok(pair);
    assert.equal(slice(text, pair.left.answers[0].range), "a 🐟 b");
    assert.equal(slice(text, pair.right.answers[0].range), "e\u0301 c");
    assert.equal(pair.right.answers[0].text, "e\u0301 c");
    assert.equal(unit.sections[0]?.name, "S 🐟");
  });

  it("gives exact places behind tabs that begin a line, whatever the columns that they fill", () => {
    for (const before of [
      "- a roda\n\tgrande",
      "- a roda\n \tgrande",
      "1. Ela\n\n- a roda\n\t\tgrande",
      "- x\n\n\t- a roda\n\t\tgrande",
    ]) {
      const text = `## S\n\n${before} = the wheel / the ring\n`;
      const found = readUnit(text)
        .sections.flatMap((section) => section.pairs)
        .at(-1);
      if (!found) continue;
      assert.deepEqual(
        found.right.answers.map(({ range }) => slice(text, range)),
        ["the wheel", "the ring"],
        text,
      );
      assert.ok(slice(text, found.left.answers[0].range).endsWith("grande"), text);
    }
    const text = "## S\n\n- a roda\n\tgrande = the wheel\n";
    assert.equal(slice(text, only(text).right.answers[0].range), "the wheel");
  });

  it("reads nested bullets as examples and takes the item with them as one block of lines", () => {
    const text = "## S\n\n- a = b\n  - An a = x.\n\n- c = d\n";
    const [first, second] = pairs(text);
    assert.ok(first && second);
    assert.deepEqual(
      first.examples.map((example) => example.text),
      ["An a = x."],
    );
    assert.equal(slice(text, first.block), "- a = b\n  - An a = x.\n");
    assert.equal(slice(text, second.block), "- c = d\n");
  });

  it("reads statements by the mark right after the bullet, with corrections", () => {
    const text = "## S\n\n- [x] Is = true.\n- [ ] Is\n  false.\n  - Is right.\n- [y] no mark\n- a [x] = b\n";
    const section = readUnit(text).sections[0];
    assert.deepEqual(
      section?.statements.map(({ truth, text: said, correction }) => [truth, said, correction?.text]),
      [
        [true, "Is = true.", undefined],
        [false, "Is false.", "Is right."],
      ],
    );
    assert.equal(section.pairs.length, 1);
    assert.equal(section.statements[0] && slice(text, section.statements[0].mark), "[x]");
  });

  it("leaves notes alone: paragraphs, numbered lists, quotes, items without a shape, items above the first section", () => {
    const unit = readUnit("- a = b\n\n## S\n\nx = y\n\n> - c = d\n\n1. e = f\n\n- only a note\n");
    assert.deepEqual(
      unit.sections.flatMap((section) => section.pairs),
      [],
    );
    assert.deepEqual(
      unit.problems.filter(({ trap }) => !trap),
      [],
    );
  });

  it("names what it cannot read at its place and goes on", () => {
    const text =
      "---\ntitle: [a\n---\n\n## S\n\n- a = b = c\n- d = \n- = e\n- f = / g\n- h = i\n\n```activity\nmake tiles\n```\n";
    const unit = readUnit(text);
    const found = unit.problems.map(({ code, range }) => [code, slice(text, range)]);
    assert.deepEqual(
      found.filter(([code]) => code === "second-equals"),
      [["second-equals", "="]],
    );
    assert.ok(found.filter(([code]) => code === "unreadable-yaml").length >= 2);
    assert.equal(found.filter(([code]) => code === "empty-answer").length, 3);
    assert.deepEqual(
      unit.sections[0]?.pairs.map(({ left }) => left.answers[0].text),
      ["a", "h"],
    );
  });

  it("reads events in order over all numbered lists, with bullets that follow in any order", () => {
    const text =
      "## S\n\n1. Ela entra.\n1. Ela mede:\n   - um disco\n   - *pão* <!-- by: K7 -->\n\nNote.\n\n7) Ela = paga.\n";
    const events = readUnit(text).sections[0]?.events ?? [];
    assert.deepEqual(
      events.map((event) => [event.text, texts(event.free)]),
      [
        ["Ela entra.", []],
        ["Ela mede:", ["um disco", "pão"]],
        ["Ela = paga.", []],
      ],
    );
    assert.equal(events[1]?.free[1]?.by?.code, "K7");
    assert.deepEqual(events[1]?.free[1]?.runs, [{ text: "pão", italic: true }]);
    assert.equal(
      events[1] && slice(text, events[1].block),
      "1. Ela mede:\n   - um disco\n   - *pão* <!-- by: K7 -->\n",
    );
  });

  it("gives items under deeper headings to the pile that the heading names, whatever their shape", () => {
    const text =
      "## S\n\n- a = b\n\n### *o*\n\n- disco\n- sumo\n\n### a\n\n- água\n- [x] Sim.\n- c = d\n\n#### e\n\n1. f\n\n### empty\n";
    const section = readUnit(text).sections[0];
    const shown = section?.piles.map(({ name, members }) => [
      name,
      ...members.map(({ shape, item }) => `${shape} ${slice(text, item.range)}`),
    ]);
    assert.deepEqual(shown, [
      ["o", "text disco", "text sumo"],
      ["a", "text água", "statement Sim.", "pair c = d"],
      ["e", "event f"],
    ]);
    assert.deepEqual([section?.pairs.length, section?.statements.length, section?.events.length], [2, 1, 1]);
  });

  it("reads accepted orders by their parts, but for case and punctuation at the edges, and other bullets as examples", () => {
    const text =
      "## S\n\n- Queria | um disco, | por favor. = x\n  - Por favor, | queria | um disco.\n  - Queria um disco.\n";
    const pair = only(text);
    assert.deepEqual(
      pair.orders.map(({ parts }) => parts),
      [[2, 0, 1]],
    );
    assert.deepEqual(texts(pair.examples), ["Queria um disco."]);
    assert.deepEqual(
      pair.orders.map(({ range }) => slice(text, range)),
      ["Por favor, | queria | um disco."],
    );
  });

  it("reads an order with a translation of its own up to that", () => {
    const pair = only("## S\n\n- Queria | um disco, | por favor. = x\n  - Por favor, | queria | um disco. = y\n");
    assert.deepEqual([pair.orders.map(({ parts }) => parts), pair.examples], [[[2, 0, 1]], []]);
  });

  it("reads tables: forms under an empty corner, pairs under two heads, notes otherwise", () => {
    const text =
      "## S\n\n|   | medir | *trazer* |\n|---|---|---|\n| eu | meço | trago |\n| nós | medimos |  |\n\npalavra | word\n:--|--:\no \\| copo | the glass / cup\n\n| a | b | c |\n|---|---|---|\n| d | e | f |\n";
    const section = readUnit(text).sections[0];
    const [table] = section?.tables ?? [];
    assert.equal(section?.tables.length, 1);
    assert.deepEqual(texts(table?.columns ?? []), ["medir", "trazer"]);
    assert.deepEqual(texts(table?.persons ?? []), ["eu", "nós"]);
    assert.deepEqual(
      table?.forms.map((row) => row.map((form) => form && [form.text, slice(text, form.range)])),
      [
        [
          ["meço", "meço"],
          ["trago", "trago"],
        ],
        [["medimos", "medimos"], undefined],
      ],
    );
    const [pair, ...others] = section?.pairs ?? [];
    assert.equal(others.length, 0);
    assert.deepEqual(texts(pair?.left.answers[0].parts ?? []), ["o", "copo"]);
    assert.deepEqual(texts(pair?.right.answers ?? []), ["the glass", "cup"]);
    assert.equal(pair && slice(text, pair.block), "o \\| copo | the glass / cup\n");
  });

  it("reads ties to forms, with section, person, and spaces in angle brackets", () => {
    const text =
      '## S\n\n- [x] Eu [meço](#medir) e [trago](#Verbs/trazer "eu") [um](<#to drink>) [site](https://a.example).\n';
    const ties = readUnit(text).sections[0]?.statements[0]?.ties ?? [];
    assert.deepEqual(
      ties.map(({ text: said, section, column, person, target }) => [
        said,
        section,
        column,
        person,
        slice(text, target),
      ]),
      [
        ["meço", undefined, "medir", undefined, "#medir"],
        ["trago", "Verbs", "trazer", "eu", "#Verbs/trazer"],
        ["um", undefined, "to drink", undefined, "#to drink"],
      ],
    );
    assert.equal(readUnit(text).sections[0]?.statements[0]?.text, "Eu meço e trago um site.");
  });

  it("reads writers and silences at the end of items and headings", () => {
    const text =
      "## S <!-- allow unbalanced-statements: on purpose -->\n\n- a = b <!-- by: K7 --> <!-- allow duplicate-answer: both are right -->\n";
    const unit = readUnit(text);
    assert.equal(unit.sections[0]?.name, "S");
    assert.equal(unit.sections[0]?.pairs[0]?.by?.code, "K7");
    assert.deepEqual(
      unit.silences.map(({ code, reason, scope }) => [code, reason, slice(text, scope)]),
      [
        ["unbalanced-statements", "on purpose", "## S <!-- allow unbalanced-statements: on purpose -->"],
        ["duplicate-answer", "both are right", text.slice(text.indexOf("- a ="))],
      ],
    );
  });

  it("never throws, whatever the text", () => {
    const pieces = [
      "---\n",
      "## ",
      "- ",
      " = ",
      " / ",
      "|",
      "[x] ",
      "![a](b)",
      "```activity\n",
      "```\n",
      "<!--",
      "-->",
      "\\",
      "`",
      "\t",
      "\r",
      "\n",
      "é",
      "🐟",
      "  ",
      "[",
      "](",
      "&amp;",
      "\u0000",
      "\uD800",
      "make: ",
      "*a",
      "**",
    ];
    let state = 7;
    for (let i = 0; i < 3000; i++) {
      let text = "";
      for (let j = 0; j < 14; j++) {
        state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
        text += pieces[(state >> 8) % pieces.length] ?? "";
      }
      const unit = readUnit(text);
      for (const { left, right, range, block } of unit.sections.flatMap((section) => section.pairs)) {
        for (const place of [range, block, ...left.answers.map((a) => a.range), ...right.answers.map((a) => a.range)]) {
          assert.ok(place.start >= 0 && place.end >= place.start && place.end <= text.length, JSON.stringify(text));
        }
      }
    }
  });
});
