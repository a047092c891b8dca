import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import * as prettier from "prettier";
import { applyEdits, readUnitText } from "../support/units";
import { parseFixture } from "./fixture";
import { items, meaning } from "./meaning";

const folder = path.join(__dirname, "fixtures");
const names = readdirSync(folder).sort();
const textOf = (name: string): string => parseFixture(readFileSync(path.join(folder, name), "utf8")).text;

const format = (text: string): Promise<string> => prettier.format(text, { parser: "markdown" });

/** Applies preferred fixes of reading until none is left. */
async function mended(text: string): Promise<string> {
  let now = text;
  for (let round = 0; round < 60; round++) {
    const { findings, unit } = await readUnitText(now);
    const codes = new Set(unit.problems.map(({ code }) => code));
    const fix = findings.filter(({ code }) => codes.has(code)).flatMap(({ fixes }) => fixes.slice(0, 1))[0];
    if (!fix) return now;
    now = applyEdits(now, fix.edits);
  }
  return now;
}

const food = ["## Food", "pão = bread", "mel = honey", "sal = salt", "chá = tea"];

/** What each trap was meant to be, and is after its fixes. */
const meant: Readonly<Record<string, readonly string[]>> = {
  "trap-list-in-list.md": [...food, "3. Gang = third course", "- nota = note", "# tag = hash", "> cita = quote"],
  "trap-underlined.md": [...food, "ovo = egg", "uva = grape", "figo = fig", "lima = lime"],
  "trap-emphasis.md": [...food, "ovo = egg", "uva = grape", "um figo = a fig", "lima = lime", "2*3 = 4*5"],
  "trap-open-comment.md": [...food, "ovo = egg by K7", "uva = grape by K8"],
  "trap-swallowed.md": [...food, "lima = lime", "1: Ela paga.", "2: Ela sai."],
  "trap-split.md": [...food, "ovo = egg", "uva = grape"],
  "trap-picture.md": [...food, "picture a spoon = a colher", "picture a fork = o garfo", "picture a knife = a faca"],
  "trap-underscores.md": [...food, "Eu [...] fome. = I am [...] hungry.", "muito bom = very good", "snake_case = x"],
  "trap-nearly.md": [
    ...food,
    "ovo = egg",
    "uva = grape",
    "figo = fig",
    "lima = lime",
    "kiwi = kiwi fruit",
    "alho = garlic",
    "couve = cabbage",
    "ervilha = pea",
    "true: Ela come.",
    "false: Ela bebe.",
    "true: Ela ri.",
    "true: Ela dorme.",
    "false: Ela corre.",
    "true: Ela canta.",
    "false: Ela nada.",
    "true: Ela pinta.",
    "true: Ela cose.",
    "true: Ela voa.",
  ],
  "trap-numbered.md": [...food, "ovo = egg", "true: Ela bebe.", "1: Ela come."],
  "trap-nested.md": [
    ...food,
    "ovo = egg",
    "uva = grape",
    "  as in Um ovo.",
    "false: Ela come.",
    "true: Ela bebe.",
    "false: Ela dorme.",
    "true: Ela ri.",
  ],
  "trap-not-nested.md": [
    ...food,
    "ovo = egg",
    "  as in Um ovo cozido.",
    "  as in Dois ovos.",
    "uva = grape",
    "false: O carro anda. but A bicicleta anda.",
    "1: Ela procura:",
    "  any a bomba",
    "  any a chave",
    "2: Ela enche:",
    "  any o pneu",
    "3: Ela pede:",
    "  any um cadeado",
    "  any uma luz",
    "4: Ela paga.",
  ],
  "trap-not-an-item.md": [...food, "ovo = egg", "uva = grape", "figo = fig"],
  "trap-glued.md": [
    ...food,
    "ovo = egg",
    "uva = grape",
    "figo = fig",
    "lima = lime",
    "kiwi = kiwi fruit",
    "pera = pear",
    "nabo = turnip",
    "  as in Um nabo.",
    "true: O pneu fura.",
    "true: A roda gira.",
    "true: A corrente parte.",
    "false: O selim cai.",
    "1: Ela chega. – Bom dia, diz ela. -5 graus.",
    "2: Ela paga.",
    "3: Ela sai.",
    "4: Ela pede:",
    "  any uma luz",
    "  any uma bomba",
    "pile Números",
  ],
  "trap-not-a-heading.md": [...food, "## Drinks"],
  "trap-indented.md": [...food, "ovo = egg", "uva = grape", "lima = lime"],
  "trap-inside-item.md": [...food, "ovo = egg", "uva = grape", "1: Ela chega.", "## Drinks", "vinho = wine"],
  "trap-open-notes.md": [...food, "ovo = egg"],
  "trap-open-notes-end.md": [...food, "1: Ela chega.", "2: Ela paga."],
  "trap-tables.md": [
    ...food,
    "ovo = egg",
    "uva = grape",
    "Eu [...] fome. = I am hungry. by K7",
    "figo = fig",
    "a faca = a knife",
    "lima = lime",
    "kiwi = kiwi fruit",
  ],
  "trap-under.md": [
    ...food,
    "ovo = egg",
    "  as in Um ovo [...].",
    "  as in Dois ovos.",
    "false: O carro [...] anda. but A bicicleta [...] anda.",
    "1: Ela pede:",
    "  any a pump",
    "  any 3. Gang",
    "2: Ela enche:",
    "  any o pneu",
  ],
  "trap-comments.md": [
    ...food,
    "ovo = egg by K7",
    "uva = grape by K7",
    "figo = fig by K7",
    "lima = lime",
    "kiwi = kiwi",
    "nabo = turnip by K7",
    "pera = pear",
    "alho = garlic",
    "soja = soy",
  ],
  "trap-fences.md": [...food, "ovo = egg"],
  "trap-first-blocks.md": [
    ...food,
    "ovo = egg",
    "uva = grape",
    "figo = fig",
    "lima = lime",
    "[kiwi] = kiwi",
    "1: Ela chega.",
    "2: [Ela]: sai",
    "3: # Ela paga.",
  ],
  "trap-too-deep.md": [
    ...food,
    "ovo = egg",
    "  as in Um ovo.",
    "  as in Dois ovos.",
    "  as in Três ovos.",
    "  as in Quatro ovos.",
    "uva = grape",
    "  as in Uma uva.",
    "figo = fig",
    "lima = lime",
    "c = d",
    "nabo = turnip",
    "pera = pear",
    "alho = garlic",
    "couve = cabbage",
    "soja = soy",
    "trigo = wheat",
    "false: O carro anda. but A bicicleta anda.",
    "false: Ela bebe.",
    "1: Ela pede:",
    "  any uma luz",
    "  any e uma bomba",
    "2: Ela paga.",
  ],
  "trap-no-bullets.md": [
    ...food,
    "ovo = egg",
    "uva = grape",
    "figo = fig",
    "lima = lime",
    "kiwi = kiwi",
    "alho = garlic",
    "pera = pear",
    "nabo = turnip",
    "couve = cabbage",
    "true: Ela come.",
    "false: Ela bebe.",
    "true: Ela ri.",
    "false: Ela dorme.",
    "1: Ela chega.",
    "2: Ela paga.",
    "3: Ela sai.",
    "4: Ela volta.",
    "5: Ela come.",
    "6: Ela bebe.",
    "7: Ela chega.",
    "8: Ela paga.",
  ],
  "trap-quoted.md": [...food, "ovo = egg", "uva = grape"],
  "trap-unprinted.md": [
    ...food,
    "ovo = an <old> egg",
    "uva = grape or so",
    "figo = <b> <fig>",
    "lima = <lime>",
    "o kiwi = kiwi fruit",
    "Lehrer*in oder Schüler*in = teacher",
    "2*3*4 = 24",
    "computador = computer",
    "pera = pear",
    "alho = garlic",
    "couve = cabbage",
    "true: Ela ri.",
  ],
  "trap-parted-table.md": [
    ...food,
    "ovo = egg",
    "uva = grape",
    "figo = fig",
    "lima = lime",
    "kiwi = kiwi by K7",
    "alho = garlic by K7",
    "couve = cabbage",
  ],
  "trap-other-fences.md": food,
};

