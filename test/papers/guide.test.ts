import assert from "node:assert/strict";
import { readPrint } from "../support/print";
import { readUnitText, testWorkshop, unitOf } from "../support/units";

async function texts(text: string, name: string): Promise<string[]> {
  const files = await (await testWorkshop()).make(await readUnitText(text), {});
  const file = files.find((each) => each.name === `unit.${name}.pdf`);
  assert.ok(file, name);
  return (await readPrint(file.bytes)).map((page) => page.texts.map((each) => each.text).join("\n"));
}

const unit = unitOf(
  12,
  "grid: 3 x 3\nlevels: [gentle, hard]\ndecoys: 0",
  "---\ntitle: Words\nteaches: pt\nexplains: en\nclasses: [21, 27]\n---\n\n",
);

describe("the guide", () => {
  it("tells sets, deal codes, time, directions in both languages, answers and cautions", async () => {
    const { activities } = await readUnitText(unit);
    const all = (await texts(unit, "guide")).join("\n");
    for (const { code } of activities[0]?.deals ?? []) assert.ok(all.includes(code));
    for (const part of [
      "Guide: Words",
      "7 sets",
      "6 sets",
      "Spread the tiles",
      "Espalhem as peças",
      "Take care",
      "an adult works it",
      "school's own rules",
    ]) {
      assert.ok(all.replace(/\s+/g, " ").includes(part), part);
    }
    for (const [left, right] of [...unit.matchAll(/^- (\S+) = (\S+)$/gm)].map((match) => [match[1], match[2]])) {
      assert.ok(all.replace(/\s+/g, " ").includes(`${left} = ${right}`), `${left} = ${right}`);
    }
  });

  it("takes directions from the block, and says so where a language has none", async () => {
    const own = await texts(
      unit.replace("grid: 3 x 3", "grid: 3 x 3\ndirections:\n  en: Lay them down.\n  pt: [Primeiro., Depois.]"),
      "guide",
    );
    assert.match(own.join("\n"), /Lay them down\./);
    assert.match(own.join("\n"), /Depois\./);
    assert.doesNotMatch(own.join("\n"), /Spread the tiles/);
    const none = await texts(unit.replace("explains: en", "explains: uk"), "guide");
    assert.match(
      none.join("\n").replace(/\s+/g, " "),
      /no built-in directions in “uk”.*Those below are English\..*Directions \(en\) 1 Spread/,
    );
  });

  it("says so where the language that is taught has no directions", async () => {
    const said = async (teaches: string, more = ""): Promise<string> =>
      (await texts(unit.replace("teaches: pt", teaches).replace("grid: 3 x 3", `grid: 3 x 3${more}`), "guide"))
        .join("\n")
        .replace(/\s+/g, " ");
    const missing = await said("teaches: ja");
    assert.match(
      missing,
      /There are no built-in directions in “ja”; write your own under “directions”.*Spread the tiles/,
    );
    assert.doesNotMatch(missing, /are English/);
    // Once for all activities, with the names of those that lack them where others do not.
    const twice = await said("teaches: ja", "\ntitle: First\n```\n\n```activity\nmake: loop\ntitle: Round");
    assert.equal(twice.match(/no built-in directions/g)?.length, 1);
    const some = await said(
      "teaches: ja",
      "\ndirections:\n  ja: 並べる。\n```\n\n```activity\nmake: loop\ntitle: Round",
    );
    assert.match(some, /no built-in directions in “ja” for “Round”; write/);
    for (const [teaches, more] of [
      ["teaches: pt", ""],
      ["teaches: en-GB", ""],
      ["teaches: uk", "\ndirections:\n  uk: Розкладіть."],
      // Where the unit does not say what it teaches, there is nothing to miss.
      ["seed: 1", ""],
    ] as const)
      assert.doesNotMatch(await said(teaches, more), /no built-in directions/, teaches);
  });

  it("counts sheets and cuts on the prep sheet from the layout", async () => {
    // Shared edges of 3 × 3 tiles: R + C + 2 = 8 cuts a sheet; 13 sets (27 learners in pairs and a trio), one sheet each.
    const prep = (await texts(unit, "guide")).at(-1) ?? "";
    assert.match(prep, /Prep sheet/);
    assert.match(prep.replace(/\s+/g, " "), /Words – tiles card 13 13 8 /);
    // A4 at 160 g/m² is 9.98 g a sheet: 13 sheets 130 g.
    assert.match(prep.replace(/\s+/g, " "), /13 sheets, 130 g/);
  });
});

