import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";
import { boardUnit } from "./unit";

/* What is said of boards that lack words or have clues that fit two, and what is offered: no warning where that can be. */

const front = "teaches: pt\nexplains: en\n";
const plain = ["o lago = the lake", "o sol = the sun", "a lua = the moon", "a rua = the street", "a foz = the mouth"];

interface Told {
  readonly message: string;
  readonly titles: readonly string[];
  /** Codes of warnings that come by each fix. */
  readonly after: readonly (readonly string[])[];
}

/** The first error of a board, and what comes of its fixes, none of which leaves an error. */
async function told(pairs: readonly string[], options: string): Promise<Told> {
  const text = boardUnit(pairs, options, front);
  const { findings } = await readUnitText(text);
  const finding = findings.find(({ severity }) => severity === "error");
  assert.ok(finding);
  const after: string[][] = [];
  for (const { title, edits } of finding.fixes) {
    const left = (await readUnitText(applyEdits(text, edits))).findings;
    assert.ok(!left.some(({ severity }) => severity === "error"), title);
    after.push(left.flatMap(({ severity, code }) => (severity === "warning" ? [code] : [])));
  }
  return { message: finding.message, titles: finding.fixes.map(({ title }) => title), after };
}

describe("a board that lacks words", () => {
  it("says what `take` leaves, and how many do", async () => {
    for (const take of [1, 2, 3])
      assert.deepEqual(await told(plain, `take: ${take}`), {
        message: `A board needs at least 4 words to call; \`take\` leaves ${take} of 5.`,
        titles: ["Take 4"],
        after: [[]],
      });
  });

  it("says how many cells are left for words that are called", async () => {
    const left = async (distractors: number): Promise<string> =>
      (await told(plain, `grid: 2 x 2\ndistractors: ${distractors}`)).message;
    assert.equal(await left(2), "A board needs at least 4 words to call; of 4 cells only 2 are left for them.");
    assert.equal(await left(3), "A board needs at least 4 words to call; of 4 cells only one is left for them.");
    assert.equal(await left(4), "A board needs at least 4 words to call; of 4 cells none is left for them.");
  });

  it("says how many words are there that are never called", async () => {
    const never = async (pairs: readonly string[]): Promise<string> =>
      (await told(pairs, "grid: 2 x 4\ntake: 4\ndistractors: 4")).message.split("; ")[1] ?? "";
    assert.equal(await never(plain.slice(0, 4)), "none could be found that fits no clue.");
    assert.equal(await never(plain), "only one could be found that fits no clue.");
    assert.equal(await never([...plain, "o mar = the sea"]), "only 2 could be found that fit no clue.");
  });

  it("may be the largest smaller one that can be made", async () => {
    const examples = plain.slice(0, 4).map((pair, i) => `${pair}\n  - Vejo isto, é o ${i}.`);
    const { message, titles } = await told([...examples, plain[4] ?? ""], "clue: example\ngrid: 3 x 3\ntake: 6");
    assert.match(message, /^A board of 3 × 3 needs 6 words to call; “At the counter” has 4 pairs .*, of 5\.$/);
    assert.deepEqual(titles, ["Make a board of 2 × 2", "Call by translation"].slice(0, titles.length));
    assert.ok(titles.length > 0);
    // Of 2 × 3 cells two would have the same clue.
    const shared = await told([...plain, "o mar = the lake"], "grid: 3 x 3");
    assert.deepEqual(shared.titles, ["Make a board of 2 × 2"]);
  });
});

describe("what is offered for a clue that fits two words", () => {
  const one = ["o lago = the lake", "a lagoa = the lake"];

  it("brings up no warning where something else does not", async () => {
    const pairs = [...one, "bata = coat", "Bata! = beat", ...plain.slice(1, 4)];
    const { titles, after } = await told(pairs, "clue: gloss\nlevels: [gentle, hard]\ngrid: 2 x 4\ndistractors: 1");
    assert.ok(titles.length > 0);
    assert.deepEqual(after.flat(), []);
  });

  it("tells two cells with the same word apart", async () => {
    const { message } = await told(
      ["o lago = the lake", "o lago = the lake", ...plain.slice(1, 4)],
      "grid: 2 x 3\nblanks: 1",
    );
    assert.equal(message, "“the lake” is called for “o lago” and fits another “o lago” on the board as well.");
  });
});

describe("words that sound alike", () => {
  const alike = ["eixo = axle", "Eixo! = axis"];
  const loud = async (pairs: readonly string[], options: string): Promise<string[]> => {
    const { findings } = await readUnitText(boardUnit(pairs, options, front));
    return findings.flatMap(({ severity, code }) => (severity === "warning" || severity === "error" ? [code] : []));
  };

  it("are not called on one board as long as there are others", async () => {
    for (let seed = 1; seed <= 30; seed++)
      for (const clue of ["clue: word", "clue: word\nshow: gloss"])
        assert.deepEqual(
          await loud([...alike, ...plain], `${clue}\ngrid: 2 x 2\nseed: ${seed}`),
          [],
          `${clue}, ${seed}`,
        );
    assert.deepEqual(await loud([...alike, ...plain.slice(0, 2)], "clue: word\ngrid: 2 x 2"), ["look-alike"]);
  });

  it("are never put beside as words that are not called where there are others", async () => {
    for (let seed = 1; seed <= 30; seed++)
      assert.deepEqual(
        await loud(
          [...alike, ...plain, "o mar = the sea"],
          `clue: word\ngrid: 2 x 3\ntake: 4\ndistractors: 2\nseed: ${seed}`,
        ),
        [],
        `${seed}`,
      );
  });

  it("rather meet than words with one clue", async () => {
    for (let seed = 1; seed <= 30; seed++) {
      const found = await loud(
        ["laço = bow", "fita = bow", "eixo = axle", "Eixo! = Axle!", "lua = moon"],
        `clue: gloss\ngrid: 2 x 2\nseed: ${seed}`,
      );
      assert.ok(!found.includes("board-clue-fits-two"), `${seed}: ${found.join()}`);
    }
  });
});
