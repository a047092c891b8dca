import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

const unit = (tie: string): string =>
  `## Verbs\n\n|     | medir | trazer |\n| --- | ----- | ------ |\n| eu  | meço  | trago  |\n| ela | mede  | traz   |\n\n## Story\n\n- [x] Eu ${tie} a conta.\n- [ ] Ela ri.\n`;

/** What each fix of the only `unknown-form` makes of a tie. */
async function fixed(tie: string): Promise<string[]> {
  const text = unit(tie);
  const found = (await readUnitText(text)).findings.filter(({ code }) => code === "unknown-form");
  assert.equal(found.length, 1, tie);
  return (found[0]?.fixes ?? []).map(
    ({ edits }) => /^- \[x\] Eu (.*) a conta/m.exec(applyEdits(text, edits))?.[1] ?? "",
  );
}

describe("fixes of ties", () => {
  for (const [tie, ...wanted] of [
    ["[meco](#medir)", "[meço](#medir)"],
    ["[Meco](#medir)", "[Meço](#medir)"],
    ["[meço](#medri)", "[meço](#medir)"],
    ['[trago](#trazer "ela")', '[trago](#trazer "eu")', '[traz](#trazer "ela")'],
    ['[trago](#trazer "Eu")', '[trago](#trazer "eu")'],
    ["[canto](#medir)"],
    ["[*meco*](#medir)"],
  ] as const) {
    it(`${tie} is ${wanted.join(" or ") || "not guessed"}`, async () => assert.deepEqual(await fixed(tie), wanted));
  }

  it("a column that is named alike is taken unasked only where it has the form", async () => {
    for (const [tie, unasked] of [
      ["[meço](#medri)", true],
      ["[mexo](#mexir)", false],
    ] as const) {
      const { findings } = await readUnitText(unit(tie));
      const [found] = findings.filter(({ code }) => code === "unknown-form");
      assert.deepEqual(
        found?.fixes.map(({ title, preferred }) => [title, preferred]),
        [["Change to “medir”", unasked]],
      );
    }
  });

  it("a tie without its second bracket keeps its person", async () => {
    for (const [tie, wanted] of [
      ['[trago](#trazer "eu"', '[trago](#trazer "eu")'],
      ['[trago](#trazer "eu" hoje', '[trago](#trazer "eu") hoje'],
      ["[trago](#trazer hoje", "[trago](#trazer) hoje"],
      ['[trago](#trazer "eu', '[trago](#trazer) "eu'],
    ] as const) {
      const sorted = "\n```activity\nmake: sort\n```\n";
      const text = unit(tie) + sorted;
      const [found] = (await readUnitText(text)).findings.filter(({ message }) => /second bracket/.test(message));
      assert.equal(applyEdits(text, found?.fixes[0]?.edits ?? []), unit(wanted) + sorted, tie);
    }
  });

  const fixedIn = async (text: string): Promise<string[]> => {
    const found = (await readUnitText(text)).findings.filter(({ code }) => code === "unknown-form");
    assert.equal(found.length, 1);
    return (found[0]?.fixes ?? []).map(({ edits }) => /\]\((.*)\) hoy/.exec(applyEdits(text, edits))?.[1] ?? "");
  };
  const table = (section: string, column: string): string =>
    `## ${section}\n\n|    | ${column} | ser |\n| -- | - | --- |\n| yo | voy | soy |\n\n`;
  const story = (tie: string): string => `## Story\n\n- [x] Yo [voy](${tie}) hoy.\n- [ ] Yo como.\n`;

  it("name the section of a column that has a slash in its name", async () => {
    assert.deepEqual(await fixedIn(table("Verbs", "ir/irse") + story("#ir/irse")), ["#Verbs/ir/irse"]);
    assert.deepEqual(await fixedIn(table("Two verbs", "ir/irse") + story('#ir/irse "yo"')), [
      '<#Two verbs/ir/irse> "yo"',
    ]);
    const both = table("Verbs", "ir/irse") + table("More", "ir/irse");
    assert.deepEqual(await fixedIn(both + story("#ir/irse")), ["#Verbs/ir/irse", "#More/ir/irse"]);
    const { findings } = await readUnitText(both + story("#More/ir/irse"));
    assert.deepEqual(
      findings.filter(({ code }) => code === "unknown-form"),
      [],
    );
  });

  it("keep the section where only the column is misspelt", async () => {
    const both = table("Verbs", "salir") + table("More", "salir");
    assert.deepEqual(await fixedIn(both + story("#More/salirr")), ["#More/salir"]);
  });
});

describe("a form that stands for several persons", () => {
  it("is told with all of them", async () => {
    const table = "|  | medir |\n| - | - |\n| eu | meço |\n| tu | meço |\n| ele | meço |\n";
    const { findings } = await readUnitText(
      `---\nteaches: pt\n---\n\n## Verbos\n\n${table}\n## Oficina\n\n1. Eu [meço](#medir) a roda.\n2. Ela sai.\n3. Ela paga.\n\n\`\`\`activity\nmake: strips\n\`\`\`\n`,
    );
    assert.deepEqual(
      findings.flatMap(({ code, message }) => (code === "unknown-form" ? [message] : [])),
      ["“meço” is the form of “medir” for “eu”, “tu” and “ele”: say for which."],
    );
  });
});
