import assert from "node:assert/strict";
import { kinds } from "../../../src/activities/kinds";
import { allRules } from "../../../src/check/rules";
import { settingsOffersAt } from "../../../src/editor/language/codes";
import { type Nearby, offersAt, wantsPictures } from "../../../src/editor/language/complete";
import { formatUnit } from "../../../src/editor/language/format/format";
import { tokensOf } from "../../../src/editor/language/tokens";
import { readUnit } from "../../../src/unit/read";
import snippets from "../../../syntaxes/cutwork.snippets.json";
import { applyEdits } from "../../support/units";
import { snippetText } from "../snippets";

const tables = `## Verbs

|      | medir | to bring |
| ---- | ----- | -------- |
| eu   | meço  | trago    |
| ela  | mede  | traz     |
| você | mede  | traz     |

## More verbs

|    | medir |
| -- | ----- |
| eu | meço  |

## Story

`;

/** What is offered at the `‸`. */
function at(marked: string, near: Nearby = {}) {
  const offset = marked.indexOf("‸");
  const text = marked.replace("‸", "");
  const offers = offersAt(text, offset, readUnit(text), near);
  return {
    labels: offers.map(({ label }) => label),
    offers,
    taken: (label: string): string => {
      const offer = offers.find((each) => each.label === label);
      assert.ok(offer, `${label} is not offered`);
      const now = text.slice(0, offer.start) + offer.insert + text.slice(offer.end);
      return now.slice(now.lastIndexOf("\n", offset - 1) + 1).split("\n")[0] ?? "";
    },
  };
}

describe("completion of ties", () => {
  it("offers columns, those that have the word first, with their section where two tables have them", () => {
    const { labels, taken, offers } = at(`${tables}- [x] Eu [trago](#‸) pão.`);
    assert.deepEqual(labels, ["to bring", "Verbs/medir", "More verbs/medir"]);
    assert.equal(offers[0]?.detail, "eu");
    assert.equal(taken("to bring"), "- [x] Eu [trago](<#to bring>) pão.");
    assert.equal(taken("Verbs/medir"), "- [x] Eu [trago](#Verbs/medir) pão.");
  });

  it("knows a form with the capital of a sentence's beginning", () => {
    assert.equal(at(`${tables}- [x] [Trago](#‸) pão.`).offers[0]?.detail, "eu");
    assert.equal(at(`${tables}- [x] [Traz](#‸) pão.`).taken("to bring"), '- [x] [Traz](<#to bring> ") pão.');
    assert.notEqual(
      at(`${tables}- [x] Eu [Trago](#‸) pão.`).offers.find(({ label }) => label === "to bring")?.detail,
      "eu",
    );
  });

  it("takes the place of what is typed, in angle brackets too", () => {
    assert.equal(at(`${tables}- [x] [meço](#ped‸ir) b`).taken("Verbs/medir"), "- [x] [meço](#Verbs/medir) b");
    assert.equal(at(`${tables}- [x] [trago](<#to b‸>) b`).taken("to bring"), "- [x] [trago](<#to bring>) b");
  });

  it("offers a column that has a slash in its name with its section, since a tie without it would mean another", () => {
    const slash = tables.replace("to bring", "ir/irse");
    assert.ok(at(`${slash}- [x] Eu [trago](#‸) pão.`).labels.includes("Verbs/ir/irse"));
    const written = at(`${slash}- [x] Eu [trago](#‸) pão.`).taken("Verbs/ir/irse");
    assert.equal(written, "- [x] Eu [trago](#Verbs/ir/irse) pão.");
    assert.ok(tokensOf(readUnit(slash + written)).some(({ kind }) => kind === "tie"));
  });

  it("goes on to the persons where the form stands twice", () => {
    assert.equal(at(`${tables}- [x] [traz](#‸) b`).taken("to bring"), '- [x] [traz](<#to bring> ") b');
    const { labels, taken } = at(`${tables}- [x] [traz](<#to bring> "‸") b`);
    assert.deepEqual(labels, ["ela", "você", "eu"]);
    assert.equal(taken("você"), '- [x] [traz](<#to bring> "você") b');
    assert.equal(at(`${tables}- [x] [meço](#Verbs/medir "e‸) b`).taken("eu"), '- [x] [meço](#Verbs/medir "eu") b');
  });

  it("offers nothing elsewhere", () => {
    for (const text of ["- [x] a ‸", "- [x] [a](‸", "- a # ‸", '- [x] [a](#nowhere "‸', "- [x] [a](http://x#‸"])
      assert.deepEqual(at(tables + text).labels, [], text);
  });
});

