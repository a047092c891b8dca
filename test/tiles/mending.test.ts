import assert from "node:assert/strict";
import { applyEdits, readUnitText, slice } from "../support/units";

const crossing = ["- o selim = a roda", "- a roda = the wheel", "- a chave = the spanner", "- o óleo = the oil"];
const unit = (options: string, ...more: readonly string[]): string =>
  `## Bench\n\n${[...crossing, ...more].join("\n")}\n\n\`\`\`activity\nmake: tiles\n${options}\n\`\`\`\n`;

/** Titles of the fixes of edges that fit although they are no pair, and what is found after each. */
async function offersOf(text: string): Promise<{ title: string; after: string[] }[]> {
  const { findings } = await readUnitText(text);
  const own = findings.filter(({ code }) => code === "ambiguous-edge");
  assert.equal(own.length, 1);
  return Promise.all(
    own.flatMap(({ fixes }) =>
      fixes.map(async ({ title, edits }) => ({
        title,
        after: (await readUnitText(applyEdits(text, edits))).findings.map(({ code }) => code),
      })),
    ),
  );
}

describe("fixes of edges that fit although they are no pair", () => {
  it("take no pair out that the tiles need", async () => {
    assert.deepEqual(await offersOf(unit("grid: 2 x 2")), []);
    assert.deepEqual(await offersOf(unit("")), []);
  });

  it("take one out where enough stay, or where blank edges may be", async () => {
    const blank = await offersOf(unit("grid: 2 x 2\nfill: blank"));
    const many = await offersOf(
      unit("grid: auto", "- o sino = the bell", "- o cesto = the basket", "- o farol = the lamp"),
    );
    for (const offers of [blank, many]) {
      assert.deepEqual(
        offers.map(({ title }) => title),
        ["Take out “a roda = the wheel”"],
      );
      assert.ok(!offers.some(({ after }) => after.includes("ambiguous-edge") || after.includes("too-few-pairs")));
    }
  });
});

describe("what is said of edges that fit although they are no pair", () => {
  const told = async (text: string) => {
    const { findings } = await readUnitText(text);
    return findings
      .filter(({ code }) => code === "ambiguous-edge")
      .map(({ message, range, related, fixes }) => ({
        message,
        at: slice(text, range),
        related: related.map((place) => slice(text, place.range)),
        fixes: fixes.map(({ title }) => title),
      }));
  };

  it("names the pair whose word fits another one too, and calls no pair none", async () => {
    const [only, ...more] = await told(unit("grid: 2 x 2"));
    assert.deepEqual(more, []);
    assert.match(
      only?.message ?? "",
      /^“a roda” stands in two pairs, on different sides, so “o selim” fits the “a roda” of “a roda = the wheel” too\. /,
    );
  });

  it("names a third pair that says so, and takes that out: another in place of one of the two would fit as well", async () => {
    const pairs = [
      "- o aro = the rim",
      "- the rim = a roda",
      "- o pneu = a roda",
      "- a chave = the key",
      "- o óleo = the oil",
    ];
    // Whichever four of the five the seed takes.
    let met = 0;
    for (let seed = 1; seed <= 12; seed++) {
      const text = `## Bench\n\n${pairs.join("\n")}\n\n\`\`\`activity\nmake: tiles\ngrid: 2 x 2\nseed: ${seed}\n\`\`\`\n`;
      for (const { message, at, related, fixes } of await told(text)) {
        assert.doesNotMatch(message, /no pair/);
        if (
          !message.startsWith(
            "“the rim = a roda” is a pair as well, so “a roda” fits the “the rim” of “o aro = the rim” too.",
          )
        )
          continue;
        met++;
        assert.equal(at, "a roda");
        assert.deepEqual(related, ["the rim = a roda", "the rim"]);
        assert.deepEqual(fixes, ["Take out “the rim = a roda”"]);
      }
    }
    assert.ok(met > 0);
  });

  it("finds what a pair that is on no tile does to those that are", async () => {
    const section = [
      "- o patrão = the boss",
      "- o chefe = the chief",
      "- a amiga = the friend",
      "- o vizinho = the neighbour",
    ];
    const others = section.flatMap((one, i) =>
      section.flatMap((other, j) => (i === j ? [] : [[one.slice(2).split(" = ")[0], other.split(" = ")[1]]])),
    );
    for (const turned of [false, true]) {
      const more = others.map(([left, right]) => (turned ? `- ${right} = ${left}` : `- ${left} = ${right}`));
      const text = `## People\n\n${section.join("\n")}\n\n\`\`\`activity\nmake: tiles\ngrid: 2 x 3\nfill: blank\n\`\`\`\n\n## Later\n\n${more.join("\n")}\n`;
      const { activities, findings } = await readUnitText(text);
      assert.equal(activities[0]?.deals[0]?.proof.status, "several");
      const errors = findings.filter(({ severity }) => severity === "error");
      assert.deepEqual([...new Set(errors.map(({ code }) => code))], ["ambiguous-edge"]);
      for (const { related } of errors) assert.ok(related.some(({ range }) => range.start > text.indexOf("## Later")));
    }
  });
});
