import assert from "node:assert/strict";
import type { Finding } from "../../src/base/finding";
import { applyEdits, readUnitText } from "../support/units";

/* What comes up after a fix of something that hid it is said in the fix's title, and avoided where another number does. */

const unit = (lines: readonly string[], ...activities: readonly string[]): string =>
  `---\nteaches: pt\nexplains: en\n---\n\n## Cais\n\n${lines.join("\n")}\n${activities.map((each) => `\n\`\`\`activity\n${each}\n\`\`\`\n`).join("")}`;

const isLoud = ({ severity }: Finding): boolean => severity === "error" || severity === "warning";

/** The titles of a finding's fixes, each with what is told after it that is loud and was not told before. */
async function led(code: string, text: string): Promise<[title: string, codes: string][]> {
  const { findings } = await readUnitText(text);
  const had = new Set(findings.filter(isLoud).map((each) => each.code));
  const own = findings.filter((each) => each.code === code);
  assert.ok(own.length > 0, code);
  const all: [string, string][] = [];
  for (const { title, edits } of own.flatMap(({ fixes }) => fixes)) {
    const after = (await readUnitText(applyEdits(text, edits))).findings;
    const codes = after.filter((each) => isLoud(each) && !had.has(each.code)).map((each) => each.code);
    all.push([title, [...new Set(codes)].sort().join(" ")]);
  }
  return all;
}

const words = ["o cais = quay", "a boia = buoy", "o leme = rudder", "a vela = sail", "o remo = oar", "a rede = net"];
const pairs = words.map((word) => `- ${word}`);
const claims = ["[x] O cais dorme.", "[ ] A boia ri.", "[x] O leme gira.", "[ ] A vela nada."]
  .concat(["[x] O remo parte-se.", "[ ] A rede canta.", "[x] O mar sobe.", "[ ] O farol anda."])
  .map((claim) => `- ${claim}`);
const left = ", which leaves to mend: ";

describe("a number that `take` gets", () => {
  it("is one after which nothing comes up, where there is one, else that is said", async () => {
    const twice = [...claims.slice(0, 5), claims[4] ?? "", ...claims.slice(5)];
    const seeds = Array.from({ length: 12 }, (_, i) => i + 1);
    const titles = new Set<string>();
    for (const seed of seeds) {
      const told = await led("too-few-statements", unit(twice, `make: calls\ntake: 2\nseed: ${seed}`));
      assert.equal(told.length, 1);
      const [[title, codes] = ["", ""]] = told;
      if (!title.includes(left)) assert.equal(codes, "", `seed ${seed}: ${title}`);
      else assert.equal(codes, "repeated-statement", `seed ${seed}: ${title}`);
      titles.add(title);
    }
    assert.deepEqual([...titles].sort(), ["Take 6", `Take 6${left}a statement that stands twice`]);
    const story = ["1. Ela entra.", "   - A boia ri.", "   - A vela cai.", "   - O remo parte-se.", "2. Ela sai."];
    const [[title, codes] = ["", ""], ...others] = await led("too-few-events", unit(story, "make: strips\ntake: 2"));
    assert.deepEqual([title.includes(left), codes, others], [false, "", []]);
  });

  it("comes with what it leaves where every number leaves something", async () => {
    assert.deepEqual(await led("too-few-statements", unit(claims, "make: calls\ntake: 4\nlevels: [gentle, hard]")), [
      [`Take 6${left}levels that do not differ`, "same-levels"],
    ]);
    assert.deepEqual(await led("loop-too-few", unit(pairs.slice(0, 4), "make: loop\ntake: 2\ndecoys: 1")), [
      [`Take 4${left}fewer cards that belong nowhere than asked for`, "loop-few-decoys"],
    ]);
    const events = ["1. Ela entra.", "2. Ela rema.", "3. Ela entra."];
    assert.deepEqual(await led("too-few-events", unit(events, "make: strips\ntake: 2")), [
      [`Take 3${left}two events with the same text`, "repeated-event"],
    ]);
    const piles = ["### o", "", "- cais", "- leme", "- mar", "", "### a", "", "- boia", "- vela", "- rede"];
    assert.deepEqual(await led("too-few-cards", unit(piles, "make: sort\ntake: 2\nlevels: [gentle, hard]")), [
      ["Take 5", ""],
    ]);
  });
});

describe("another board or another grid", () => {
  it("is offered with what it leaves", async () => {
    const board = unit(pairs, "make: board\ngrid: 3 x 3\ndistractors: 3\nlevels: [gentle, hard]");
    for (const [title, codes] of await led("board-too-few", board)) {
      assert.equal(codes === "", !title.includes(left), title);
      assert.equal(codes === "same-levels", title.endsWith("levels that do not differ"), title);
    }
    assert.deepEqual(
      await led(
        "too-few-pairs",
        unit(pairs.slice(0, 4), "make: tiles\ngrid: 2 x 3\ndecoys: 2\nlevels: [gentle, hard]"),
      ),
      [
        [`Make 2 × 2 tiles${left}fewer decoys than asked for`, "too-few-decoys"],
        [`Leave 3 inner edges blank${left}fewer decoys than asked for`, "too-few-decoys"],
      ],
    );
  });
});

describe("a fix of what is quiet", () => {
  it("leaves enough pairs to show with wrong partners, and levels that differ", async () => {
    const shared = ["- a boia = buoy", "- o remo = buoy", "- o leme = rudder", "- o leme = helm", "- a rede = net"];
    let tried = 0;
    for (let seed = 1; seed <= 16; seed++) {
      for (const levels of ["", "\nlevels: [gentle, hard]"]) {
        const sort = `make: sort\nmispair: 3\ntake: 4${levels}\nseed: ${seed}`;
        const loop = "make: loop";
        const text = unit([...shared, ...pairs.slice(0, 2)], sort, loop);
        const { findings } = await readUnitText(text);
        for (const { code } of findings.filter((each) => !isLoud(each))) {
          for (const [title, codes] of await led(code, text)) {
            tried++;
            assert.ok(!/too-few-mispairs|same-levels/.test(codes), `${code}, seed ${seed}: ${title}: ${codes}`);
          }
        }
      }
    }
    assert.ok(tried > 10);
  });
});

describe("a pair less for one activity", () => {
  it("makes no word that another one names an answer", async () => {
    const lines = ["- o cais = quay", "- o porto = quay", "- a boia = buoy", "- o leme = rudder", "- o remo = oar"];
    let spared = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const tiles = `make: tiles\ngrid: 2 x 2\ntake: 4\ndecoys: [oar, mel]\nseed: ${seed}`;
      const text = unit(lines, "make: loop\nsize: mini", tiles);
      const { findings } = await readUnitText(text);
      if (findings.some(({ code }) => code === "answering-decoy")) continue;
      for (const [title, codes] of await led("early-close", text)) {
        spared++;
        assert.ok(!codes.includes("answering-decoy"), `seed ${seed}: ${title}`);
      }
    }
    assert.ok(spared > 0);
  });
});

describe("what is taken out for one activity", () => {
  it("is no answer that keeps words of another one apart", async () => {
    const lines = ["- o fio = thread", "- a fita = ribbon", "- o laço = bow / thimble", "- o pano = cloth"];
    lines.push("- a lã = wool / needle", "- a renda = needle", "- o botão = button", "- a agulha = needle");
    const text = unit(lines, "make: loop\ndecoys: 4\nseed: 4", "make: board\ntitle: Second");
    const all = await led("board-clue-fits-two", text);
    assert.ok(all.length > 0);
    for (const [title, codes] of all) assert.equal(codes, "", title);
  });

  it("is not the only item of a pile where two piles are needed", async () => {
    const piles = ["### um", "", "- O MOLDE", "", "### dois", "", "- o pano", "- a renda", "- o molde", "- a lã"];
    const all = await led("look-alike", unit(piles, "make: sort\noverlap: true"));
    assert.deepEqual(
      all.map(([title]) => title),
      ["Say here that the difference is meant", "Take out “o molde”"],
    );
    for (const [title, codes] of all) assert.equal(codes, "", title);
  });
});
