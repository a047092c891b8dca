import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";

/* What is told of words that look alike where more than one activity deals them, or more than two sound the same. */

const activity = (options: string): string => `\n\`\`\`activity\n${options}\n\`\`\`\n`;

const section = (lines: readonly string[]): string =>
  `---\nteaches: de\nexplains: en\n---\n\n## Markt\n\n${lines.map((line) => `- ${line}\n`).join("")}`;

async function told(text: string) {
  const { findings } = await readUnitText(text);
  return findings.filter(({ code }) => code === "look-alike");
}

// As many as fill a board: it leaves out what sounds alike where it can.
const capitals = ["Laut = sound", "laut = loud", "Korb = basket", "Waage = scales", "Tasche = bag", "Hahn = tap"];
const called = activity("make: board\ntitle: Called\nclue: word\nshow: gloss");
const shown = called.replace("Called", "Shown");
const read = activity("make: board\ntitle: Read\nclue: gloss\nshow: word");

describe("look-alikes in several activities", () => {
  it("are one finding that names each of them, as loud as the loudest, in whatever order they stand", async () => {
    for (const both of [called + read, read + called]) {
      const [one, ...others] = await told(section(capitals) + both);
      assert.equal(others.length, 0);
      assert.equal(one?.severity, "warning");
      assert.match(
        one?.message ?? "",
        /Whoever listens cannot hear that and may touch the wrong word, in “Called”.* Whoever overlooks it may touch the wrong word, in “Read”/u,
      );
      assert.equal(one?.related.filter(({ message }) => message === "The activity").length, 2);
      assert.ok(!one?.fixes.some(({ title }) => /meant/u.test(title)));
    }
  });

  it("are said once of all activities where they do the same harm", async () => {
    const again = read.replace("Read", "Again");
    const [one, ...others] = await told(section(capitals) + read + again);
    assert.equal(others.length, 0);
    assert.match(one?.message ?? "", /Whoever overlooks it may touch the wrong word, in “Read” and “Again”/u);
    assert.equal(one?.message.match(/Whoever/gu)?.length, 1);
  });

  const claims = [
    "[x] Der Bär schläft.",
    "[ ] Der Bar schläft.",
    "[x] Der Korb ist leer.",
    "[ ] Die Waage singt.",
    "[x] Es regnet.",
    "[ ] Die Tasche lacht.",
  ];

  it("are taken out only where that helps all of them and leaves each enough", async () => {
    const sort = activity("make: sort\ntitle: Cards");
    const alone = await told(section(claims) + sort);
    assert.equal(alone[0]?.fixes.filter(({ title }) => title.startsWith("Take out")).length, 2);
    const both = section(claims) + sort + activity("make: calls\ntitle: Calls");
    const [one] = await told(both);
    assert.match(one?.message ?? "", /in “Cards”.*in “Calls”/u);
    assert.deepEqual(
      one?.fixes.map(({ title }) => title),
      ["Say here that the difference is meant"],
    );
    const more = [...claims, "[x] Der Hahn kräht.", "[ ] Der Tisch tanzt."];
    const rich = section(more) + sort + activity("make: calls\ntitle: Calls");
    const [free] = await told(rich);
    assert.equal(free?.fixes.length, 3);
    for (const { edits } of free?.fixes ?? []) assert.deepEqual(await told(applyEdits(rich, edits)), []);
  });

  it("stay where another activity has none to spare, though they do no harm there", async () => {
    const pairs = [
      "Bär = bear",
      "Bar = pub",
      "Korb = basket",
      "Waage = scales",
      "Tasche = bag",
      "Hahn = cock",
      "Tisch = table",
    ];
    const takes = (all: Awaited<ReturnType<typeof told>>): string[] =>
      all.flatMap(({ fixes }) => fixes.map(({ title }) => title)).filter((title) => title.startsWith("Take out"));
    let met = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const board = section(pairs) + activity(`make: board\ngrid: 2 x 3\nclue: word\nshow: gloss\nseed: ${seed}`);
      const tiles = (grid: string): string => activity(`make: tiles\ngrid: ${grid}`);
      if (takes(await told(board)).length === 0) continue;
      const both = await told(board + tiles("2 x 3"));
      if (both[0]?.related.filter(({ message }) => message === "The activity").length !== 1) continue;
      met++;
      assert.deepEqual(takes(both), []);
      assert.ok(takes(await told(board + tiles("2 x 2"))).length > 0);
    }
    assert.ok(met > 0);
  });

  it("get another seed in each of them at once, or in none", async () => {
    const more = [...claims, "[x] Der Hahn kräht.", "[ ] Der Tisch tanzt."];
    const sort = (title: string, seed: number): string =>
      activity(`make: sort\ntitle: ${title}\ntake: 4\nseed: ${seed}`);
    const found: string[] = [];
    for (let seed = 1; seed < 60 && found.length === 0; seed++) {
      const text = section(more) + sort("One", seed) + sort("Two", seed + 100);
      const [one] = await told(text);
      if (!one || !/“One” and “Two”|“One”.*“Two”/u.test(one.message)) continue;
      const fix = one.fixes.find(({ title }) => /seed/u.test(title));
      if (!fix) continue;
      found.push(fix.title);
      const after = await told(applyEdits(text, fix.edits));
      assert.ok(
        after.every(({ severity }) => severity === "hint"),
        fix.title,
      );
    }
    assert.match(found[0] ?? "", /^“One”: Use seed \d+: then they do not meet; “Two”: Use seed \d+/u);
  });
});

