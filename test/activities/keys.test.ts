import assert from "node:assert/strict";
import type { Deal, DealtActivity } from "../../src/activities/contract";
import { kindNamed } from "../../src/activities/kinds";
import type { PiecesFile } from "../../src/make/pieces-file";
import type { Sheet } from "../../src/page/sheet";
import { readUnitText, testWorkshop } from "../support/units";
import { type ShapeName, workshopUnit } from "./material";

/*
 * Every deal of every level and version has its own key, and every piece of the deal stands in it: by its sign, its code or its
 * words.
 */

function textsOf(sheets: readonly Sheet[]): string[] {
  return sheets.flatMap(({ items }) =>
    items.flatMap((item) => (item.type === "text" ? [item.runs.map(({ text }) => text).join("")] : [])),
  );
}

interface Made {
  readonly activity: DealtActivity;
  readonly deal: Deal;
  readonly key: string;
  readonly pieces: PiecesFile["pieces"];
}

async function madeOf(text: string): Promise<Made[]> {
  const workshop = await testWorkshop();
  const reading = await readUnitText(text);
  assert.deepEqual(
    reading.findings.filter(({ severity }) => severity === "error" || severity === "warning"),
    [],
  );
  const files = await workshop.make(reading, { trial: true });
  const json = files.find(({ name }) => name.endsWith(".pieces.json"));
  const { pieces }: PiecesFile = JSON.parse(new TextDecoder().decode(json?.bytes));
  return reading.activities.flatMap((activity) =>
    activity.deals.map((deal) => ({
      activity,
      deal,
      key: textsOf(workshop.view(reading, activity, deal, "solved")).join(" "),
      // Blank ones are in no key.
      pieces: pieces
        .filter(({ mark }) => mark.startsWith(`${deal.code}-`))
        .filter(({ faces }) => faces.some(({ text }) => text !== ""))
        // A board is one piece; its cells are looked for one by one.
        .flatMap((piece) =>
          piece.make === "board" ? piece.faces.map((face) => ({ ...piece, faces: [face] })) : [piece],
        ),
    })),
  );
}

const levels = "levels: [gentle, hard]\nversions: 2";

/** What of a piece must stand in the key. */
type Told = (piece: PiecesFile["pieces"][number], number: number) => string;

/** Gentle strips show their place before the event, keys beside it. */
const words: Told = ({ faces }) => (faces[0]?.text ?? "").replace(/^\d+\. /, "");
const code: Told = ({ mark }) => mark.split("-").at(-1) ?? "";

const cases: readonly {
  readonly make: string;
  readonly about: ShapeName;
  readonly options: string;
  readonly count: readonly [gentle: number, hard: number];
  readonly told: Told;
}[] = [
  { make: "strips", about: "events", options: "take: 6\nblanks: 2", count: [6, 6], told: words },
  { make: "loop", about: "words", options: "take: 6\nsize: mini\nblanks: 2", count: [6, 7], told: words },
  { make: "loop", about: "forms", options: "take: 6", count: [6, 7], told: words },
  { make: "board", about: "words", options: "grid: 4 x 4", count: [16, 16], told: words },
  { make: "board", about: "forms", options: "grid: 3 x 4", count: [12, 12], told: words },
  { make: "sort", about: "words", options: "take: 8\nblanks: 2", count: [10, 10], told: code },
  { make: "sort", about: "forms", options: "take: 6", count: [8, 8], told: code },
  { make: "sort", about: "statements", options: "take: 8", count: [10, 10], told: code },
  { make: "sort", about: "piles", options: "take: 6", count: [6, 8], told: code },
];

describe("keys of all levels and versions", () => {
  for (const { make, about, options, count, told } of cases)
    it(`tell of every piece: ${make} of ${about}`, async () => {
      const kind = kindNamed(make)?.name;
      assert.ok(kind);
      const made = await madeOf(workshopUnit(kind, about, `${levels}\n${options}`));
      assert.equal(made.length, 4);
      const all = new Set(made.flatMap(({ pieces }) => pieces.map((piece) => words(piece, 0))));
      for (const { deal, key, pieces } of made) {
        assert.ok(key.includes(deal.code));
        // What this deal does not have is not in its key; the answer that a false card is corrected with is.
        const own = new Set(pieces.map((piece) => words(piece, 0)));
        for (const other of make === "strips" ? [...all].filter((each) => !own.has(each)) : [])
          assert.ok(!key.includes(other), `${other} is in the key of ${deal.code}`);
        if (make === "strips") assert.match(key, /\b6 strips and 2 blank\b/);
        const piles = [...key.matchAll(/\((\d+)\)/g)].map(([, number]) => Number(number));
        if (make === "sort")
          assert.equal(
            piles.reduce((sum, each) => sum + each, 0),
            pieces.length - 2,
          );
        assert.equal(pieces.length, count[deal.level === "hard" ? 1 : 0]);
        pieces.forEach((piece, i) => {
          // Header cards have no place in the key of a sort but as names.
          const solved = make !== "sort" || !Array.isArray(piece.solution) || piece.solution.length > 0;
          const text = solved ? told(piece, i) : words(piece, i);
          assert.ok(key.includes(text), `${deal.level} ${deal.version}: ${text} is not in ${key}`);
        });
      }
    });

  it("have each sentence of a rebuild's own packets, and each card its place in one", async () => {
    const made = await madeOf(workshopUnit("rebuild", "sentences", `${levels}\ntake: 4\nblanks: 1`));
    for (const { deal, key, pieces } of made) {
      assert.ok(key.includes(deal.code));
      assert.ok(pieces.length >= 12);
      const bare = (text: string): string => text.toLowerCase().replace(/[.?]/g, "");
      for (const { faces, solution } of pieces) {
        assert.ok(bare(key).includes(bare(faces[0]?.text ?? "?")));
        const { packet }: { packet: number } = JSON.parse(JSON.stringify(solution));
        assert.ok(deal.version === 1 ? packet <= 4 : packet > 4);
      }
    }
  });

  it("are the callers’ lists of calls: each statement that a list calls, with its answer", async () => {
    const made = await madeOf(workshopUnit("calls", "statements", `${levels}\ntake: 8`));
    assert.equal(made.length, 4);
    assert.equal(new Set(made.map(({ key }) => key)).size, 4);
    for (const { deal, key } of made) {
      assert.ok(key.includes(deal.code));
      assert.match(key, /8: 4 × True, 4 × False/);
      assert.equal(key.match(/\b(True|False)\b/g)?.length, 2 + 8);
    }
  });
});
