import assert from "node:assert/strict";
import { calls } from "../../src/activities/calls/kind";
import type { KindName } from "../../src/activities/contract";
import { planUnit } from "../../src/activities/plan";
import { readUnit } from "../../src/unit/read";
import { rowsOf } from "../calls/reader";
import { type PrintedPage, readPrint } from "../support/print";
import { printedAs } from "../support/printed";
import { readUnitText, testWorkshop } from "../support/units";
import { table } from "./material";

/*
 * A forms table from the text to the printed key, judged by the table as it stands in the text: each kind that it feeds shows its
 * forms, and the key is right.
 */

const [head = [], , ...rows] = table
  .trim()
  .split("\n")
  .map((line) =>
    line
      .split("|")
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );

/** `medir, eu` -> `meço` */
const forms = new Map(
  rows.flatMap(([person = "", ...cells]) =>
    cells.map((form, i): [string, string] => [`${head[i + 1]}, ${person}`, form]),
  ),
);

function unit(make: KindName, options = ""): string {
  return `---\nteaches: pt\n---\n\n## Forms\n\n${table}\n\`\`\`activity\nmake: ${make}\n${options}\n\`\`\`\n`;
}

const printed = (make: KindName, options = "") => printedAs(make, unit(make, options));

/** The papers of a unit's only activity, of which there may be no cards. */
async function papersOf(make: KindName, text: string): Promise<PrintedPage[]> {
  const files = await (await testWorkshop()).make(await readUnitText(text), {});
  const pdf = files.find(({ name }) => name.endsWith(`${make}.paper.pdf`));
  assert.ok(pdf);
  return readPrint(pdf.bytes);
}

const textOf = (pages: readonly PrintedPage[]): string =>
  pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(" ");

