import assert from "node:assert/strict";
import { materialWords, paperLanguages, slipWords } from "../../src/activities/paper-words";
import { paperPages } from "../support/guide";
import { testTypeface } from "../support/typeface";
import { readUnitText, testWorkshop } from "../support/units";

/* What learners read on slips is in the language that explains. */

const unit = (explains: string): string => `---
title: Oficina
teaches: pt
explains: ${explains}
classes: [4]
---

## Bancada

- a roda = A
- o selim = B
- o travão = C
- a buzina = D
- o quadro = E
- o raio = F
- a bomba = G
- a porca = H

\`\`\`activity
make: board
\`\`\`

\`\`\`activity
make: loop
versions: 2
take: 4
\`\`\`

## Manhã

1. O Tomé abre a oficina.
2. Ele mede o quadro.
3. Ele fecha a porta.

\`\`\`activity
make: strips
\`\`\`

## Frases

- O pneu | perde ar | na subida. = I
- Onde | guardas | a chave? = J

\`\`\`activity
make: rebuild
slip: sentences
\`\`\`

## Verdade

- [x] O Tomé mede o quadro.
- [ ] A buzina canta.
  - A buzina apita.
- [x] Ele fecha a porta.
- [ ] O gato mede a roda.
  - O gato dorme.
- [x] Chove.
- [ ] Neva.

\`\`\`activity
make: calls
teams: 2
blanks: 1
\`\`\`
`;

/** The texts of each slip sheet of a unit, by kind. */
async function slips(explains: string): Promise<ReadonlyMap<string, string>> {
  const workshop = await testWorkshop();
  const reading = await readUnitText(unit(explains));
  assert.deepEqual(
    reading.findings.filter(({ severity }) => severity === "error").map(({ message }) => message),
    [],
  );
  return new Map(
    reading.activities.map((activity) => {
      const [deal] = activity.deals;
      assert.ok(deal, activity.title);
      const sheets = workshop
        .view(reading, activity, deal, "papers")
        .filter(({ items }) => items.some((item) => item.type === "line" && item.role === "cut"));
      const texts = sheets.flatMap(({ items }) =>
        items.flatMap((item) => (item.type === "text" ? [item.runs.map(({ text }) => text).join("")] : [])),
      );
      return [activity.make, texts.join(" ")];
    }),
  );
}

describe("words on slips", () => {
  it("stand in the language that explains, for each kind", async () => {
    for (const lang of paperLanguages) {
      const words = slipWords(lang);
      const said = await slips(lang);
      const expected: Readonly<Record<string, readonly string[]>> = {
        board: [words.teacher, words.total, words.board],
        loop: [words.card, words.circle(2), words.group],
        strips: [words.place, words.strip, words.set],
        rebuild: [words.packet, words.sentence],
        calls: [words.points, words.team(2), words.statement, words.rightIs],
      };
      for (const [make, own] of Object.entries(expected))
        for (const word of own) assert.ok(said.get(make)?.includes(word), `${lang} ${make} ${word}: ${said.get(make)}`);
    }
    assert.match((await slips("de-AT")).get("strips") ?? "", /Streifen/);
  });

  it("are English where there are none, and the guide says so", async () => {
    assert.match((await slips("uk")).get("strips") ?? "", /Place Strip Right/);
    const note = "no built-in words for slips and cards of stations in “uk”";
    assert.ok((await paperPages(unit("uk"))).join(" ").includes(note));
    assert.ok(!(await paperPages(unit("pt"))).join(" ").includes("built-in words for slips"));
  });

  it("can be printed, and leave out nothing", async () => {
    const typeface = await testTypeface();
    for (const lang of paperLanguages) {
      for (const word of Object.values(slipWords(lang))) {
        const text = typeof word === "string" ? word : word(7 as never);
        assert.notEqual(text.trim(), "");
        assert.deepEqual(typeface.missing(text), []);
        if (typeof word !== "string") assert.ok(text.includes("7"), text);
      }
    }
  });

  it("stand on the cards of stations and desks too", async () => {
    const plan = (options: string): string => `\n\`\`\`stations\nminutes: 3\n${options}\`\`\`\n`;
    const pages = async (lang: string, options: string): Promise<string> =>
      (await paperPages(unit(lang) + plan(options))).join(" ");
    assert.match(
      await pages("de-CH", ""),
      /Station 2: .* Material .* Was zu tun ist \(de-CH\) .* Ab Hier Danach .* Gruppe 2 geht zu Station 3/,
    );
    assert.match(
      await pages("pt", "stations: [strips]\ndesks: 2\n"),
      /Mesa 1: .* grupo 1 vão para a mesa 2 .* fiquem até ao fim/,
    );
    assert.match(await pages("uk", ""), /Station 2: .* What to do .* go to station 3/);
  });

  it("list what is at hand at stations and desks in the language of the directions, in the guide in English", async () => {
    const plan = (options: string): string => `\n\`\`\`stations\nminutes: 3\n${options}\`\`\`\n`;
    for (const lang of paperLanguages) {
      const words = materialWords(lang);
      const all = await paperPages(unit(lang) + plan(""));
      const expected = [
        [words.pieces, words.boardTable, words.scoreSlip("", words.pencil), words.list],
        [words.pieces, words.hanging, words.roomPlan, words.recordingSlip("", words.pencil)],
        [words.pieces, words.table, words.recordingSlip("", words.pencil)],
        [words.pieces, words.bags(2), words.sentenceSlip("", words.pencil)],
        [
          words.list,
          words.object,
          words.tallySlip("", words.pencil),
          words.blankSlips("", words.pencils),
          words.tallySheet(2, ""),
        ],
      ];
      const cards = all.filter((page) => /(Station|Estación|Atelier|Estação) \d: /.test(page));
      assert.equal(cards.length, expected.length);
      expected.forEach((list, i) => {
        assert.ok(
          cards[i]?.includes(list.join(", ").replace(/\s+/g, " ")),
          `${lang}: ${list.join(", ")} in ${cards[i]}`,
        );
      });
      assert.ok(all.join(" ").includes(materialWords("en").scoreSlip("", "a pencil")));
    }
    assert.ok(
      (await paperPages(unit("uk") + plan(""))).join(" ").includes("At hand the pieces, a clear table for each board"),
    );
    const typeface = await testTypeface();
    for (const lang of paperLanguages)
      for (const [key, word] of Object.entries(materialWords(lang))) {
        const text = typeof word === "string" ? word : word(7 as never, 8 as never);
        assert.deepEqual(typeface.missing(text), []);
        if (typeof word !== "string") assert.ok(text.includes("7"), text);
        if (lang !== "en") assert.notEqual(word, materialWords("en")[key as keyof ReturnType<typeof materialWords>]);
      }
  });

  it("name packets on labels as directions do", async () => {
    for (const lang of paperLanguages) {
      const { packet } = slipWords(lang);
      const labels = (await paperPages(unit(lang), "labels")).join(" ");
      assert.ok(labels.includes(`${packet} 2 · set 1`), labels);
      const guide = (await paperPages(unit(lang))).join(" ").toLowerCase();
      assert.ok(guide.includes(packet.toLowerCase()), `${lang}: directions speak of ${packet}`);
    }
  });
});
