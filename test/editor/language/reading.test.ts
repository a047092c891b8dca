import assert from "node:assert/strict";
import type { Deal } from "../../../src/activities/contract";
import { answerAt, answerMarkdown } from "../../../src/editor/language/hover";
import { lensText } from "../../../src/editor/language/lens";
import { linksIn } from "../../../src/editor/language/links";
import { type TokenKind, tokensOf } from "../../../src/editor/language/tokens";
import type { Proof } from "../../../src/prove/proof";
import { readUnit } from "../../../src/unit/read";
import { readUnitText, slice, testWorkshop, unitOf } from "../../support/units";
import { wholeDialect } from "./units";

describe("links", () => {
  it("lead from paths of pictures and of other units, as they are written and as they are meant", () => {
    const text = [
      "## A",
      "",
      "- ![a \\] spoon](<img/my spoon.png>) = a colher / ![x](img/a%20b.png) faca",
      "- ![no",
      "",
      "|  | x |",
      "|--|--|",
      "| i | ![f](img/form.svg) |",
      "",
      "### o",
      "- ![w](wheel.png)",
      "",
      "```activity",
      "make: tiles",
      'from: [../b.unit.md#B, "c.unit.md#x, y", A]',
      "```",
      "",
    ].join("\n");
    assert.deepEqual(
      linksIn(readUnit(text)).map(({ range, path }) => [slice(text, range), path]),
      [
        ["img/my spoon.png", "img/my spoon.png"],
        ["img/a%20b.png", "img/a b.png"],
        ["img/form.svg", "img/form.svg"],
        ["wheel.png", "wheel.png"],
        ["../b.unit.md", "../b.unit.md"],
        ["c.unit.md", "c.unit.md"],
      ],
    );
  });
});

describe("links to pictures", () => {
  const paths = (text: string): string[] => linksIn(readUnit(text)).map(({ range }) => slice(text, range));

  it("are found in items of every shape and in all that stands under them", () => {
    const text = [
      "## A",
      "",
      "- [x] ![a](1.png) O sino toca.",
      "- [ ] O sino ![a](2.png) cai.",
      "  - O sino ![a](3.png) toca.",
      "",
      "1. ![a](4.png) Ela mede:",
      "   - ![a](5.png)",
      "",
      "- ![a](6.png) | um sino = b",
      "  - um sino | ![a](6.png)",
      "- a pomba = c ![a](7.png)",
      "  - ![a](8.png) Ela voa.",
      "",
      "| | fio |",
      "| - | - |",
      "| ![a](9.png) | ![a](10.png) |",
      "",
    ].join("\n");
    const numbers = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => `${n}.png`);
    assert.deepEqual(paths(text), numbers);
    assert.deepEqual(paths(text.replaceAll("\n", "\r\n")), numbers);
  });

  it("keep to the path, whatever stands around it", () => {
    assert.deepEqual(paths('## A\n\n- ![a [b] c](img/b.png "of (b)") = ![x](c(1).png)\n'), ["img/b.png", "c(1).png"]);
    assert.deepEqual(paths("## A\n\n- ![a](<my (old) b.png> 'x') word = c\n"), ["my (old) b.png"]);
    assert.deepEqual(paths("## A\n\n- ![a][b] [meço](#medir) = c\n\n[b]: b.png\n"), []);
  });
});

/** Tokens as `kind text`. */
function tokens(text: string): string[] {
  return tokensOf(readUnit(text)).map(({ kind, range }) => `${kind} ${slice(text, range)}`);
}

