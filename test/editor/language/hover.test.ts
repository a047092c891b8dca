import assert from "node:assert/strict";
import { explainAt } from "../../../src/editor/completion/suggest";
import { settingsOffersAt, wordExplained } from "../../../src/editor/language/codes";
import { offersAt } from "../../../src/editor/language/complete";
import { itemExplained } from "../../../src/editor/language/hoverItems";
import { readUnit } from "../../../src/unit/read";
import { wholeDialect } from "./units";

/** What is told at the `‸`, without its place, and the place's text. */
type Told = readonly [markdown: string, place: string] | undefined;

function told(
  marked: string,
  explain: (text: string, offset: number) => { markdown: string; start: number; end: number } | undefined,
): Told {
  const [offset, text] = [marked.indexOf("‸"), marked.replace("‸", "")];
  const found = explain(text, offset);
  return found && [found.markdown, text.slice(found.start, found.end)];
}

const item = (marked: string): Told => told(marked, (text, offset) => itemExplained(readUnit(text), offset));

const shop = `## Oficina

- [x] A roda gira. <!-- by: K7 -->
- [ ] O pedal canta.
  - O pedal chia.

1. Ela abre a porta.
2. Ela limpa:
   - a bomba
   - o balcão
3. Ela sai.

### o

- selim
- guia

### a

- roda
- guia

|     | abrir | ver |
| --- | ----- | --- |
| ela | abre  | vê  |
| ele | abre  | vê  |

- [x] [Abre](#abrir "ela") a porta.
`;
const at = (near: string): Told => item(shop.replace(near, `${near.slice(0, 1)}‸${near.slice(1)}`));

describe("hovering over items", () => {
  it("tells what each shape counts as", () => {
    assert.deepEqual(at("roda gira"), ["**A statement that is true.** Written by K7.", "[x] A roda gira."]);
    const wrong = ["**A statement that is false.** It is put right by “O pedal chia\\.”.", "[ ] O pedal canta."];
    for (const near of ["[ ] O", "pedal canta"]) assert.deepEqual(at(near), wrong, near);
    assert.deepEqual(at("pedal chia"), ["**What is right** instead of “O pedal canta\\.”.", "O pedal chia."]);
    assert.equal(at("Ela abre")?.[0], "**Event 1 of 3** of the story, by its place in the list.");
    assert.match(
      at("Ela limpa")?.[0] ?? "",
      /^\*\*Event 2 of 3\*\*.* What stands under it follows it, in any order\.$/,
    );
    assert.deepEqual(at("bomba"), [
      "**It follows event 2 of 3**, in any order among the 2 that stand there.",
      "a bomba",
    ]);
    assert.deepEqual(at("selim"), ["**A card.** Its pile is “o”.", "selim"]);
    assert.deepEqual(at("guia"), ["**A card.** Its piles are “o” and “a”.", "guia"]);
    assert.deepEqual(at("abre  | vê  |\n| ele"), [
      "**abre** is the form of “abrir” for “ela” in “Oficina”. One word is tied to it.",
      "abre",
    ]);
    assert.equal(at("vê  |\n| ele")?.[0], "**vê** is the form of “ver” for “ela” in “Oficina”.");
  });

  it("is about what stands under the pointer", () => {
    for (const text of [wholeDialect, shop, shop.replaceAll("\n", "\r\n")]) {
      const unit = readUnit(text);
      for (let offset = 0; offset <= text.length; offset++) {
        const found = itemExplained(unit, offset);
        if (found) assert.ok(found.start <= offset && offset <= found.end, `${offset}: ${found.markdown}`);
      }
    }
  });

  it("is silent elsewhere", () => {
    for (const near of ["Oficina", "### o", "ela |"]) assert.equal(at(near), undefined, near);
    assert.equal(item("## A\n\nA no‸te.\n"), undefined);
  });
});

describe("hovering over values and codes", () => {
  const value = (marked: string): Told => told(marked, (text, offset) => explainAt(text, offset));
  const code = (marked: string): Told =>
    told(marked, (text, offset) => wordExplained(text, offset, (place) => offersAt(text, place, readUnit(text))));

  it("tells what a kind is, and what a value of an option does", () => {
    const block = (body: string): string => `## A\n\n\`\`\`activity\n${body}\n\`\`\`\n`;
    const [kind, place] = value(block("make: ti‸les # mine")) ?? [];
    assert.match(kind ?? "", /^\*\*make: tiles\*\*\n\nSquare tiles that are laid/);
    assert.equal(place, "tiles");
    assert.match(value(block('make: tiles\nfill: "bl‸ank"'))?.[0] ?? "", /^\*\*fill: blank\*\*\n\n\S/);
    assert.match(value(block("make: tiles\nlevels: [gentle, ha‸rd]"))?.[0] ?? "", /^\*\*levels: hard\*\*\n\n\S/);
    assert.match(value(block("make: tiles\nfi‸ll: blank"))?.[0] ?? "", /^\*\*fill\*\*\n\n\S/);
    for (const silent of ["make: tiles\ntitle: ti‸les", "make: ‸", "make: tilez‸", "make: tiles # ti‸les"])
      assert.equal(value(block(silent)), undefined, silent);
  });

  it("tells what a finding is, and a severity, where they are named", () => {
    const [markdown, place] = code("## A\n\n- a = b <!-- allow look-al‸ike: so -->\n") ?? [];
    assert.match(markdown ?? "", /^\*\*look-alike\*\*: \S.*\n\n\S/);
    assert.equal(place, "look-alike");
    assert.match(code("---\nseverities:\n  look‸-alike: off\n---\n")?.[0] ?? "", /^\*\*look-alike\*\*: /);
    assert.match(code("---\nseverities: { look-alike: of‸f }\n---\n")?.[0] ?? "", /^\*\*off\*\*: /);
    assert.match(code("```activity\nallow:\n  look-alik‸e: why\n```\n")?.[0] ?? "", /^\*\*look-alike\*\*: /);
    assert.equal(code("## A\n\n- look-al‸ike = off\n"), undefined);
    const settings = "severities:\n  look-alike: hi‸nt\n";
    const found = told(settings, (text, offset) => wordExplained(text, offset, (spot) => settingsOffersAt(text, spot)));
    assert.match(found?.[0] ?? "", /^\*\*hint\*\*: /);
  });
});
