import assert from "node:assert/strict";
import type { Finding } from "../../src/base/finding";
import { Random } from "../../src/base/seed";
import { applyEdits, readUnitText } from "../support/units";

/* What is offered for something quiet brings up nothing loud, and for a warning no other one. */

const lefts = "o fio,a fita,o laço,o pano,a lã,a renda,o botão,a agulha,o dedal,a malha,a bainha,o molde".split(",");
const rights =
  "the thread,the ribbon,the bow,the cloth,the wool,the lace,the button,the needle,the thimble,the knit,the hem".split(
    ",",
  );

/** Pairs of which some share answers, and options that leave hardly any words over. */
function drawn(seed: number): string {
  const random = new Random(`calm/${seed}`);
  const below = (count: number): number => random.shuffle([...Array(count).keys()])[0] ?? 0;
  const some = <T>(items: readonly T[]): T => items[below(items.length)] as T;
  const count = 5 + below(7);
  const pairs = lefts.slice(0, count).map((left, i) => {
    const right = below(4) === 0 ? some(rights) : rights[i % rights.length];
    return `- ${below(6) === 0 ? some(lefts) : left} = ${right}${below(6) === 0 ? ` / ${some(rights)}` : ""}`;
  });
  const kind = some(["loop", "loop", "tiles"]);
  const options =
    kind === "loop"
      ? [some(["", "decoys: 1", "decoys: 2", "levels: [gentle, hard]"]), some(["", `take: ${count - 1}`, "take: 5"])]
      : [some(["grid: 2 x 2", "grid: 2 x 3"]), some(["outer: decoys", "decoys: 2", "levels: [gentle, hard]"])];
  const lines = [`make: ${kind}`, ...options, `seed: ${1 + below(30)}`].filter((line) => line !== "");
  return `---\nteaches: pt\nexplains: en\n---\n\n## Costura\n\n${pairs.join("\n")}\n\n\`\`\`activity\n${lines.join("\n")}\n\`\`\`\n`;
}

const isLoud = ({ severity }: Finding): boolean => severity === "error" || severity === "warning";

/** What of some findings is loud that others do not have. */
function newly(after: readonly Finding[], before: readonly Finding[]): string[] {
  const had = new Set(before.filter(isLoud).map(({ code }) => code));
  return after.filter((each) => isLoud(each) && !had.has(each.code)).map(({ code }) => code);
}

/** Seeds of which some fix that is proven by itself would bring up a warning, and others. */
const seeds: Readonly<Record<string, readonly number[]>> = {
  "tiles with words outside": [27, 48, 163, 165],
  "levels that would not differ": [40, 68],
  "circles that would close early": [42, 104, 106],
  "cards and edges of which there would be too few": [65, 100],
  "a second circle": [129],
  "what comes": Array.from({ length: 24 }, (_, i) => i + 1),
};

describe("fixes of what is quiet, or only a warning", () => {
  const tried = new Map<string, number>();
  for (const [name, own] of Object.entries(seeds)) {
    it(`bring up no warning that was not there: ${name}`, async () => {
      for (const text of own.map(drawn)) {
        const { findings } = await readUnitText(text);
        // Where a proof fails already, what is warned of later may only be hidden now.
        if (findings.some(({ severity }) => severity === "error")) continue;
        for (const { code, fixes } of findings) {
          for (const { title, edits } of fixes) {
            const after = (await readUnitText(applyEdits(text, edits))).findings;
            tried.set(code, (tried.get(code) ?? 0) + 1);
            assert.deepEqual(newly(after, findings), [], `${code}: ${title}\n${text}`);
          }
        }
      }
    });
  }

  it("are many", () => {
    for (const code of ["duplicate-answer", "early-close", "unused-pairs"])
      assert.ok((tried.get(code) ?? 0) > 5, `${code}: ${tried.get(code)}`);
  });
});

const unit = (lines: readonly string[], activity: string): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Costura\n\n${lines.join("\n")}\n\n\`\`\`activity\n${activity}\n\`\`\`\n`;

/** Titles of the fixes of a code's first finding, those that may be applied unasked marked. */
async function offers(code: string, text: string): Promise<string[]> {
  const { findings } = await readUnitText(text);
  const finding = findings.find((each) => each.code === code);
  assert.ok(finding, code);
  return finding.fixes.map(({ title, preferred }) => `${title}${preferred ? " *" : ""}`);
}