describe("completion of pictures", () => {
  const pictures = ["img/bell.png", "img/old bell (1).jpg", "../100%.png"];
  const written = (marked: string) => at(`## A\n\n${marked}\n`, { pictures });

  it("offers those that can be written, in angle brackets where Markdown wants them", () => {
    const { labels, taken } = written("- ![a bell](‸) = a campainha");
    assert.deepEqual(labels, pictures);
    assert.equal(taken("img/bell.png"), "- ![a bell](img/bell.png) = a campainha");
    assert.equal(taken("img/old bell (1).jpg"), "- ![a bell](<img/old bell (1).jpg>) = a campainha");
    for (const path of labels) {
      const [pair] = readUnit(`## A\n\n${taken(path)}\n`).sections[0]?.pairs ?? [];
      assert.equal(pair?.left.answers[0].picture?.path, path);
    }
  });

  it("takes the place of the whole path", () => {
    assert.equal(written("- ![a](im‸g/b.png) = b").taken("img/bell.png"), "- ![a](img/bell.png) = b");
    assert.equal(written("- a = ![b](<img/o‸ld>)").taken("img/old bell (1).jpg"), "- a = ![b](<img/old bell (1).jpg>)");
    assert.equal(written("- ![a](‸").taken("img/bell.png"), "- ![a](img/bell.png");
  });

  it("is silent where no picture begins, and asks for none there", () => {
    for (const text of ["- [a](‸) = b", "- ![a‸](b.png) = c", "- ![a](b.png)‸ = c", "- a! (‸"]) {
      assert.deepEqual(written(text).labels, [], text);
      assert.equal(wantsPictures(text.replace("‸", ""), text.indexOf("‸")), false, text);
    }
    assert.equal(wantsPictures("x\n- ![a](", 10), true);
  });
});

describe("completion of remarks", () => {
  it("offers what a comment can say, wherever it is begun", () => {
    const { labels, taken, offers } = at("## A\n\n- a = b <!-- ‸ -->\n");
    assert.deepEqual(labels, ["allow", "by"]);
    assert.equal(taken("allow"), "- a = b <!-- allow  -->");
    assert.equal(taken("by"), "- a = b <!-- by:  -->");
    assert.deepEqual(
      offers.map(({ more }) => more),
      [true, false],
    );
    assert.equal(at("- a = b <!--‸ -->").taken("by"), "- a = b <!-- by:  -->");
    assert.equal(at("- a = b <!-- al‸").taken("allow"), "- a = b <!-- allow ");
    assert.deepEqual(at("- a = b <!-- by: ‸ -->").labels, []);
    assert.deepEqual(at("- a = b <!-- a --> ‸").labels, []);
  });
});

describe("completion of codes", () => {
  it("in a remark, those of findings in the line first", () => {
    const { labels, taken } = at("## A\n\n- a = b <!-- allow ‸ -->\n", { codes: ["unused-pairs"] });
    assert.equal(labels.length, allRules.length);
    assert.equal(labels[0], "unused-pairs");
    assert.equal(taken("same-section"), "- a = b <!-- allow same-section:  -->");
    assert.equal(at("- a = b <!-- allow same‸x: why -->").taken("same-code"), "- a = b <!-- allow same-code: why -->");
  });

  it("under `severities`, on lines and in braces, then what they can be", () => {
    assert.ok(at("---\nseverities:\n  unus‸\n---\n").labels.includes("unused-pairs"));
    assert.equal(at("---\nseverities:\n  a: off\n  unus‸\n---\n").taken("unused-pairs"), "  unused-pairs: ");
    assert.deepEqual(at("---\nseverities:\n  unused-pairs: ‸\n---\n").labels[4], "off");
    assert.equal(at("---\nseverities: { unused-pairs: o‸ }\n---\n").taken("off"), "severities: { unused-pairs: off }");
    assert.ok(at("---\nseverities: { a: off, ‸ }\n---\n").labels.includes("unused-pairs"));
  });

  it("no code that is there already, but the one that is being written", () => {
    for (const [marked, taken, free] of [
      [
        "---\nseverities:\n  unused-pairs: off\n  ‸\n  look-alike: hint\n---\n",
        ["unused-pairs", "look-alike"],
        "unknown-code",
      ],
      ["---\nseverities:\n  look-alike‸: hint\n---\n", [], "look-alike"],
      [
        "---\nseverities: { unused-pairs: off, ‸, look-alike: off }\n---\n",
        ["unused-pairs", "look-alike"],
        "unknown-code",
      ],
      ["---\nseverities: { ‸, look-alike: off }\n---\n", ["look-alike"], "unused-pairs"],
      ["```activity\nallow:\n  unused-pairs: meant so\n  ‸\nseed: 3\n```\n", ["unused-pairs"], "look-alike"],
    ] as const) {
      const { labels } = at(marked);
      assert.deepEqual(
        taken.filter((code) => labels.includes(code)),
        [],
        marked,
      );
      assert.ok(labels.includes(free), marked);
    }
  });

  it("under `severities` in a `cutwork.yml`", () => {
    const labels = (marked: string) =>
      settingsOffersAt(marked.replace("‸", ""), marked.indexOf("‸")).map(({ label }) => label);
    assert.ok(labels("paper: A4\nseverities:\n  unu‸\n").includes("unused-pairs"));
    assert.deepEqual(labels("severities: { unused-pairs: ‸ }"), ["error", "warning", "information", "hint", "off"]);
    assert.deepEqual(labels("allow:\n  ‸\n"), []);
    assert.deepEqual(labels("pap‸\n"), []);
  });

  it("under `allow` in an activity, and not in prose", () => {
    assert.ok(at("```activity\nallow:\n  ‸\n```\n").labels.includes("unused-pairs"));
    assert.deepEqual(at("allow:\n  ‸\n").labels, []);
    assert.deepEqual(at("---\na: b\n---\n\nseverities:\n  ‸\n").labels, []);
    assert.deepEqual(at("```\nx\n```\nallow:\n  ‸\n").labels, []);
  });
});