describe("three look-alikes of which two sound the same", () => {
  const others = ["Korb = basket", "Tasche = bag", "Hahn = tap"];
  const three = ["Wagen = carriages", "wagen = to dare", "wägen = to weigh", ...others];

  const listens =
    "^“Wagen” and “wagen” differ only in capitals\\. Whoever listens cannot hear that and may touch the wrong word, in “Shown”: nothing else keeps “carriages” and “to dare” apart\\.";
  const overlooks =
    "“Wagen”, “wagen” and “wägen” differ only in capitals and an accent\\. Whoever overlooks it may touch the wrong word, in";

  it("are a warning about these two where they are called, and what is said of all three comes behind", async () => {
    const text = section(three) + shown;
    const [one, ...others] = await told(text);
    assert.equal(others.length, 0);
    assert.equal(one?.severity, "warning");
    assert.match(one?.message ?? "", new RegExp(`${listens} ${overlooks} “Shown”[^.]+\\.$`, "u"));
    assert.equal(one && text.slice(one.range.start, one.range.end), "wagen");
    assert.ok(one?.fixes.length);
    for (const { title, edits } of one?.fixes ?? []) {
      const after = await told(applyEdits(text, edits));
      assert.ok(!after.some(({ severity }) => severity === "warning"), title);
    }
    const [quiet, ...more] = await told(section(three) + read);
    assert.deepEqual([quiet?.severity, more.length], ["information", 0]);
  });

  it("are one finding with another activity, where all can be seen", async () => {
    for (const all of [shown + read, read + shown]) {
      const [one, ...others] = await told(section(three) + all);
      assert.equal(others.length, 0);
      assert.equal(one?.severity, "warning");
      assert.match(one?.message ?? "", new RegExp(`${listens} ${overlooks} “`, "u"));
      const named = [...(one?.message.matchAll(/in “(\w+)”/gu) ?? [])].map((match) => match[1]);
      assert.deepEqual(named.slice(0, 1), ["Shown"]);
      assert.deepEqual(named.slice(1).sort(), ["Read", "Shown"]);
    }
  });

  it("are so in calls too, and one warning where all three sound the same", async () => {
    const others = ["[x] Es regnet.", "[ ] Die Tasche lacht.", "[x] Der Hahn kräht.", "[x] Der Korb ist leer."];
    const two = ["[x] Wir wagen es.", "[ ] wir wagen es.", "[ ] Wir wägen es.", ...others];
    const [one, ...more] = await told(section(two) + activity("make: calls"));
    assert.deepEqual([one?.severity, more.length], ["warning", 0]);
    assert.match(
      one?.message ?? "",
      /^“[Ww]ir wagen es” and “[Ww]ir wagen es” differ only in capitals\. Whoever listens/u,
    );
    const all = ["[x] Wir wagen es.", "[ ] wir wagen es.", "[ ] Wir wagen es!", ...others];
    const [heard, ...no] = await told(section(all) + activity("make: calls"));
    assert.deepEqual([heard?.severity, no.length], ["warning", 0]);
    assert.match(heard?.message ?? "", /^(“[Ww]ir wagen es!?”(, | and |)){3} differ/u);
    assert.equal(heard?.message.match(/Whoever/gu)?.length, 1);
  });
});
