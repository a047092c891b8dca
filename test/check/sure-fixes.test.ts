import assert from "node:assert/strict";
import { readUnitText } from "../support/units";

/*
 * Which fix is done unasked, and where none is, since what was meant is not sure.
 */

const pairs = "- pão = bread\n- mel = honey\n- sal = salt\n- chá = tea\n";
const claims = "- [x] A roda gira.\n- [ ] O pneu canta.\n- [x] A luz brilha.\n- [ ] A mola ri.\n";
const cuts = "- A roda | gira. = The wheel turns.\n- A luz | pisca. = The light blinks.\n";

/** What all fixes of a code write, those that are done unasked with an exclamation mark. */
async function written(text: string, code: string): Promise<readonly string[]> {
  const { findings } = await readUnitText(text);
  return findings
    .filter((finding) => finding.code === code)
    .map(({ fixes }) =>
      fixes
        .map(({ edits, preferred }) => `${preferred ? "!" : ""}${edits.map((edit) => edit.text).join("+")}`)
        .join(", "),
    );
}

const from = (name: string): string =>
  `## 1. Food {#food}\n\n${pairs}\n## Drinks\n\n- vinho = wine\n\n\`\`\`activity\nmake: tiles\nfrom: ${name}\n\`\`\`\n`;
const sort = (items: string): string => `## A\n\n${items}\n\`\`\`activity\nmake: sort\n\`\`\`\n`;
const piles = (items: string): string => sort(`### o\n\n${items}\n\n### a\n\n- uva\n- noz\n`);
const rebuild = (items: string): string => `## A\n\n${items}\n\`\`\`activity\nmake: rebuild\n\`\`\`\n`;

const calls = (items: string): string => strips(items).replace("strips", "calls");
const strips = (items: string): string => `## A\n\n${items}\n\`\`\`activity\nmake: strips\n\`\`\`\n`;