describe("snippets", () => {
  const shapes: Readonly<Record<string, (unit: ReturnType<typeof readUnit>["sections"][number]) => unknown>> = {
    Pair: ({ pairs }) => pairs.length === 1,
    "Pair with more answers": ({ pairs }) => pairs[0]?.right.answers.length === 2,
    "Pair with a picture": ({ pairs }) => pairs[0]?.left.answers[0].picture,
    "Pair with an example": ({ pairs }) => pairs[0]?.examples.length === 1,
    "True statement": ({ statements }) => statements[0]?.truth === true,
    "False statement": ({ statements }) => statements[0]?.truth === false && statements[0].correction,
    Events: ({ events }) => events.length === 3 && events[1]?.free.length === 2,
    "Sentence with bars": ({ pairs }) => pairs[0]?.left.answers[0].parts.length === 3 && pairs[0].orders.length === 1,
    Pile: ({ piles }) => piles.length === 1,
    "Forms table": ({ tables: forms }) => forms[0]?.columns.length === 2 && forms[0].persons.length === 2,
    "Table of pairs": ({ pairs }) => pairs.length === 1,
    Pairs: ({ pairs }) => pairs.length === 2,
    Statements: ({ statements }) => statements.length === 3 && statements[1]?.correction,
  };
  /** Their own tests are below and in `schemas.test.ts`. */
  const others = ["Unit", "Front matter", "Activity", "Stations", "Tie", "Gap", "Allow", "Writer"];
  const kindNames = kinds.map(({ name }) => `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`);

  it("are all looked at", () => {
    assert.deepEqual(Object.keys(snippets).sort(), [...Object.keys(shapes), ...others, ...kindNames].sort());
  });

  it("are read as the shape that they are for, and nothing in them is to be mended", () => {
    for (const [name, isShape] of Object.entries(shapes)) {
      const snippet = Object.entries(snippets).find(([each]) => each === name)?.[1];
      assert.ok(snippet, name);
      // The place where one goes on writing is filled, as it will be.
      const unit = readUnit(`## A\n\n${snippetText(snippet.body).replace(/\] $/, "] Ela lê.")}\n`);
      const section = unit.sections.at(-1);
      assert.ok(section && isShape(section), name);
      assert.deepEqual(unit.problems, [], name);
    }
    const [gap] = tokensOf(readUnit(`## A\n\n- ${snippetText(snippets.Gap.body)} b = c\n`));
    assert.equal(gap?.kind, "gap");
    assert.equal(
      readUnit(`## A\n\n- [x] ${snippetText(snippets.Tie.body)}\n`).sections[0]?.statements[0]?.ties.length,
      1,
    );
    assert.equal(readUnit(`## A\n\n- a = b ${snippetText(snippets.Allow.body)}\n`).silences.length, 1);
    assert.equal(
      readUnit(`## A\n\n- a = b ${snippetText(snippets.Writer.body)}\n`).sections[0]?.pairs[0]?.by?.code,
      "K7",
    );
  });

  it("are formatted already, but for tables, whose cells are still to be filled", () => {
    for (const [name, { body }] of Object.entries(snippets)) {
      if (name.includes("able")) continue;
      const written = `## A\n\n${snippetText(body).trimEnd()}\n`;
      if (!snippetText(body).startsWith("---")) assert.equal(applyEdits(written, formatUnit(written)), written, name);
    }
  });
});
