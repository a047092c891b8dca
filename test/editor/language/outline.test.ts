import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { foldsOf } from "../../../src/editor/language/folds";
import { type OutlineEntry, outlineOf } from "../../../src/editor/language/outline";
import { selectionsAt } from "../../../src/editor/language/selection";
import { readUnit } from "../../../src/unit/read";
import { slice } from "../../support/units";
import { wholeDialect } from "./units";

/** The outline as lines, indented by depth. */
function drawn(entries: readonly OutlineEntry[], depth = 0): string[] {
  return entries.flatMap(({ kind, name, detail, children }) => [
    `${"  ".repeat(depth)}${kind}: ${name}${detail ? ` — ${detail}` : ""}`,
    ...drawn(children, depth + 1),
  ]);
}

describe("outline", () => {
  it("counts what sections hold and shows every item, in the order of the text", () => {
    const facts = [{ index: 0, title: "Counter tiles", summary: "2 × 3 tiles" }];
    assert.deepEqual(drawn(outlineOf(readUnit(wholeDialect), facts)), [
      "section: At the counter — 3 pairs, 1 activity",
      "  pair: o copo — the glass",
      "  pair: a tigela — the mug",
      "  pair: a spoon — a colher",
      "  activity: Counter tiles — 2 × 3 tiles",
      "section: What happened — 3 statements",
      "  statement: A Inês mede um disco. — true",
      "  statement: O pai come sopa. — false",
      "  statement: Eu meço a conta. — true",
      "section: The morning — 3 events",
      "  event: A Inês entra no café.",
      "  event: Ela mede: — 2 in any order",
      "  event: Ela paga.",
      "section: Ordering — 1 pair",
      "  pair: Queria um disco, por favor. — I'd like a milky coffee, please.",
      "section: O disco, a mochila — 2 piles",
      "  pile: o — 2 items",
      "    text: disco",
      "    text: copo",
      "  pile: a — 1 item",
      "    text: mochila",
      "section: Verbs — 1 forms table",
      "  table: medir, trazer — 2 columns, 2 rows",
      "    column: medir",
      "    column: trazer",
    ]);
  });

  it("nests ranges as VS Code wants them, for the samples too", () => {
    const samples = readdirSync("samples")
      .filter((name) => name.endsWith(".unit.md"))
      .map((name) => readFileSync(`samples/${name}`, "utf8"));
    assert.ok(samples.length > 0);
    const check = ({ range, select, children, name }: OutlineEntry): void => {
      assert.ok(range.start <= select.start && select.end <= range.end, name);
      for (const child of children) {
        assert.ok(range.start <= child.range.start && child.range.end <= range.end, `${name} > ${child.name}`);
        check(child);
      }
    };
    for (const text of [wholeDialect, wholeDialect.replaceAll("\n", "\r\n"), ...samples])
      outlineOf(readUnit(text), []).forEach(check);
  });

  it("counts a pile with two headings once", () => {
    const text = "## A\n\n### o\n\n- copo\n\n### a\n\n- faca\n\n### o\n\n- garfo\n";
    assert.equal(drawn(outlineOf(readUnit(text), []))[0], "section: A — 2 piles");
  });

  it("calls an activity by its kind while it is not dealt", () => {
    assert.ok(drawn(outlineOf(readUnit(wholeDialect), [])).includes("  activity: tiles"));
  });
});

describe("folding", () => {
  it("folds front matter, sections, piles, activities, tables and items with something under them", () => {
    const unit = readUnit(wholeDialect);
    const lines = wholeDialect.split("\n");
    assert.deepEqual(
      foldsOf(unit).map(({ first, last }) => [lines[first], lines[last]]),
      [
        ["---", "---"],
        ["## At the counter", "```"],
        ["- a tigela = the mug / the tankard", "  - A tigela está cheia."],
        ["```activity", "```"],
        ["## What happened", "- [x] Eu [meço](#medir) a conta."],
        ["- [ ] O pai come sopa.", "  - O pai come uma mochila."],
        ["## The morning", "3. Ela paga."],
        ["2. Ela mede:", "   - uma mochila"],
        ["## Ordering", "  - Por favor, | queria | um disco."],
        ["- Queria | um disco, | por favor. = I'd like a milky coffee, please.", "  - Por favor, | queria | um disco."],
        ["## O disco, a mochila", "- mochila"],
        ["### o", "- copo"],
        ["### a", "- mochila"],
        ["## Verbs", "| nós | medimos | trazemos |"],
        ["|     | medir   | trazer   |", "| nós | medimos | trazemos |"],
      ],
    );
  });
});

describe("expanding the selection", () => {
  const at = (text: string, near: string, add = 0): string[] => {
    const unit = readUnit(text);
    return selectionsAt(unit, text.indexOf(near) + add).map((range) => slice(text, range));
  };

  it("goes from the answer to the side, the item, the list, the section and the unit", () => {
    const grown = at(wholeDialect, "tankard");
    assert.deepEqual(grown.slice(0, 4), [
      "the tankard",
      "the mug / the tankard",
      "a tigela = the mug / the tankard",
      "- a tigela = the mug / the tankard\n  - A tigela está cheia.",
    ]);
    assert.match(grown[4] ?? "", /^- o copo[\s\S]*colher$/);
    assert.match(grown[5] ?? "", /^## At the counter[\s\S]*```$/);
    assert.equal(grown[6], wholeDialect);
    assert.equal(grown.length, 7);
  });

  it("starts with the part between bars, the cell, the correction, the free event, the tie, the value", () => {
    assert.deepEqual(at(wholeDialect, "um disco,", 2).slice(0, 2), ["um disco,", "Queria | um disco, | por favor."]);
    assert.deepEqual(at(wholeDialect, "trago", 2).slice(0, 2), ["trago", "| eu  | meço    | trago    |"]);
    assert.equal(at(wholeDialect, "come uma", 2)[0], "O pai come uma mochila.");
    assert.equal(at(wholeDialect, "- um disco\n", 3)[0], "um disco");
    assert.deepEqual(at(wholeDialect, "#medir", 2).slice(0, 3), [
      "#medir",
      "[meço](#medir)",
      "Eu [meço](#medir) a conta.",
    ]);
    assert.deepEqual(at(wholeDialect, "tiles", 2).slice(0, 3), [
      "tiles",
      "make: tiles",
      "make: tiles\nfrom: At the counter\ngrid: 2 x 3",
    ]);
  });

  it("never crosses itself, anywhere", () => {
    const unit = readUnit(wholeDialect);
    for (let offset = 0; offset <= wholeDialect.length; offset++) {
      const ranges = selectionsAt(unit, offset);
      ranges.forEach((range, i) => {
        const inner = ranges[i - 1];
        assert.ok(range.start <= offset && offset <= range.end);
        if (inner) assert.ok(range.start <= inner.start && inner.end <= range.end);
      });
    }
  });
});
