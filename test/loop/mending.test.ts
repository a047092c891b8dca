import assert from "node:assert/strict";
import { applyEdits, readUnitText } from "../support/units";
import { loopUnit } from "./unit";

const others = ["a amiga = the friend", "o vizinho = the neighbour", "a prima = the cousin"];
const bosses = ["o patrão = the boss", "o chefe = the boss", "o dono = the boss", "o mestre = the boss"];

/** What the findings of a circle offer, by code, and for each fix what is found after it. */
async function offersOf(text: string): Promise<{ code: string; title: string; after: string[] }[]> {
  const { findings } = await readUnitText(text);
  const offers: { code: string; title: string; after: string[] }[] = [];
  for (const { code, fixes } of findings) {
    for (const { title, edits } of fixes) {
      const after = await readUnitText(applyEdits(text, edits));
      offers.push({ code, title, after: after.findings.map((finding) => finding.code) });
    }
  }
  return offers;
}

describe("fixes of a circle", () => {
  it("are only such as mend what they stand with", async () => {
    let offered = 0;
    for (const count of [2, 3, 4]) {
      for (const options of ["", "decoys: 1", "seed: 4", "versions: 2"]) {
        for (const further of [others, [...others, "a tia = the aunt / the friend"], others.slice(1)]) {
          const text = loopUnit([...bosses.slice(0, count), ...further, "o tio = the uncle"], options);
          for (const { code, title, after } of await offersOf(text)) {
            if (code === "second-circle") assert.ok(!after.includes(code), `${count}, ${options}: ${title}`);
            offered++;
          }
        }
      }
    }
    assert.ok(offered > 40, `${offered}`);
  });

  const sewing =
    "a fita = the ribbon,o fio = the thread,o laço = the bow,a lã = the wool,o pano = the cloth,a renda = the lace";
  const clashing =
    "o pano = the ribbon,a malha = the lace,o botão = the button,a corda = the bow,a capa = the cloth,a renda = the trim,o dedal = the thimble";

  it("of an early close leave one full circle where there was one", async () => {
    const text = loopUnit([...sewing.split(","), ...clashing.split(",")], "size: mini");
    const { activities } = await readUnitText(text);
    assert.equal(activities[0]?.deals[0]?.proof.status, "one");
    const offers = (await offersOf(text)).filter(({ code }) => code === "early-close");
    assert.ok(offers.length >= 6, `${offers.length}`);
    for (const { title, after } of offers) assert.ok(!after.includes("second-circle"), title);
  });

  it("take no single one of four out that answer alike, but as many pairs as do not clash", async () => {
    const offers = await offersOf(loopUnit([...bosses, ...others]));
    assert.ok(offers.length >= 2);
    for (const { title, after } of offers) {
      assert.equal(title, "Take 4 of the 7 pairs, none of which clash");
      assert.ok(!after.some((code) => ["second-circle", "early-close"].includes(code)), after.join());
    }
  });

  it("stand in the order of what they leave", async () => {
    const offers = await offersOf(loopUnit([...bosses.slice(0, 3), ...others]));
    const own = offers.filter(({ code }) => code === "second-circle");
    assert.match(own[0]?.title ?? "", /^Take 4 of the 6 pairs/);
    assert.deepEqual(
      own.map(({ after }) => after.includes("early-close")),
      own.map((_, i) => i > 0),
    );
    assert.ok(own.length > 1);
  });

  it("say beforehand where one full circle is left, but a smaller one can close", async () => {
    let still = 0;
    for (const count of [3, 4])
      for (const further of [others, others.slice(1), [...others, "a tia = the aunt / the friend"]])
        for (const { code, title, after } of await offersOf(loopUnit([...bosses.slice(0, count), ...further]))) {
          if (code !== "second-circle") continue;
          assert.equal(title.endsWith("; a smaller circle can still close"), after.includes("early-close"), title);
          if (after.includes("early-close")) still++;
        }
    assert.ok(still > 2, `${still}`);
  });

  it("take one alternative out although another item has it as well", async () => {
    const text = loopUnit([...others, "a tia = the aunt / the friend", "o tio = the uncle / the friend"]);
    const offers = (await offersOf(text)).filter(({ code }) => code === "early-close");
    const out = offers.filter(({ title }) => title === "Take the answer “the friend” out here");
    assert.equal(out.length, 2);
  });

  it("take a pair out that is on no card, where that says that two words fit", async () => {
    const own = ["o patrão = the boss", "o chefe = the chief", "a amiga = the friend", "o vizinho = the neighbour"];
    for (const saying of ["o patrão = the chief", "the chief = o patrão"]) {
      const offers = await offersOf(`${loopUnit(own)}\n## Later\n\n- ${saying}\n`);
      const [{ title, after } = { title: "", after: [] }] = offers.filter(({ code }) => code === "early-close");
      assert.equal(title, `Take out “${saying}”`);
      assert.deepEqual(after, []);
    }
  });
});

describe("a second circle", () => {
  it("is told with what closes early by the same answer", async () => {
    const { findings, activities } = await readUnitText(loopUnit([...bosses.slice(0, 3), ...others]));
    const [told, ...more] = findings.filter(({ code }) => ["second-circle", "early-close"].includes(code));
    assert.deepEqual([told?.code, more.length], ["second-circle", 0]);
    assert.notEqual(activities[0]?.deals[0]?.smaller, undefined);
    assert.match(
      told?.message ?? "",
      /So all 6 cards also make the circle( [A-F]){6}, and (a circle can close with [2-5] of 6 cards:( [A-F]){2,5}|that card closes a circle of its own)\.$/,
    );
  });
});