describe("another seed for look-alikes, and a pair less", () => {
  const alike = [
    "- a fita / a tira = the bow!",
    "- O laço = the thread / the cord",
    "- o fio = the cloth / bow",
    "- o laço = the wool",
    "- o fio = the hem",
    "- a lã = the lace",
    "- a renda = the bow / the lace",
    "- a tira = the knit",
    "- o pano = the bow!",
  ];

  it("are offered only where no cards are missing then, and levels differ", async () => {
    let tried = 0;
    for (const options of ["levels: [gentle, hard]", "decoys: 1"]) {
      for (const seed of [1, 4, 7, 9, 10, 12, 14, 16]) {
        const text = unit(alike, `make: loop\ntake: 6\n${options}\nseed: ${seed}`);
        const { findings } = await readUnitText(text);
        for (const { code, fixes } of findings) {
          if (code !== "look-alike") continue;
          for (const { title, edits } of fixes) {
            if (!title.includes("meant")) tried++;
            const after = (await readUnitText(applyEdits(text, edits))).findings;
            assert.deepEqual(newly(after, findings), [], `${options}, seed ${seed}: ${title}`);
          }
        }
      }
    }
    assert.ok(tried > 5, `${tried}`);
  });
});

describe("a pair less on a board where the words are called", () => {
  const words = ["o pano = cloth", "o tecido = cloth", "fio = thread", "Fio = wire", "a lã = wool", "a renda = lace"];

  it("brings no two words together that sound the same", async () => {
    let tried = 0;
    for (let seed = 1; seed <= 24; seed++) {
      const options = `make: board\ngrid: 2 x 2\nclue: word\nshow: gloss\nseed: ${seed}`;
      const text = unit(
        words.map((word) => `- ${word}`),
        options,
      );
      const { findings } = await readUnitText(text);
      for (const { title, edits } of findings.flatMap(({ code, fixes }) =>
        code === "duplicate-answer" ? fixes : [],
      )) {
        tried++;
        const after = (await readUnitText(applyEdits(text, edits))).findings;
        assert.deepEqual(newly(after, findings), [], `seed ${seed}: ${title}`);
      }
    }
    assert.ok(tried > 10, `${tried}`);
  });
});

describe("a fix that may be applied unasked", () => {
  const pairs = lefts.slice(0, 5).map((left, i) => `- ${left} = ${rights[i]}`);

  it("makes tiles of what is there, unless words for the outside are missing then", async () => {
    assert.deepEqual(await offers("too-few-pairs", unit(pairs, "make: tiles\ngrid: 2 x 3")), [
      "Make 2 × 2 tiles *",
      "Leave 2 inner edges blank",
    ]);
    assert.deepEqual(await offers("too-few-pairs", unit(pairs, "make: tiles\ngrid: 2 x 3\ndecoys: 1")), [
      "Make 2 × 2 tiles *",
      "Leave 2 inner edges blank, with blank outer edges",
    ]);
    assert.deepEqual(await offers("too-few-pairs", unit(pairs, "make: tiles\ngrid: 2 x 3\ndecoys: 4")), [
      "Make 2 × 2 tiles, with 1 word on the outer edges",
      "Leave 2 inner edges blank, with blank outer edges",
    ]);
  });

  it("takes six statements, unless these contradict each other, are unfair or leave too few", async () => {
    const claims = [
      "- [x] O fio é longo.",
      "- [ ] A lã ri.",
      "- [x] O dedal brilha.",
      "- [ ] O pano canta.",
      "- [x] A fita cai.",
      "- [ ] A renda nada.",
    ];
    const calls = (lines: readonly string[], options = ""): Promise<string[]> =>
      offers("too-few-statements", unit(lines, `make: calls\ntake: 4${options}`));
    assert.deepEqual(await calls(claims), ["Take 6 *"]);
    const left = ", which leaves to mend: ";
    const few = `${left}fewer statements in reserve than asked for`;
    assert.deepEqual(await calls(claims, "\nreserve: 1"), [`Take 6${few}`]);
    assert.deepEqual(await calls([...claims, "- [x] O molde serve."], "\nreserve: 1"), ["Take 6 *"]);
    assert.deepEqual(await calls([...claims.slice(0, 5), "- [ ] A fita cai."]), [
      `Take 6${left}a statement that is both true and false`,
    ]);
    const unfair = await calls(claims.map((line) => line.replace("[ ]", "[x]")));
    assert.deepEqual(unfair, [
      `Take 6${left}far more true statements than false ones, or the other way round, among those that are dealt`,
    ]);
  });

  it("asks for as many words outside as there are, unless levels come out of order", async () => {
    const short = unit(pairs, "make: tiles\ngrid: 2 x 2\ndecoys: 6");
    assert.deepEqual(await offers("too-few-decoys", short), ["Ask for 1 *"]);
  });
});