describe("what the guide says of each kind", () => {
  const statements = ["x", " ", "x", " ", "x", " "].map((mark, i) => `- [${mark}] Frase ${i}.`).join("\n");
  const calls = `## Said\n\n${statements}\n\n\`\`\`activity\nmake: calls\n\`\`\`\n`;
  const oneLine = async (text: string): Promise<string> => (await texts(text, "guide")).join(" ").replace(/\s+/g, " ");

  it("a caller's list is at hand, not pieces, and each has its hour", async () => {
    const front = "---\nteaches: pt\nexplains: en\nclasses: [8, 9]\n---\n\n";
    const { activities } = await readUnitText(front + calls);
    const [first, second] = activities[0]?.deals ?? [];
    const said = await oneLine(front + calls);
    assert.ok(said.includes(`Deals ${first?.code} (hour 1), ${second?.code} (hour 2) Time`), said);
    assert.ok(said.includes("At hand the caller’s list of the hour, for each group one soft object"), said);
    const [only] = (await readUnitText(calls)).activities[0]?.deals ?? [];
    assert.ok((await oneLine(calls)).includes(`Deals ${only?.code} Time`));
    assert.ok((await oneLine(unit)).includes("At hand the pieces, a clear table for each set"));
  });

  it("tiles: words on the rim are spoken of only where there are some", async () => {
    for (const [lang, blank, words] of [
      ["en", "Its rim is blank.", "Words on its rim may have no partner."],
      ["es", "El borde exterior queda en blanco.", "Las palabras del borde exterior pueden no tener pareja."],
      ["fr", "Le pourtour reste blanc.", "Les mots du pourtour peuvent ne pas avoir de partenaire."],
      ["de", "Am Rand steht nichts.", "Wörter am Rand haben vielleicht keinen Partner."],
      ["pt", "A borda fica em branco.", "As palavras da borda podem não ter par."],
    ] as const) {
      for (const [decoys, yes, no] of [
        ["", blank, words],
        ["\ndecoys: [xixi]", words, blank],
      ] as const) {
        const said = await oneLine(unitOf(12, `grid: 3 x 3${decoys}`, `---\nexplains: ${lang}\n---\n\n`));
        assert.ok(said.includes(yes) && !said.includes(no), `${lang}${decoys}: ${said}`);
      }
    }
  });
});

describe("the prep sheet", () => {
  const front = "---\nteaches: pt\nclasses: [10]\n---\n\n";
  const prep = async (text: string): Promise<string> =>
    ((await texts(text, "guide")).at(-1) ?? "").replace(/\s+/g, " ");
  const story = `${front}## Story\n\n1. Um.\n2. Dois.\n3. Três.\n4. Quatro.\n\n\`\`\`activity\nmake: strips\nslip: none\nbacks: numbers\n\`\`\`\n`;

  it("counts paper that is printed on both sides once, and says so", async () => {
    const said = await prep(story);
    // Five sets, a sheet each; A4 at 160 g/m² is 9.98 g.
    assert.match(said, /5 sheets, 50 g/);
    assert.match(said, /Story – strips card, both sides 5 5 7 /);
    assert.match(said, /“Story – strips” on both sides/);
    const plain = await prep(story.replace("backs: numbers", "backs: none"));
    assert.match(plain, /Story – strips card 5 5 7 /);
    assert.match(plain, /at 100 %, on one side, and lay/);
  });

  it("counts the guide's own sheets", async () => {
    for (const text of [unit, story, `${unit}\n\`\`\`stations\ndesks: 3\nminutes: 5\n\`\`\`\n`]) {
      const pages = await texts(text, "guide");
      const said = /Guide (\d+) sheets? of paper besides, with this one/.exec(
        (pages.at(-1) ?? "").replace(/\s+/g, " "),
      );
      assert.equal(Number(said?.[1]), pages.length);
    }
  });

  it("asks for copies of a master, and for the sheets of labels", async () => {
    const said = await prep(unitOf(12, "grid: 3 x 3\ncopies: by copier", front));
    assert.match(said, /Words – tiles card 1 master 8 /);
    assert.match(said, /onto card at 100 %, for the largest class: “Words – tiles” 5 times\./);
    assert.match(said, /Labels 1 sheet /);
    // Thirteen sets have a label each, fourteen labels fit a sheet; two sheets for fifteen.
    assert.match(await prep(unit), /Labels 1 sheet /);
    assert.match(await prep(unit.replace("27]", "30]")), /Labels 2 sheets /);
    assert.doesNotMatch(await prep(unit), /master/);
  });
});

describe("labels", () => {
  it("stand there once for every copy, with unit, activity, level, set, code and contents", async () => {
    const all = (await texts(unit, "labels")).join("\n").replace(/\s+/g, " ");
    const { activities } = await readUnitText(unit);
    for (const [i, deal] of (activities[0]?.deals ?? []).entries()) {
      assert.equal(all.split(deal.code).length - 1, deal.copies, deal.level);
      assert.ok(all.includes(`${deal.level}, set ${i === 0 ? 7 : 6}`));
    }
    assert.equal(all.split("9 tiles").length - 1, 13);
  });

  it("are as many for a master as the largest class needs sets, shared among its deals", async () => {
    const front = "---\nteaches: pt\nclasses: [10, 14]\n---\n\n";
    const label = /a copy of the master/g;
    for (const [options, labels] of [
      ["copies: by copier", 7],
      ["copies: by copier\nversions: 2", 8],
    ] as const) {
      const all = (await texts(unitOf(12, `grid: 3 x 3\n${options}`, front), "labels")).join("\n");
      assert.equal(all.replace(/\s+/g, " ").match(label)?.length, labels, options);
    }
  });
});
