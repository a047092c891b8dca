import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";

/** The codes of what is found in a section with this text. */
const codes = (text: string): string[] => readUnit(`## Oficina\n\n${text}`).problems.map(({ code }) => code);

describe("notes in a section", () => {
  it("are left alone where nothing in them surely was an item", () => {
    for (const text of [
      "The wheel = the round one, as all of you will have seen in the picture.\n",
      "Remember: bring the pump.\n",
      "Ask: who has one?\nWait: let them look.\nThen: go on.\n",
      "One\ntwo\n",
      "a) only one\n",
      "2024 – a year\n",
      "3.5 kg of nails\n",
      "12.Oktober or not\n9.November\n",
      "> A word of a friend.\n> - and a list\n",
      "```js\nconst a = 1;\n```\n",
      "~~~yaml\ntitle: x\n~~~\n",
      "    const a = 1;\n",
      "- roda = wheel\n\n| a | b | c |\n| --- | --- | --- |\n| d | e | f |\n\nNo row | of it\n",
      "- a note\n  - of two\n    - levels\n",
      "- a note\n\n  and more of it\n",
      "- ~~~js\n  const a;\n  ~~~\n",
      "- <!-- roda = wheel -->\n",
      "- roda = wheel\n- luz = light\n- sino = bell\n- see also: page 12\n- bring scissors - 12 pairs\n",
      "- https://a.example/?q=1\n- see also: page 12\n- Nota: sem rodas\n",
      "- [1] A source.\n- [2] Another one.\n",
      "- [F] only one\n",
      "- roda = wheel\n- [n] a noun\n- [f] a feminine one\n",
      "- [x] A roda gira.\n- [2] A source.\n- [...] A gap.\n- [roda](#x) A link.\n- [rodas] A word.\n",
      "10- or 12-year-olds come.\n",
      "**Only one bold line**\n\n- roda\n",
      "### o\n\n- pneu\n\na note\n",
      "### o\n\nAll of them are round.\n",
      "- [x] A roda gira.\n\n**Part one**\n\n**Part two**\n",
      "1. Ela sai.\n   Ela volta.\n",
      "1. Ela vai à\nFigueira hoje.\n",
      "- [x] Ela sai.\n  Ela volta.\n",
      "- Ela sai. = She leaves.\n  She comes back.\n",
      "1-A is a door\n",
      "2.b is open\n",
      "- a note\n\n  | a | b | c |\n  | --- | --- | --- |\n  | d | e | f |\n",
    ])
      assert.deepEqual(codes(text), [], text);
  });

  it("may say in items what only looks like a sign that is lost", () => {
    for (const item of [
      "5 < 6 = true",
      "a <- b = c",
      "<https://a.example> = site",
      "`<b>` = bold",
      "\\<b> = bold",
      "com*pu*tador = computer",
      "*Lehrer* und *Schüler* = teacher and pupil",
      "2 * 3 * 4 = 24",
      "a ~ b ~~ c = d",
      "und/oder = and/or",
      "https://a.example/ b = c",
      "[...] = gap",
      "[meço](#medir) = I measure",
      '[meço](<#to measure> "eu") = I measure',
      "[^] = caret",
      "roda = wheel <!-- by hand -->",
      "2 ** 3 ** 4 = 2 * 3 * 4",
      "a* b* = c",
      "a <- b = c -> d",
      "roda = wheel|tyre",
      "l’eau = wa‖ter",
      "roda = wheel \\| tyre",
      "[the map](map.png) of it = mapa",
      "![a](a.png) / ![b](b.png) = c",
      "[medir](https://a.example) = to measure",
      "roda = wheel <!-- allow me a note -->",
    ])
      assert.deepEqual(codes(`- ${item}\n`), [], item);
  });
});