describe("piles that overlap", () => {
  const piles = (third: string): string[] => [
    ...["### um", "", "- fio", "- lã", "", "### dois", "", "- pano", "- malha", "", "### três", "", "- renda"],
    `- ${third}`,
  ];

  it("get circles along where fields have no place for the card", async () => {
    const sort = (third: string, mats: string): string => unit(piles(third), `make: sort\nmats: ${mats}`);
    assert.deepEqual(await offers("card-in-two-piles", sort("malha", "fields")), [
      "Let piles overlap",
      "Take it out here",
    ]);
    assert.deepEqual(await offers("card-in-two-piles", sort("lã", "circles")), [
      "Let piles overlap",
      "Take it out here",
    ]);
    const apart = sort("lã", "fields");
    assert.deepEqual(await offers("card-in-two-piles", apart), ["Let piles overlap, on circles", "Take it out here"]);
    const { findings } = await readUnitText(apart);
    const [fix] = findings.flatMap(({ code, fixes }) => (code === "card-in-two-piles" ? fixes : []));
    const after = (await readUnitText(applyEdits(apart, fix?.edits ?? []))).findings;
    assert.deepEqual(after.filter(isLoud), []);
  });
});

describe("what is told of two activities at once", () => {
  const lines = ["### um", "", "- fio", "- lã", "- fita", "", "### dois", "", "- pano", "- fio", "- renda"];
  const sort = (title: string): string => `make: sort\ntitle: ${title}`;
  const fenced = (activity: string): string => `\n\`\`\`activity\n${activity}\n\`\`\`\n`;

  it("has fixes that mend both", async () => {
    const text = unit(lines, sort("One")) + fenced(sort("Two"));
    const { findings } = await readUnitText(text);
    const told = findings.filter(({ code }) => code === "card-in-two-piles");
    assert.equal(told.length, 1);
    assert.deepEqual(
      told[0]?.fixes.map(({ title }) => title),
      ["Let piles overlap", "Take it out here"],
    );
    for (const { title, edits } of told[0]?.fixes ?? []) {
      const after = (await readUnitText(applyEdits(text, edits))).findings;
      assert.ok(!after.some(({ code }) => code === "card-in-two-piles"), title);
    }
  });
});

describe("a fix of one activity", () => {
  const pairs = ["a fita = ribbon", "a tira = ribbon", "o fio = thread", "a lã = wool", "o pano = cloth"];
  const lines = [...pairs, "a renda = lace", "o dedal = thimble"].map((pair) => `- ${pair}`);
  const beside = (activity: string): string => `${unit(lines, "make: loop")}\n\`\`\`activity\n${activity}\n\`\`\`\n`;

  /** What is offered for the only card that closes the circle early, and what else it leads to. */
  async function takes(text: string): Promise<string[]> {
    const { findings } = await readUnitText(text);
    const found = findings.filter(({ code }) => code === "early-close");
    assert.equal(found.length, 1);
    const fixes = found.flatMap((each) => each.fixes);
    for (const { title, edits } of fixes)
      assert.deepEqual(newly((await readUnitText(applyEdits(text, edits))).findings, findings), [], title);
    return fixes.map(({ title }) => title).sort();
  }

  it("takes no item out that another one needs", async () => {
    const fewer = "Take 6 of the 7 pairs, none of which clash";
    const all = [fewer, "Take out “a fita = ribbon”", "Take out “a tira = ribbon”"];
    assert.deepEqual(await takes(unit(lines, "make: loop")), all);
    assert.deepEqual(await takes(beside("make: tiles\ngrid: 2 x 2")), all);
    assert.deepEqual(await takes(beside("make: tiles\ngrid: 2 x 3")), [fewer]);
    assert.deepEqual(await takes(beside("make: board\ngrid: 2 x 2\nclue: word\nshow: word")), all);
    assert.deepEqual(await takes(beside("make: board\ngrid: 2 x 4\nblanks: 1\nclue: word\nshow: word")), [fewer]);
  });
});