describe("traps", () => {
  it("each fixture of a trap says what was meant", () => {
    assert.deepEqual(
      names.filter((name) => name.startsWith("trap-")),
      Object.keys(meant).sort(),
    );
  });

  for (const [name, wanted] of Object.entries(meant)) {
    it(`${name}: its fixes make it what was meant`, async () => {
      assert.deepEqual(items(await mended(textOf(name))), wanted);
    });
  }
});

/**
 * What a formatter makes of a trap where it is no longer the same trap. Elsewhere the formatted text must give the same codes.
 *
 * - indented-list: the formatter keeps code as code, and takes the spaces behind the bullet away, which mends that one.
 * - split-list: the formatter parts touching lists by a blank line; they still differ in their sign.
 */
const rewritten: Readonly<Record<string, string>> = {
  "trap-underlined.md":
    "a line of signs under an item becomes `# ` before it, which is a finding of its own (list-in-list), or part of its line",
  "trap-nearly.md": "a tab becomes a space and leaves no trace; an empty box gets a backslash, which makes it text",
  "trap-not-an-item.md":
    "a lone asterisk or hyphen without a space gets a backslash or stays; the line is joined to its paragraph",
  "trap-emphasis.md": "asterisks that print become low lines, which print as well",
  "trap-glued.md": "lines that go on an item are joined to it, and signs at their beginning get a backslash",
  "trap-underscores.md": "low lines get backslashes, which prints them as they are",
  "trap-indented.md": "the spaces behind a bullet are taken away, which mends it",
  "trap-not-nested.md": "bullets that are not far enough in become items of their own, without a trace",
  "trap-open-notes.md": "a block round an activity gets a longer fence, as if the activity were to be shown",
  "trap-open-notes-end.md": "an open block is closed at the end of the file",
  "trap-fences.md":
    "an open fence is closed at the end of the file, so that what stands below is unreadable as options",
  "yaml-front-blank.md": "front matter below a blank line becomes a line of asterisks and a heading",
  "yaml-front-close.md": "a fourth hyphen at the end of front matter becomes a line of its own below it",
};

describe("a round trip through a common Markdown formatter (prettier)", () => {
  for (const name of names) {
    it(`${name}: ${rewritten[name] ?? "changes no meaning, and keeps its findings"}`, async () => {
      const text = textOf(name);
      const formatted = await format(text);
      const codes = async (source: string): Promise<string[]> =>
        [
          ...new Set(
            (await readUnitText(source)).findings.filter(({ severity }) => severity !== "hint").map(({ code }) => code),
          ),
        ].sort();
      if (rewritten[name] !== undefined) {
        // The formatter itself changed what Markdown reads; it must at least not make new faults.
        const before = new Set(await codes(text));
        const added = (await codes(formatted)).filter((code) => !before.has(code));
        assert.deepEqual(
          added.filter(
            (code) =>
              !["list-in-list", "unused-pairs", "missing-picture", "unreadable-yaml", "wrong-option"].includes(code),
          ),
          [],
        );
        return;
      }
      assert.deepEqual(meaning(formatted), meaning(text));
      assert.deepEqual(await codes(formatted), await codes(text));
    });
  }
});