const cases: readonly (readonly [what: string, text: string, code: string, fixes: readonly string[]])[] = [
  ["a name that another one holds", from("Food"), "unknown-section", ['!"1. Food {#food}", Drinks']],
  ["a name with a slip", from("Drinsk"), "unknown-section", ['!Drinks, "1. Food {#food}"']],
  ["a name that is far from all", from("Kitchen"), "unknown-section", ['Drinks, "1. Food {#food}"']],
  [
    "a cross beside a tick",
    sort("- [√] O mar é fundo.\n- [×] O mar é doce.\n"),
    "meant-as-statement",
    ["![x] ", "![ ] "],
  ],
  ["a cross alone", sort(`${claims}- [×] O mar é doce.\n`), "meant-as-statement", [""]],
  ["Y beside D", sort("- [D] Su akar.\n- [Y] Su uçar.\n"), "meant-as-statement", ["![x] ", "![ ] "]],
  ["Y alone", sort(`${claims}- [Y] Su uçar.\n`), "meant-as-statement", [""]],
  ["S beside N", sort("- [S] O mar é fundo.\n- [N] O mar é doce.\n"), "meant-as-statement", ["![x] ", "![ ] "]],
  ["V beside O", sort("- [V] Kuu laulaa.\n- [O] Vesi virtaa.\n"), "meant-as-statement", ["![ ] ", "![x] "]],
  ["V beside F", sort("- [V] O mar é fundo.\n- [F] O mar é doce.\n"), "meant-as-statement", ["![x] ", "![ ] "]],
  [
    "x beside a tick, with no empty brackets",
    sort("- [✓] O mar é fundo.\n- [x] O mar é doce.\n- [X] O mar arde.\n"),
    "meant-as-statement",
    ["", "[ ]+[ ]", "[ ]+[ ]"],
  ],
  ["x beside a tick, with empty brackets", sort(`${claims}- [✓] O mar é fundo.\n`), "meant-as-statement", ["![x] "]],
  [
    "letters without brackets",
    sort("- R Das Rad rollt.\n- F Das Rad singt.\n"),
    "meant-as-statement",
    ["[x] ", "[ ] "],
  ],
  ["a bar among sentences with bars", rebuild(`${cuts}- Quero | um pneu.\n`), "meant-as-pair", [""]],
  ["a bar before the end of a sentence", sort(`${pairs}- Quero | um pneu.\n`), "meant-as-pair", [" = "]],
  ["a bar between words", sort(`${pairs}- roda | wheel\n`), "meant-as-pair", [" = "]],
  ["a lopsided slash before an ending", sort(`${pairs}- bonito /a = pretty\n`), "lopsided-slash", [" / , \\"]],
  ["a lopsided slash between forms", sort(`${pairs}- um aluno /uma aluna = pupil\n`), "lopsided-slash", [" / , \\"]],
  ["a lopsided slash between words", sort(`${pairs}- rápido/ veloz = fast\n`), "lopsided-slash", ["! / , \\"]],
  ["cards with commas between them", piles("pão, mel; sal"), "not-an-item", ["- +\n- +\n- , - "]],
  ["cards with no commas", piles("pão\nmel\nsal"), "not-an-item", ["!- +- +- "]],
  ["one wide slash", rebuild(`${cuts}- 水／お水 = water\n`), "lopsided-slash", ["! ／ , \\"]],
  [
    "two wide slashes",
    rebuild(`${cuts}- 私は／水を／飲む = I drink water\n`),
    "lopsided-slash",
    [" ／ , \\", " ／ , \\"],
  ],
  ["dates behind bullets", strips("- 7. Juli: Markt\n- 8. Juli: Regen\n"), "list-in-list", [", \\", ", \\"]],
  ["numbers that count behind bullets", strips("- 1. Ela ri.\n- 2. Ela lê.\n"), "list-in-list", ["!, \\", "!, \\"]],
  ["a date among events", strips("1. Ela ri.\n2. 24. Dezember: Markt\n"), "list-in-list", ["!\\"]],
  ["dates of events", strips("1. 3. Juli: Markt\n2. 4. Juli: Regen\n"), "list-in-list", ["!\\", "!\\"]],
  ["a sign of a pair that is its left side", sort("- = = equal\n"), "empty-answer", ["\\, "]],
  ["a bar that is its right side", sort(`${pairs}- barra = |\n`), "printed-bar", []],
  ["struck words", sort("- [ ] O ~~rio~~ mar é doce.\n- [x] O mar é fundo.\n"), "struck-text", ["+, "]],
  [
    "a row with a cell too many",
    "## A\n\n| a | b |\n| - | - |\n| Ela | ri. | She laughs. |\n| sal | salt | |\n",
    "too-many-cells",
    ["ri. \\| She laughs. , Ela \\| ri. ", "!"],
  ],
  [
    "colons and bars in notes under events",
    strips("1. Ela ri.\n2. Ela lê.\n3. Ela sai.\n\n- 9 h = início\n- Cola: 2 tubos\n- Eixo | roda\n"),
    "meant-as-pair",
    [],
  ],
  [
    "the writer of a correction, of a statement with another one",
    sort(`${claims}- [ ] O rio ri. <!-- by: K1 -->\n  - O rio corre. <!-- by: K2 -->\n`),
    "misplaced-comment",
    ["+ <!-- by: K2 -->"],
  ],
  [
    "boxes and ticks in lines of their own, where statements are called",
    calls("☐ O rio ri.\n☑ O mar é fundo.\n"),
    "not-an-item",
    ["- [ ] +- [x] "],
  ],
  ["the same beside pairs", calls("☐ O rio ri.\n☑ O mar é fundo.\n\n- mel = honey\n"), "not-an-item", []],
  [
    "the same where pairs are taken",
    sort("☐ O rio ri.\n☑ O mar é fundo.\n").replace("sort", "tiles"),
    "not-an-item",
    [],
  ],
  ["steps under an event", strips("1. Ela ri.\n   1. alto\n   2. baixo\n2. Ela lê.\n"), "nested-number", ["- +- "]],
  ["sentences under a pair", sort(`${pairs}- ovo = egg\n  1. Um ovo.\n  2. O ovo.\n`), "nested-number", ["!- +- "]],
  ["hidden signs beside an equals sign", sort(`${pairs}- מים\u200F =\u200F agua\n`), "meant-as-pair", ["! = "]],
  ["words between slashes", rebuild(`${cuts}- 她/买/米饭。 = She buys rice.\n`), "needs-bars", ["她|买|米饭。"]],
];

describe("what is done unasked", () => {
  for (const [what, text, code, fixes] of cases)
    it(what, async () => assert.deepEqual(await written(text, code), fixes));
});