describe("semantic tokens", () => {
  const only = (text: string, kind: TokenKind): string[] =>
    tokens(text)
      .filter((token) => token.startsWith(`${kind} `))
      .map((token) => token.slice(kind.length + 1));

  it("of a pair: signs that count, answers that are accepted, bars, gaps", () => {
    assert.deepEqual(tokens("## A\n\n- o | copo = the [...] = x / the mug / a | b\n  - O = b\n"), [
      "bar |",
      "separator =",
      "gap [...]",
      "alternative /",
      "accepted the mug",
      "alternative /",
      "accepted a | b",
    ]);
  });

  it("of a pair over two lines, with a tab, in a table, with an accepted order", () => {
    assert.deepEqual(tokens("## A\n\n-\to copo\n\t= the glass / the\n\tmug\n"), [
      "separator =",
      "alternative /",
      "accepted the",
      "accepted mug",
    ]);
    assert.deepEqual(tokens("## A\n\n| a | b |\n| - | - |\n| x \\| y | z / w |\n"), [
      "bar |",
      "alternative /",
      "accepted w",
    ]);
    assert.equal(only("## A\n\n- a | b | c = d\n  - b | a | c\n  - an example | x\n", "bar").length, 4);
  });

  it("keeps what lies in an accepted answer apart from it", () => {
    assert.deepEqual(tokens("## A\n\n- a = b / c [...] d\n").slice(2), ["accepted c ", "gap [...]", "accepted  d"]);
    assert.deepEqual(
      tokens("## A\n\n- [...] a = b / [...] c / d [...]\n- e = f / g [...] h [...] i\n").join(", "),
      [
        "gap [...], separator =, alternative /, gap [...], accepted  c, alternative /, accepted d , gap [...]",
        "separator =, alternative /, accepted g , gap [...], accepted  h , gap [...], accepted  i",
      ].join(", "),
    );
  });

  it("of statements and ties: what the mark says, whether the tie leads somewhere", () => {
    assert.deepEqual(only(wholeDialect, "trueMark"), ["[x]", "[x]"]);
    assert.deepEqual(only(wholeDialect, "falseMark"), ["[ ]"]);
    assert.deepEqual(only(wholeDialect, "tie"), ["#medir"]);
    assert.deepEqual(only(wholeDialect.replace("#medir", "#mdir"), "tie"), []);
  });

  it("has none where Markdown has code, notes or escapes", () => {
    assert.deepEqual(tokens("## A\n\nA = b / c\n\n- `a = b` \\= c\n\n```\n- a = b\n```\n"), []);
  });

  it("comes in order and on single lines, without overlaps", () => {
    const unit = readUnit(wholeDialect.replaceAll("\n", "\r\n"));
    let end = 0;
    for (const { range } of tokensOf(unit)) {
      assert.ok(range.start >= end && range.end > range.start);
      assert.equal(unit.lines.lineAt(range.start), unit.lines.lineAt(range.end));
      end = range.end;
    }
    assert.ok(end > 0);
  });
});