describe("a forms table", () => {
  it("becomes tiles, each form against its person and verb in the key", async () => {
    const { paper, pieces } = await printed("tiles", "grid: 3 x 3");
    const shown = pieces.pieces.flatMap(({ faces }) => faces.map(({ text }) => text)).filter(Boolean);
    assert.equal(shown.length, 24);
    const key = textOf(paper);
    for (const [prompt, form] of forms) {
      assert.ok(shown.includes(prompt) && shown.includes(form));
      assert.ok(key.includes(`${prompt} = ${form}`), prompt);
    }
  });

  it("becomes a loop that the table leads round, as the key says", async () => {
    const { pieces } = await printed("loop", "size: mini");
    const cards = pieces.pieces.map(({ mark, faces, solution }) => {
      return { mark, answer: faces[0]?.text, prompt: faces[1]?.text ?? "", solution };
    });
    assert.equal(cards.length, 12);
    for (const { prompt, solution } of cards) {
      const next = cards.filter(({ answer }) => answer === forms.get(prompt));
      assert.deepEqual(
        next.map(({ mark }) => mark),
        [solution],
      );
    }
  });

  it("becomes a board, called by the forms on the list", async () => {
    const { paper, card } = await printed("board", "grid: 3 x 4");
    const board = textOf(card.slice(0, 1));
    const list = paper.find(({ texts }) => texts.some(({ text }) => text.startsWith("Caller’s list:")));
    assert.ok(list);
    for (const [prompt, form] of forms) {
      for (const word of prompt.split(" ")) assert.ok(board.includes(word));
      const said = list.texts.find(({ text, x }) => text === form && x < 60);
      const shown = list.texts.filter(({ text }) => text === prompt);
      assert.ok(said && shown.some(({ y }) => Math.abs(y - said.y) < 1), `${form} is called for ${prompt}`);
    }
  });

  it("becomes cards to sort, the false ones with a form that is spelled differently and the right one in the key", async () => {
    const { pieces, paper } = await printed("sort", "");
    const cards = pieces.pieces.flatMap(({ faces: [face], solution }) =>
      Array.isArray(solution) && solution.length > 0 ? [{ text: face?.text ?? "", pile: String(solution[0]) }] : [],
    );
    assert.equal(cards.length, 12);
    const key = textOf(paper);
    let wrong = 0;
    for (const { text, pile } of cards) {
      const [prompt = "", form] = text.split(" = ");
      assert.equal(pile, form === forms.get(prompt) ? "Verdadeiro" : "Falso");
      if (pile === "Verdadeiro") continue;
      wrong++;
      // The correction is set in bold, so that it is a text of its own.
      assert.ok(key.includes(`${prompt} = ${forms.get(prompt)}`), key);
      assert.ok([...forms.values()].includes(form ?? ""));
    }
    assert.equal(wrong, 6);
  });

  it("becomes calls where nothing else is stated: a false one has a form that is wrong for its person, with the right one beside it", async () => {
    const text = unit("calls", "reserve: 2").replace("teaches: pt", "teaches: pt\nclasses: [12, 9]");
    assert.deepEqual((await readUnitText(text)).findings, []);
    const paper = await papersOf("calls", text);
    const lists = paper.filter(({ texts }) => texts.some((each) => each.text.startsWith("Caller’s list:")));
    assert.equal(lists.length, 2);
    for (const list of lists) {
      const rows = rowsOf(list);
      assert.equal(rows.length, 12);
      assert.equal(new Set(rows.map(([, said]) => said?.split(": ")[0])).size, 12);
      let wrong = 0;
      for (const [, said = "", answer, ...correction] of rows) {
        const [prompt = "", form = ""] = said.split(": ");
        assert.equal(answer, form === forms.get(prompt) ? "True" : "False", said);
        if (answer === "True") continue;
        wrong++;
        assert.equal(correction.join(" "), `${prompt}: ${forms.get(prompt)}`);
        const column = [...forms].filter(([each]) => each.split(", ")[0] === prompt.split(", ")[0]);
        assert.ok(column.some(([, each]) => each === form));
      }
      assert.ok(wrong >= 5 && wrong <= 7, `${wrong} of 12 are false`);
    }
    // What is written goes first, and then the table gives twins alone.
    const story = Array.from({ length: 6 }, (_, i) => `- [${i % 2 ? "x" : " "}] Passo ${i}.`).join("\n");
    const [activity] = (await readUnitText(text.replace("## Forms", `## Forms\n\n${story}`))).activities;
    assert.equal(activity?.summary, "6 statements to call");
  });

  it("calls no form wrong that another table has for the verb and the person", () => {
    const two = (second: string): string =>
      `---\nteaches: pt\n---\n\n## Now\n\n|  | medir |\n| --- | --- |\n| eu | meço |\n| tu | medes |\n| ela | mede |\n| nós | medimos |\n| vós | medis |\n| eles | medem |\n\n## Then\n\n|  | medir |\n| --- | --- |\n| eu | ${second} |\n\n\`\`\`activity\nmake: calls\nfrom: Now\ntwins: 3\nSEED\n\`\`\`\n`;
    const wrongFor = (text: string): Set<string> => {
      const said = new Set<string>();
      for (let seed = 1; seed <= 24; seed++) {
        const [activity] = planUnit(readUnit(text.replace("SEED", `seed: ${seed}`))).activities;
        assert.ok(activity?.request);
        for (const claim of calls.deal(activity.request).claims) if (!claim.truth) said.add(claim.text);
      }
      return said;
    };
    assert.ok(wrongFor(two("media")).has("medir, eu: mede"));
    assert.ok(!wrongFor(two("mede")).has("medir, eu: mede"));
  });

  it("gives calls and sort false twins: another form of the verb, wrong for the person, with the right one in the key", async () => {
    const persons = new Map([
      ["Eu", "eu"],
      ["Tu", "tu"],
      ["Ela", "ela"],
      ["Nós", "nós"],
    ]);
    const tied = [
      "- [x] Eu [meço](#medir) a roda.",
      "- [x] Tu [fazes](#fazer) café.",
      "- [x] Ela [abre](#abrir) a porta.",
      "- [x] Nós [medimos](#medir) o quadro.",
      "- [x] Chove.",
      "- [ ] Neva.",
    ].join("\n");
    for (const make of ["calls", "sort"] as const) {
      const text = `---\nteaches: pt\n---\n\n## Forms\n\n${table}\n## Story\n\n${tied}\n\n\`\`\`activity\nmake: ${make}\ntwins: 4\n\`\`\`\n`;
      const key = textOf((await papersOf(make, text)).slice(0, 1)).replace(/\s+/g, " ");
      const sentences = [...key.matchAll(/(Eu|Tu|Ela|Nós) (\S+) (a roda|café|a porta|o quadro)\./g)];
      const verb = { "a roda": "medir", café: "fazer", "a porta": "abrir", "o quadro": "medir" };
      let [right, wrong] = [0, 0];
      for (const [, person = "", form, object = ""] of sentences) {
        const column = Object.entries(verb).find(([name]) => name === object)?.[1];
        const own = forms.get(`${column}, ${persons.get(person)}`);
        const others = [...forms].filter(([prompt]) => prompt.startsWith(`${column}, `)).map(([, each]) => each);
        assert.ok(others.includes(form ?? ""), `${form} is no form of ${column}`);
        if (form === own) right++;
        else wrong++;
      }
      // Each twin and its correction; in a sort the true statement as well.
      assert.deepEqual([make, right, wrong], [make, make === "sort" ? 8 : 4, 4]);
    }
  });

  it("makes no packets of sentences, and says what it is good for", async () => {
    const { findings } = await readUnitText(unit("rebuild"));
    assert.deepEqual(
      findings.map(({ code, fixes }) => [code, fixes.map(({ title }) => title)]),
      [["no-sentences", ["Make a sort of the forms", "Make a loop of the forms"]]],
    );
    const own = await readUnitText(unit("rebuild", "packet: 2"));
    assert.deepEqual(own.findings[0]?.fixes, []);
    // What is to be written instead is told with a form of the table.
    assert.match(findings[0]?.message ?? "", /Put one in a sentence, as in `- … \[meço\]\(#medir\) … = …`/);
    const [events] = (await readUnitText(unit("strips"))).findings;
    assert.match(events?.message ?? "", /put one in an event, as in `1\. … \[meço\]\(#medir\) …`/);
  });
});
