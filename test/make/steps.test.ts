import assert from "node:assert/strict";
import { kinds } from "../../src/activities/kinds";
import { checking } from "../../src/check/check";
import { practice, practising } from "../../src/make/practice";
import { nothingAround } from "../../src/make/workshop";
import { readUnitText, testWorkshop, word } from "../support/units";

/** Words that no other test has had read. */
const fresh = (n: number): string => `${word(n)}xyz`;

function unit(make: string): string {
  const pairs = Array.from({ length: 30 }, (_, i) => {
    const left = make === "rebuild" ? `o ${fresh(i)} | ${fresh(i + 100)} | ${make}` : `${fresh(i)} ${make}`;
    return `- ${left} = ${fresh(i + 200)} ${make}`;
  });
  const events = Array.from({ length: 8 }, (_, i) => `${i + 1}. Ela ${fresh(i + 300)}.`);
  const items = make === "strips" ? events : pairs;
  const piled = make === "sort" ? ["### a", "", ...items.slice(0, 15), "", "### b", "", ...items.slice(15)] : items;
  return `## Words\n\n${piled.join("\n")}\n\n\`\`\`activity\nmake: ${make}\n\`\`\`\n`;
}

/** How often each thing is said. */
async function pauses(text: string): Promise<ReadonlyMap<string, number>> {
  const counts = new Map<string, number>();
  for (const said of (await testWorkshop()).reading({ name: "unit", text }, nothingAround))
    counts.set(said, (counts.get(said) ?? 0) + 1);
  return counts;
}

describe("steps of a first reading", () => {
  it("are parted at each item of the text, and at each section and activity of the plan", async () => {
    const counts = await pauses(unit("tiles"));
    assert.ok((counts.get("Reading") ?? 0) >= 30, JSON.stringify([...counts]));
    assert.ok((counts.get("Planning") ?? 0) >= 3, JSON.stringify([...counts]));
  });

  it("are parted at each word that is compared with others", async () => {
    const text = unit("tiles").replaceAll("xyz", "zyx");
    const [all = 0, again = 0] = [(await pauses(text)).get("Checking"), (await pauses(text)).get("Checking")];
    assert.ok(all - again >= 60, `${all} and ${again}`);
  });

  for (const [make, faces] of [
    ["tiles", 20],
    ["loop", 20],
    ["board", 16],
    ["rebuild", 20],
    ["sort", 20],
    ["strips", 8],
  ] as const) {
    it(`are parted at each word that is laid out: ${make}`, async () => {
      const kind = kinds.find(({ name }) => name === make);
      const { checked, press } = (await readUnitText(unit(make).replaceAll("xyz", `${make}q`))) as never as Checked;
      const dealt = checked[0]?.dealt;
      assert.ok(kind?.laying && dealt);
      // As dealt with another seed, since what was laid out is kept.
      const steps = [...kind.laying({ ...dealt, options: { ...dealt.options, seed: 99 } } as never, press)];
      assert.ok(steps.length >= faces, String(steps.length));
    });
  }
});

interface Checked {
  readonly checked: readonly { readonly dealt: { readonly options: object } }[];
  readonly press: Parameters<NonNullable<(typeof kinds)[number]["laying"]>>[1];
}

describe("a kind that cannot be laid out", () => {
  it("stops no rule but the one that asks for it", async () => {
    const reading = await readUnitText(unit("tiles"));
    const context = reading as never as { checked: readonly { plan: { kind: object } }[]; plan: object };
    const [first] = context.checked;
    const kind = {
      ...first?.plan.kind,
      *laying(): Generator<undefined, void, void> {
        yield;
        throw new RangeError("no sheet");
      },
    };
    const activities = [{ ...first, plan: { ...first?.plan, kind } }];
    const steps = checking({ ...context, activities, printed: [], severities: new Map() } as never);
    let step = steps.next();
    while (!step.done) step = steps.next();
    assert.ok(step.value.some(({ code }) => code === "unused-pairs"));
    assert.deepEqual(
      step.value.map(({ code }) => code),
      reading.findings.map(({ code }) => code),
    );
  });
});

describe("the practice before the first reading", () => {
  it("takes what reads YAML and looks for traps in parts, then reads a unit to its end", async () => {
    const workshop = await testWorkshop();
    const read: string[] = [];
    let pauses = 0;
    let before = 0;
    const watched = {
      *reading(...given: Parameters<typeof workshop.reading>): ReturnType<typeof workshop.reading> {
        before = pauses;
        const reading = yield* workshop.reading(...given);
        read.push(...reading.activities.map(({ make }) => make));
        return reading;
      },
    };
    for (const _ of practising(watched)) pauses++;
    assert.ok(before > 20, `${before} pauses`);
    assert.deepEqual(new Set(read), new Set(kinds.map(({ name }) => name)));
  });

  it("deals every kind and finds no error", async () => {
    const { activities, findings } = await readUnitText(practice);
    assert.deepEqual([...new Set(activities.map(({ make }) => make))].sort(), kinds.map(({ name }) => name).sort());
    for (const { deals, title } of activities) assert.ok(deals.length > 0, title);
    assert.deepEqual(
      findings.filter(({ severity }) => severity === "error"),
      [],
    );
  });
});