describe("the lens over an activity", () => {
  const lens = async (text: string): Promise<string[]> => {
    const workshop = await testWorkshop();
    const reading = await readUnitText(text);
    return reading.activities.map((activity) =>
      lensText(activity, (deal) => workshop.view(reading, activity, deal, "dealt")),
    );
  };

  it("tells pieces, sheets, sets and the proof", async () => {
    const front = "---\nclasses: [24, 31]\n---\n\n";
    const [told] = await lens(unitOf(24, "grid: 4 x 4", front));
    assert.match(
      told ?? "",
      /^4 × 4 tiles.* · 16 pieces · 1 sheet a set · 15 sets · one solution, proven · no wrong neighbours$/,
    );
  });

  it("tells what is not proven", () => {
    const told = (...statuses: readonly Proof<unknown>["status"][]): string | undefined => {
      const deals = statuses.map((status): Deal => {
        const proof = { status, count: 2, capped: false, nodes: 1, by: "search" } as const;
        return { code: "ACDEFH", level: "gentle", version: 1, copies: 2, attempt: 0, proof };
      });
      return lensText({ index: 0, make: "tiles", title: "A", summary: "tiles", deals }, () => [])
        .split(" · ")
        .at(-1);
    };
    assert.equal(told("one", "one"), "one solution each, proven");
    assert.equal(told("one", "several"), "more than one solution");
    assert.equal(told("several", "none"), "no solution");
    assert.equal(told("one", "unsettled"), "proof not settled");
  });

  it("tells how hard the deals are, level by level", () => {
    const told = (...deals: readonly [level: string, detour: number, capped?: true][]): string | undefined =>
      lensText(
        {
          index: 0,
          make: "tiles",
          title: "A",
          summary: "tiles",
          deals: deals.map(([level, detour, capped], i): Deal => {
            const proof = { status: "one", count: 1, capped: false, nodes: 1, by: "search" } as const;
            const difficulty = {
              wrongNeighbours: Math.ceil(detour / 2),
              survives: 2,
              detour,
              capped: capped === true,
              nodes: 9,
            };
            return { code: "ACDEFH", level, version: i + 1, copies: 2, attempt: 0, proof, difficulty };
          }),
        },
        () => [],
      )
        .split(" · ")
        .at(-1);
    assert.equal(told(["hard", 7]), "each wrong neighbour tried once: 7 tiles laid in vain");
    assert.equal(told(["gentle", 7], ["hard", 15], ["hard", 12]), "tiles laid in vain: gentle 7, hard 12–15");
    assert.equal(told(["gentle", 7], ["hard", 15, true]), "tiles laid in vain: gentle 7, hard 15 and more");
    assert.equal(told(["gentle", 7], ["gentle", 9]), "tiles laid in vain: 7–9");
    assert.equal(told(["gentle", 0], ["hard", 0]), "no wrong neighbours");
  });

  it("tells of several deals, of masters, and of what is not dealt", async () => {
    const [levels] = await lens(unitOf(24, "grid: 3 x 3\nlevels: [gentle, hard]\ndecoys: 6\ncopies: 3"));
    assert.match(levels ?? "", / · 9 pieces · .* · 2 deals · .* · one solution each, proven · no wrong neighbours$/);
    const story = ["A chuva começa.", "O barco volta.", "A luz acende.", "Todos entram."].map(
      (said, i) => `${i + 1}. ${said}`,
    );
    const [desks] = await lens(`## Harbour\n\n${story.join("\n")}\n\n\`\`\`activity\nmake: strips\ndesks: 3\n\`\`\`\n`);
    assert.match(desks ?? "", / · 3 desks · /);
    const [master] = await lens(unitOf(24, "grid: 3 x 3\ncopies: by copier"));
    assert.match(master ?? "", / · copied by the copier · /);
    const [none] = await lens(unitOf(1, "grid: 4 x 4"));
    assert.match(none ?? "", /^Not dealt/);
  });
});

describe("hovering over an answer", () => {
  const text = "## A\n\n- o copo = the glass / the tumbler\n- o vidro = the glass\n- a taça = the *glass*.\n";
  const facts = (near: string, add = 1) => answerAt(readUnit(text), text.indexOf(near) + add);

  it("tells what it fits and where else it stands", () => {
    const glass = facts("the glass");
    assert.ok(glass);
    assert.equal(slice(text, glass.range), "the glass");
    assert.equal(glass.printed, true);
    assert.deepEqual(
      glass.fits.map((each) => each.text),
      ["o copo", "o vidro", "a taça"],
    );
    assert.equal(glass.elsewhere.length, 2);
    const told = answerMarkdown(glass, ({ range }) => `line ${readUnit(text).lines.lineAt(range.start) + 1}`);
    assert.match(told, /\*\*the glass\*\* is printed\. It fits “o copo”, “o vidro” and “a taça”\./);
    assert.match(told, /- o vidro = the glass \(line 4\)/);
    assert.equal(facts("the tumbler")?.printed, false);
    assert.deepEqual(facts("the tumbler")?.elsewhere, []);
  });

  it("says nothing on signs and in prose", () => {
    assert.equal(facts("= the", 0), undefined);
    assert.equal(facts("## A", 4), undefined);
  });
});
