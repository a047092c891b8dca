import assert from "node:assert/strict";
import { readUnit } from "../../src/unit/read";
import { applyEdits } from "../support/units";

/** What is found in a section with this text: each code with what its first fix makes of the text. */
function found(text: string): (string | undefined)[][] {
  const head = "## Oficina\n\n";
  return readUnit(head + text).problems.map(({ code, fixes: [fix] }) => [
    code,
    fix && applyEdits(head + text, fix.edits).slice(head.length),
  ]);
}

describe("traps in lists", () => {
  it("indents bullets by exactly what is missing, with what belongs to them", () => {
    assert.deepEqual(found("10. Ela pede:\n   - um selim\n     de couro\n   - uma luz\n11. Ela paga.\n"), [
      ["not-nested", "10. Ela pede:\n    - um selim\n      de couro\n    - uma luz\n11. Ela paga.\n"],
    ]);
    assert.deepEqual(found("-   [ ] A roda anda.\n  - A roda parou.\n"), [
      ["not-nested", "-   [ ] A roda anda.\n    - A roda parou.\n"],
    ]);
  });

  it("leaves bullets alone that are another list: behind a blank line, at the margin, with a shape of their own", () => {
    assert.deepEqual(found("10. Ela pede:\n\n   - um selim\n"), []);
    assert.deepEqual(found("10. Ela pede:\n- um selim\n"), []);
    assert.deepEqual(found("10. Ela pede:\n   - selim = saddle\n"), []);
    assert.deepEqual(found("- selim = saddle\n\n - um selim de couro\n"), []);
  });

  it("makes an item of a glued line where it stands, and of a pair beside the one above it", () => {
    assert.deepEqual(found("1. Ela chega.\n   -selim = saddle\n"), [
      ["not-an-item", "1. Ela chega.\n   - selim = saddle\n"],
    ]);
    assert.deepEqual(found("* roda = wheel\n  selim = saddle\n"), [
      ["not-an-item", "* roda = wheel\n* selim = saddle\n"],
    ]);
    assert.deepEqual(found("- roda = wheel\n-\u00A0selim = saddle\n"), [
      ["not-an-item", "- roda = wheel\n- selim = saddle\n"],
    ]);
  });

  it("takes the mark of a statement that stands too far in for no gap", () => {
    assert.deepEqual(found("   - [x] A roda gira.\n    - [ ] A luz ri.\n"), [
      ["not-an-item", "   - [x] A roda gira.\n   - [ ] A luz ri.\n"],
    ]);
  });

  it("makes items of all pairs in a paragraph under an item, without the signs that stood for bullets", () => {
    assert.deepEqual(found("- roda = wheel\n\n   − luz = light\n–sino = bell\n  e uma nota\n  bule = pot\n"), [
      ["not-an-item", "- roda = wheel\n\n- luz = light\n- sino = bell\n  e uma nota\n- bule = pot\n"],
    ]);
  });

  it("leaves the other lines of an item alone", () => {
    for (const text of [
      "1. Ela chega às\n   9.Depois paga.\n",
      "- [x] A roda = wheel é\n  azul = blue.\n",
      "- roda\n-5 graus\n",
      "- roda\n– disse ela\n",
      "- roda\n*grande* e redonda\n",
    ])
      assert.deepEqual(
        found(text).filter(([code]) => code === "not-an-item"),
        [],
        text,
      );
    const [second] = found("- roda =\n  selim = saddle\n");
    assert.equal(second?.[0], "second-equals");
  });

  it("puts a bar into a gap of a row of forms whose last cell is empty", () => {
    const forms = (row: string): string => `|  | medir | pesar |\n| --- | --- | --- |\n| eu | meço | peso |\n${row}\n`;
    for (const [row, ...fixed] of [
      ["| tu | medes   pesas |", "| tu | medes | pesas |", "| tu | medes pesas |"],
      ["| tu | medes   pesas |  |", "| tu | medes | pesas |", "| tu | medes pesas |  |"],
      ["| tu  medes | pesas", "| tu | medes | pesas", "| tu medes | pesas"],
      ["| tu\tmedes | pesas |", "| tu | medes | pesas |", "| tu medes | pesas |"],
    ] as const) {
      const text = `## A\n\n${forms(row)}`;
      const [problem, ...more] = readUnit(text).problems;
      assert.deepEqual([problem?.code, more.length], ["gap-in-cell", 0], row);
      const after = problem?.fixes.map(({ edits }) => applyEdits(text, edits)) ?? [];
      assert.deepEqual(
        after,
        fixed.map((each) => `## A\n\n${forms(each)}`),
      );
      for (const each of after) assert.deepEqual(readUnit(each).problems, []);
    }
    for (const row of ["| tu |  | pesas |", "| tu | medes |", "| tu | medes  muito | pesas |"])
      assert.deepEqual(found(forms(row)), [], row);
  });

  it("leaves plans, dialogues and lone numbers in paragraphs alone, and makes nothing of doubtful ones unasked", () => {
    for (const text of [
      "10:00 – começo\n10:20 – jogo\n10:40 – fim\n",
      "jogo - 5 minutos\nconto - 15 minutos\nfim - 20 minutos\n",
      "Rui: olá\nEva: bom dia\nRui: tudo bem\n",
      "24.Dezember\n",
      "3.Klasse\n",
      "1. Ela chega.\n2. Ela sai.\n\n(1) Ver o livro.\n",
    ])
      assert.deepEqual(found(text), [], text);
    for (const text of ["luz / light\nsino / bell\nselim / saddle\n", "a) Ela ri.\nb) Ela lê.\n"])
      assert.equal(readUnit(`## A\n\n${text}`).problems[0]?.fixes[0]?.unsure, true, text);
    for (const text of ["luz\tlight\nsino\tbell\n", "1.Ela ri.\n"])
      assert.equal(readUnit(`## A\n\n${text}`).problems[0]?.fixes[0]?.unsure, undefined, text);
    assert.deepEqual(found("(1) Ela chega.\n\n2.Ela sai.\n").length, 2);
  });

  it("takes many dots or hyphens in a row for a gap, but not those that end a word or part sentences", () => {
    for (const gap of [".....", "......", "-----", "———"])
      assert.deepEqual(found(`- [x] A Eva ${gap} a roda.\n`), [["underscore-gap", "- [x] A Eva [...] a roda.\n"]], gap);
    for (const text of [
      "A Eva espera... e ri.",
      "A Eva espera......",
      "A Eva --- sim --- ri.",
      "A Eva (...) ri.",
      "A — B – C",
    ])
      assert.deepEqual(found(`- [x] ${text}\n`), [], text);
  });

  it("takes bars under a sentence without any for an accepted order of its parts", () => {
    assert.deepEqual(
      found("- Hoje compro uma roda. = x\n  - Compro | uma roda | hoje.\n  - Uma roda | compro | hoje.\n"),
      [
        [
          "printed-bar",
          "- Hoje | compro | uma roda. = x\n  - Compro | uma roda | hoje.\n  - Uma roda | compro | hoje.\n",
        ],
      ],
    );
    assert.deepEqual(found("- Compro a roda a prazo. = x\n  - A roda | compro | em maio.\n"), [
      ["printed-bar", "- Compro a roda a prazo. = x\n  - A roda compro em maio.\n"],
    ]);
    for (const text of ["- roda = wheel\n  - a|b \\| c\n", "- a | roda = wheel\n  - roda | a\n"])
      assert.deepEqual(found(text), [], text);
  });

  it("takes few words below the card of a pile for cards, and short lines above bullets for names of piles", () => {
    for (const lead of ["", "  "])
      assert.deepEqual(found(`### o\n\n- sino\n${lead}selim\n${lead}pneu novo\n- mel\n`), [
        ["not-an-item", "### o\n\n- sino\n- selim\n- pneu novo\n- mel\n"],
      ]);
    for (const text of ["### o\n\n- o sino da porta\n  da rua\n", "### o\n\n- sino,\n  selim\n", "- sino\n  selim\n"])
      assert.deepEqual(found(text), [], text);
    assert.deepEqual(found("o:\n\n- sino\n\na :\n- luz\n"), [["not-a-heading", "### o\n\n- sino\n\n### a\n- luz\n"]]);
    assert.deepEqual(found("### o\n\n- sino\n\n**a**:\n\n- luz\n").length, 1);
    for (const text of ["o:\n\n- sino\n", "o:\n\nsino\n\na:\n\nluz\n", "o: sino\n\n- a\n\na: luz\n\n- b\n"])
      assert.deepEqual(found(text), [], text);
  });

  it("puts a correction in the statement's own line under it", () => {
    for (const sign of ["->", "→", "=>", "/", "="])
      assert.deepEqual(
        found(`- [ ] A Eva sai. ${sign} A Eva entra.\n`),
        [["lost-correction", "- [ ] A Eva sai.\n  - A Eva entra.\n"]],
        sign,
      );
    assert.deepEqual(found("- [ ] A Eva sai. (A Eva entra.)\n"), [
      ["lost-correction", "- [ ] A Eva sai.\n  - A Eva entra.\n"],
    ]);
    for (const text of [
      "- [ ] 2 + 2 = 5.\n",
      "- [ ] A Eva (sem luz) sai.\n",
      "- [ ] A Eva sai. (já)\n",
      "- [ ] A Eva é nova/velha.\n",
      "- [x] A Eva sai. -> A Eva entra.\n",
      "- [ ] A -> B -> C.\n",
    ])
      assert.deepEqual(found(text), [], text);
  });

  it("makes a table of forms that are laid out with spaces", () => {
    const table = "|  | abrir | sair |\n| --- | --- | --- |\n| eu | abro | saio |\n| nós | abrimos | saímos |\n";
    for (const text of [
      "       abrir   sair\neu     abro    saio\nnós    abrimos  saímos\n",
      "  abrir  sair\neu  abro  saio\nnós  abrimos  saímos\n",
      "          abrir   sair\n    eu    abro    saio\n    nós   abrimos saímos\n".replace("mos saí", "mos  saí"),
      "\tabrir\tsair\neu\tabro\tsaio\nnós\tabrimos\tsaímos\n",
    ])
      assert.deepEqual(found(text), [["not-a-table", table]], text);
    for (const text of [
      "   Roses  are  red,\nviolets  are  blue,  too\nand  so  are  you\n",
      "  abrir  sair\neu  abro  saio\n",
      "  abrir  sair\neu  abro\nnós  abrimos\n",
      "Ela  abre\neu  abro  saio\nnós  abrimos  saímos\n",
    ])
      assert.deepEqual(found(text), [], text);
  });

  it("empties a cell of a table of forms that says that there is none, and no other", () => {
    const forms = (cell: string): string => `|  | medir | pesar |\n| --- | --- | --- |\n| – | meço | ${cell} |\n`;
    for (const cell of ["—", "-", "--", "…", "...", "[...]", "____", "×"])
      assert.deepEqual(found(forms(cell)), [["dash-in-cell", forms(" ".repeat(cell.length))]], cell);
    for (const cell of ["", "a", "-o", "a-se", "5"]) assert.deepEqual(found(forms(cell)), [], cell);
    assert.deepEqual(found("| pt | en |\n| --- | --- |\n| roda | – |\n"), []);
  });

  it("says of a table with a full corner that it is a note only where there is nothing else", () => {
    const table = "| a | b | c |\n| --- | --- | --- |\n| d | e | f |\n";
    assert.deepEqual(found(table), [["not-a-table", table.replace("| a |", "|  |")]]);
    assert.deepEqual(found(`${table}\n- roda = wheel\n`), []);
    assert.deepEqual(found(`${table}\n1. Ela ri.\n`), []);
  });

  it("makes events of lines whose number is the next one, whatever sign it has", () => {
    for (const line of [
      "2 . Ela sai.",
      "2: Ela sai.",
      "2 - Ela sai.",
      "#2 Ela sai.",
      "2º Ela sai.",
      "2, Ela sai.",
      "２ Ela sai.",
    ])
      assert.deepEqual(found(`1. Ela chega.\n${line}\n`), [["not-an-item", "1. Ela chega.\n2. Ela sai.\n"]], line);
    assert.deepEqual(found("10. Ela chega.\n    11. Ela sai.\n"), [["not-an-item", "10. Ela chega.\n11. Ela sai.\n"]]);
    for (const line of ["3: Ela sai.", "2: ela sai", "2,5 Litros de água."])
      assert.deepEqual(found(`1. Ela chega.\n${line}\n`), [], line);
  });

  it("takes words and letters that judge for marks where the section has statements", () => {
    const head = "- [x] A roda gira.\n- [ ] A luz arde.\n";
    const made = (item: string): (string | undefined)[][] =>
      found(`${head}- ${item}\n`).map(([code, fixed]) => [code, fixed?.slice(head.length).trimEnd()]);
    for (const [item, mark] of [
      ["x O sino toca.", "[x]"],
      ["F O sino toca.", "[ ]"],
      ["V. O sino toca.", "[x]"],
      ["R: O sino toca.", "[x]"],
      ["falso – O sino toca.", "[ ]"],
      ["**Verdadeiro** – O sino toca.", "[x]"],
      ["неправда) O sino toca.", "[ ]"],
    ] as const)
      assert.deepEqual(made(item), [["meant-as-statement", `- ${mark} O sino toca.`]], item);
    for (const item of [
      "O Rui toca.",
      "Não, Rui, fica.",
      "Sim. O sino toca.",
      "Não – O sino toca.",
      "T Shirts sujas.",
      "R. Lima vem.",
      "P: Quem toca o sino?",
      "R: Quem toca o sino?",
      "N: Não sei onde está.",
      "J: Guten Morgen zusammen.",
      "T-Shirts der Klasse",
      "A Ana: O sino toca.",
      "x o sino",
    ])
      assert.deepEqual(made(item), [], item);
    assert.deepEqual(found("- roda = wheel\n- F O sino toca.\n"), []);
    const unsure = (item: string): unknown => readUnit(`## A\n\n${head}- ${item}\n`).problems[0]?.fixes[0]?.unsure;
    for (const item of ["V. Lima escreve livros.", "F Lima vem.", "R: O sino toca.", "[1] Uma nota."])
      assert.equal(unsure(item), true, item);
    assert.equal(unsure("x O sino toca."), undefined);
    assert.deepEqual(found(`${head}\n[V] verdadeiro\n[F] falso\n`), []);
  });

  it("tells a writer who is named in no comment", () => {
    for (const item of [
      "roda = wheel // by: K8",
      "roda = wheel (by: K8)",
      "roda = wheel by:K8",
      "roda = wheel [by: K8]",
      "roda = wheel # by: K8",
    ])
      assert.deepEqual(found(`- ${item}\n`), [["nearly-a-remark", "- roda = wheel <!-- by: K8 -->\n"]], item);
    for (const item of ["roda = wheel by: Ana", "canto by: K8 = song", "roda = wheel, by day"])
      assert.deepEqual(found(`- ${item}\n`), [], item);
  });

  it("takes a path for a picture, and a picture beside a word for a pair", () => {
    for (const [item, fixed] of [
      ["img/pneu.png = tyre", "![pneu](img/pneu.png) = tyre"],
      ["img\\pneu.jpg = tyre", "![pneu](img/pneu.jpg) = tyre"],
      ["tyre = pneu.svg", "tyre = ![pneu](pneu.svg)"],
    ] as const)
      assert.deepEqual(found(`- ${item}\n`), [["picture-path", `- ${fixed}\n`]], item);
    for (const [item, fixed] of [
      ["![roda](img/roda.png) a roda", "![roda](img/roda.png) = a roda"],
      ["a roda ![roda](img/roda.png)", "a roda = ![roda](img/roda.png)"],
    ] as const)
      assert.deepEqual(found(`- ${item}\n`), [["meant-as-pair", `- ${fixed}\n`]], item);
    for (const item of [
      "the file pneu.png = ficheiro",
      "![roda](img/roda.png)",
      "![roda](img/roda.png) is what we all look at",
    ])
      assert.deepEqual(found(`- ${item}\n`), [], item);
  });

  it("knows the signs behind numbers of other scripts", () => {
    assert.deepEqual(found("1。她出门。\n2、她买面包。\n3. 她回家。\n４．她睡觉。\n"), [
      ["not-an-item", "1. 她出门。\n2. 她买面包。\n3. 她回家。\n4. 她睡觉。\n"],
    ]);
  });

  it("takes a backslash between two answers for a slash", () => {
    assert.deepEqual(found("- roda = wheel \\ tyre\n"), [["lopsided-slash", "- roda = wheel / tyre\n"]]);
    assert.deepEqual(found("- roda \\= wheel = a\\b\n"), []);
  });

  it("takes a second sign right behind the first out", () => {
    for (const [text, fixed] of [
      ["- roda = = wheel\n", "- roda = wheel\n"],
      ["- roda =  ＝ wheel\n", "- roda =  wheel\n"],
      ["- roda = = = wheel\n", "- roda = wheel\n"],
      ["- roda = = wheel = tyre\n", "- roda = \\= wheel \\= tyre\n"],
      ["- roda = wheel = tyre\n", "- roda = wheel \\= tyre\n"],
      ["- roda e luz = wheel &amp; light = lamp\n", "- roda e luz = wheel &amp; light \\= lamp\n"],
      ["- 2 + 3 = 5; 3 + 4 = 7\n", "- 2 + 3 = 5; 3 + 4 \\= 7\n"],
    ] as const)
      assert.deepEqual(found(text), [["second-equals", fixed]]);
  });

  it("parts two pairs in one line, unasked only behind a bullet", () => {
    for (const [text, fixed, sure] of [
      ["- roda = wheel - luz = light\n", "- roda = wheel\n- luz = light\n", true],
      ["- roda = wheel - luz = light\n  - Uma luz.\n", "- roda = wheel\n- luz = light\n  - Uma luz.\n", false],
      ["- roda = wheel; luz = light\n", "- roda = wheel\n- luz = light\n", false],
      ["- roda = wheel / luz = light\n", "- roda = wheel\n- luz = light\n", false],
      ["- roda = wheel - luz = light; mola = spring\n", "- roda = wheel\n- luz = light\n- mola = spring\n", false],
    ] as const) {
      assert.deepEqual(found(text), [["second-equals", fixed]]);
      assert.equal(readUnit(`## A\n\n${text}`).problems[0]?.fixes[0]?.unsure !== true, sure, text);
    }
    const bar = readUnit("## A\n\n- roda = wheel | luz = light\n");
    const [, asText] = bar.problems[0]?.fixes ?? [];
    assert.deepEqual(readUnit(applyEdits(bar.text, asText?.edits ?? [])).problems, []);
  });

  it("takes one of two bullets out, unasked where nobody speaks", () => {
    for (const [text, fixed, sure] of [
      ["- - roda = wheel\n", "- roda = wheel\n", true],
      ["- - Entra! = Come in!\n", "- Entra! = Come in!\n", false],
      ["- - [x] A roda gira.\n", "- [x] A roda gira.\n", true],
      ["- [ ] A roda fala.\n  - - A roda gira.\n", "- [ ] A roda fala.\n  - A roda gira.\n", true],
      ["1. Ela diz:\n   - - Entra!\n", "1. Ela diz:\n   - Entra!\n", false],
      ["- + = plus\n", "- \\+ = plus\n", true],
    ] as const) {
      assert.deepEqual(found(text), [["list-in-list", fixed]]);
      assert.equal(readUnit(`## A\n\n${text}`).problems[0]?.fixes[0]?.unsure !== true, sure, text);
    }
  });

  it("takes long sides for a pair where the section has none that show the sign", () => {
    const long = "- bomba de ar azul: a pump for tyres\n";
    assert.deepEqual(found(long), [["meant-as-pair", "- bomba de ar azul = a pump for tyres\n"]]);
    assert.deepEqual(found(`- roda = wheel\n- luz = light\n- sino = bell\n${long}`), []);
  });

  it("takes signs that stand in many notes for those of a pair where the other items are pairs, or all have the same", () => {
    const pairs = "- luz = light\n- sino = bell\n- selim = saddle\n";
    const made = (item: string): (string | undefined)[][] =>
      found(`${pairs}- ${item}\n`).map(([code, fixed]) => [code, fixed?.slice(pairs.length).trimEnd()]);
    for (const item of [
      "roda / wheel",
      "roda/wheel",
      "roda／wheel",
      "roda ; wheel",
      "roda; wheel",
      "roda -wheel",
      "roda– wheel",
      "roda > wheel",
      "roda >> wheel",
      "roda || wheel",
      "roda   wheel",
      "roda\u3000wheel",
      "roda ... wheel",
      "roda ― wheel",
      "roda ➔ wheel",
      "roda <- wheel",
      "roda ∶ wheel",
    ])
      assert.deepEqual(made(item), [["meant-as-pair", "- roda = wheel"]], item);
    assert.ok(readUnit(`## A\n\n${pairs}- roda / wheel\n`).problems[0]?.fixes[0]?.unsure, "never done unasked");
    assert.deepEqual(made("roda / wheel / tyre"), [["meant-as-pair", "- roda = wheel / tyre"]]);
    for (const note of [
      "roda",
      "Vor- und Nachteile",
      "Bom dia, Ana!",
      "Rua 5, Porto",
      "o aluno/a aluna/a turma",
      "isto é uma nota, e longa",
      "ver [roda](#a)",
      "roda, luz, sino",
      "(roda)",
      "roda, wheel",
      "roda (wheel)",
      "pedir ao Rui (amanhã)",
      "rodas & luzes",
      "nh + lh",
      "rodas  e luzes",
      "bonito/a",
      "um/uma",
      "3 kg / 2 kg",
      "luz =/= luz",
      "10:30 – 11:15",
      "12.50 – 13.00",
      "Material: cola, tesoura",
      "cesto: pão, leite",
      "[Dicionário](https://a.example) – bom",
      "[Canções](https://b.example): para depois",
      "https://c.example/a – formas",
      "`roda / wheel`",
      "ser ≠ estar",
      "beau / bel / belle",
      "mar / mal",
      "um / uma",
      "luz/sino",
      "light/bell",
    ])
      assert.deepEqual(made(note), [], note);
    for (const [left, right] of [
      [", ", ""],
      ["، ", ""],
      [" (", ")"],
      ["（", "）"],
    ] as const) {
      const words = ["luz", "light", "sino", "bell", "selim", "saddle"];
      const items = [0, 2, 4].map((i) => `- ${words[i]}${left}${words[i + 1]}${right}\n`).join("");
      assert.equal(found(items).length, 3, items);
      assert.deepEqual(found(`- roda = wheel\n${items}`), [], items);
    }
    assert.deepEqual(found("- bonito/a\n- alto/a\n- baixo/a\n"), []);
    assert.deepEqual(found("- lindo, linda\n- baixo, baixa\n- velho, velha\n"), []);
    const alike = "- luz / light\n- sino / bell\n- selim / saddle\n";
    assert.equal(found(alike).length, 3);
    assert.deepEqual(found(`${alike}- roda\n`), []);
    assert.deepEqual(found("- luz / light\n- sino, bell\n- selim / saddle\n"), []);
    assert.deepEqual(found("- luz / light\n- sino / bell\n"), []);
    assert.deepEqual(found(`### Pile\n\n${alike}`), []);
    assert.deepEqual(found("luz / light\nsino / bell\nselim / saddle\n"), [
      ["not-an-item", "- luz = light\n- sino = bell\n- selim = saddle\n"],
    ]);
  });

  it("joins no text to another where signs of one would reach into the other", () => {
    assert.deepEqual(found("1. Ela ri.\n\n   Ela lê.\n"), [["unread-text", "1. Ela ri. Ela lê.\n"]]);
    assert.deepEqual(found("1. Ela *ri.\n\n   Ela* lê.\n"), [["unread-text", "1. Ela *ri.\n\n   - Ela* lê.\n"]]);
  });

  it("looks at blocks of notes only where they have no end, or end where an activity was to end", () => {
    assert.deepEqual(found("```\n- a = b\n```\n"), []);
    assert.deepEqual(found("~~~\n```activity\n```\n~~~\n"), []);
    assert.deepEqual(found("- a note\n  1. of two\n  2. parts\n"), []);
    assert.deepEqual(found("| a | b |\n| c | d | e |\n"), []);
    assert.deepEqual(found("| a | b |\nc | d\n"), []);
  });

  it("says of an open block or an indented activity wherever it stands that it is one, of a heading only where it is used", () => {
    const trap = (text: string): boolean[] => readUnit(`## A\n\n${text}`).problems.map((problem) => !!problem.trap);
    assert.deepEqual(trap("```\nnotes\n\n```activity\nmake: sort\n```\n"), [false]);
    assert.deepEqual(trap("```\nnotes\n\n- a = b\n"), [true]);
    assert.deepEqual(trap("- a = b\n\n  ```activity\n  make: sort\n  ```\n"), [false]);
    assert.deepEqual(trap("- a = b\n\n  ## B\n"), [true]);
  });

  it("makes items of all lines below one that becomes an item, whatever each lacks", () => {
    assert.deepEqual(found("• selim\n2. luz = light\n-[x] A roda gira.\n"), [
      ["not-an-item", "- selim\n- luz = light\n- [x] A roda gira.\n"],
    ]);
    assert.deepEqual(
      found("Notas\n2. Ela ri.\n-[x] A roda gira.\n[ ] A luz arde.\n-sela\n3. Ela sai.\n").map(([code]) => code),
      ["swallowed-list", "not-an-item", "not-an-item", "not-an-item"],
    );
  });

  it("takes a number without a sign for an event's only where it counts on", () => {
    assert.deepEqual(found("1 Ela chega.\n\n2. Ela sai.\n"), [["not-an-item", "1. Ela chega.\n\n2. Ela sai.\n"]]);
    assert.deepEqual(found("1) Ela chega.\n2 Ela sai.\n"), [["not-an-item", "1) Ela chega.\n2) Ela sai.\n"]]);
    assert.deepEqual(found("1 我出去。\n2 我回家。\n"), [["not-an-item", "1. 我出去。\n2. 我回家。\n"]]);
    for (const text of [
      "1 Ela chega.\n",
      "1. Ela chega.\n\n3 Ela sai.\n",
      "3 Ela chega.\n4 Ela sai.\n",
      "1 selim\n2 selins de couro\n",
      "1. Ela chega no dia\n   2 De maio.\n",
      "1. Ela chega.\n3 Ela sai.\n",
    ])
      assert.deepEqual(found(text), [], text);
  });

  it("takes a pair under a statement for no correction", () => {
    assert.deepEqual(
      found("- [ ] A roda parou.\n  - selim = saddle\n  - A roda anda.\n").map(([code]) => code),
      ["nested-item"],
    );
  });

  it("takes a pair with bars under a sentence with bars for no order, and tells that alone", () => {
    assert.deepEqual(
      found("- Hoje | o sino | toca. = a\n  - Hoje | a mola | ri. = b\n").map(([code]) => code),
      ["nested-item"],
    );
    assert.deepEqual(
      found("- Hoje | o sino | toca. = a\n  - Hoje | a mola | ri.\n").map(([code]) => code),
      ["other-parts"],
    );
  });

  it("takes out just the slashes that part nothing", () => {
    assert.deepEqual(found("- / ovo / / / clara = egg / / white /\n- a = b\n"), [
      ["empty-answer", "- ovo / clara = egg / white\n- a = b\n"],
    ]);
  });

  it("parts emphasis at bars in the first cell of a row, and not in the second", () => {
    const table = (left: string, right: string): string => `| a | b |\n| --- | --- |\n| ${left} | ${right} |\n`;
    assert.deepEqual(found(table("**a \\| roda**", "**the \\| wheel**")), [
      ["split-emphasis", table("**a** \\| **roda**", "**the \\| wheel**")],
    ]);
  });

  it("parts a text right below a table from it by a blank line, where no row stands below", () => {
    const table = "| a | b |\n| --- | --- |\n| roda | wheel |\n";
    const rows = (text: string): number => readUnit(`## A\n\n${text}`).sections[0]?.pairs.length ?? 0;
    for (const [text, fixed] of [
      [`${table}Isto é uma nota.\n`, `${table}\nIsto é uma nota.\n`],
      [`${table}| luz | light |\nUma nota.\nE outra.\n`, `${table}| luz | light |\n\nUma nota.\nE outra.\n`],
      [`${table}Uma nota.\n`.replaceAll("\n", "\r\n"), `${table}\nUma nota.\n`.replaceAll("\n", "\r\n")],
    ] as const) {
      assert.deepEqual(found(text), [["not-a-table", fixed]]);
      assert.deepEqual(found(fixed), []);
      assert.equal(rows(fixed), rows(text));
    }
    assert.deepEqual(found(`${table}Uma nota.\n| luz | light |\n`), [["not-a-table", undefined]]);
  });

  it("reads comments at the end of a table's row", () => {
    const unit = readUnit(
      "## A\n\n| a | b |\n| --- | --- |\n| roda | wheel <!-- by: K7 --> |\n| selim | saddle <!-- allow same-code: meant --> |\n",
    );
    const [section] = unit.sections;
    assert.deepEqual(
      section?.pairs.map(({ right, by }) => [right.answers[0].text, by?.code]),
      [
        ["wheel", "K7"],
        ["saddle", undefined],
      ],
    );
    assert.deepEqual(
      unit.silences.map(({ code, scope }) => [code, unit.text.slice(scope.start, scope.end).trim()]),
      [["same-code", "| selim | saddle <!-- allow same-code: meant --> |"]],
    );
  });
});
