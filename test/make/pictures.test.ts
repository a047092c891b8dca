import assert from "node:assert/strict";
import type { PiecesFile } from "../../src/make/pieces-file";
import type { MadeFile } from "../../src/make/workshop";
import { png } from "../render/sheets";
import { rasterOf } from "../render/tools";
import { noted, quarters } from "../support/jpeg";
import { type PrintedPage, type PrintedPicture, readPrint } from "../support/print";
import { picturesIn, type Rectangle, rectanglesOn, textsIn } from "../support/rectangles";
import { readUnitText, testWorkshop } from "../support/units";

/*
 * Pictures wherever a word can stand, read back from print by pdf.js and poppler: inside their pieces, in their own shape, the
 * right way up, described.
 */

/** A wide drawing, its left half transparent, and a photo of a camera that was held upright: stored lying, with a note (Exif 6). */
const pictures = new Map([
  ["img/bell.png", png([[255, 90, 0, 0]], [[0, 0, 255, 255]])],
  ["img/pump.jpg", noted(quarters, 6)],
]);

interface Seen {
  /** Width by height as seen. */
  readonly ratio: number;
  /** Where the seen picture's right side and top are, by the stored picture's. */
  readonly right: (picture: PrintedPicture) => readonly [number, number];
  readonly up: (picture: PrintedPicture) => readonly [number, number];
}

const opposite = ([x, y]: readonly [number, number]): readonly [number, number] => [0 - x, 0 - y];
const seen: ReadonlyMap<string, Seen> = new Map([
  ["a bell", { ratio: 4, right: ({ right }) => right, up: ({ up }) => up }],
  // Exif 2.3, orientation 6: the stored left side is the top, the stored top is on the right.
  ["a pump", { ratio: 32 / 48, right: ({ up }) => up, up: ({ right }) => opposite(right) }],
]);

const bell = "![a bell](img/bell.png)";
const pump = "![a pump](img/pump.jpg)";

const pairs = `- ${bell} = a campainha
- ${pump} = a bomba
- o selim = the saddle
- o pedal = the pedal
- a curva = the bend
- a berma = the verge
- o túnel = the tunnel
- a praça = the square
- o muro = the wall
- a vala = the ditch
- o poste = the post
- a ponte = the bridge`;

const unitOf = (items: string, block: string): string =>
  `---\nteaches: pt\nexplains: en\nclasses: [2]\n---\n\n## Things\n\n${items}\n\n\`\`\`activity\ntitle: One\n${block}\n\`\`\`\n`;

const piles = `### bright\n\n- ${bell}\n- ${pump} a bomba\n- curva\n\n### dark\n\n- [x] ${pump}\n- túnel\n- muro\n`;
const events = `1. ${bell} A campainha toca.\n2. O Tomé abre a porta.\n   - ${pump}\n   - Ele vê a bomba.\n3. Ele ri.`;
const sentences = `- O Tomé | procura | ${pump} | e ouve | ${bell} a campainha. = Tomé looks for the pump and hears the bell.\n- A ponte | é | longa. = ![a pump](img/pump.jpg)`;

/** What stands in the middle of its piece, what turns with its edge, and what has a place of its own. */
type Place = "middle" | "edge" | "own";

const cases: readonly (readonly [name: string, text: string, count: number, place: Place])[] = [
  ["tiles", unitOf(pairs, "make: tiles\ngrid: 3 x 3"), 2, "edge"],
  ["loop in the room", unitOf(pairs, "make: loop"), 2, "middle"],
  ["mini loop", unitOf(pairs, "make: loop\nsize: mini"), 2, "middle"],
  ["board, side by side", unitOf(pairs, "make: board\ngrid: 3 x 4"), 2, "middle"],
  ["board, opposite", unitOf(pairs, "make: board\ngrid: 3 x 4\nfacing: opposite"), 4, "middle"],
  ["sort into piles", unitOf(piles, "make: sort"), 3, "middle"],
  ["sort by truth", unitOf(pairs, "make: sort\nmispair: 3"), 2, "middle"],
  ["strips", unitOf(events, "make: strips"), 2, "own"],
  ["rebuild", unitOf(sentences, "make: rebuild"), 2, "middle"],
];

interface Made {
  readonly files: readonly MadeFile[];
  readonly card: Uint8Array;
  readonly pages: readonly PrintedPage[];
  readonly pieces: PiecesFile["pieces"];
}

async function made(text: string): Promise<Made> {
  const reading = await readUnitText(text, { pictures });
  assert.deepEqual(
    reading.findings.filter(({ severity }) => severity === "error"),
    [],
  );
  const files = await (await testWorkshop()).make(reading, {});
  const bytes = (end: string): Uint8Array => files.find(({ name }) => name.endsWith(end))?.bytes ?? new Uint8Array();
  const { pieces }: PiecesFile = JSON.parse(new TextDecoder().decode(bytes(".json")));
  const card = bytes("One.card.pdf");
  return { files, card, pages: card.length > 0 ? await readPrint(card) : [], pieces };
}

async function paperText(files: readonly MadeFile[], end: string): Promise<string> {
  const file = files.find(({ name }) => name.endsWith(end));
  assert.ok(file, end);
  return (await readPrint(file.bytes)).flatMap(({ texts }) => texts.map(({ text }) => text)).join(" ");
}

const isInside = (inner: Rectangle, outer: Rectangle, clear: number): boolean =>
  inner.x >= outer.x + clear &&
  inner.y >= outer.y + clear &&
  inner.x + inner.w <= outer.x + outer.w - clear &&
  inner.y + inner.h <= outer.y + outer.h - clear;

/** The quarter turn at which a picture stands, by where its seen right side and top are; fails where it is mirrored. */
function turnOf(picture: PrintedPicture, { right, up }: Seen): number {
  const directions = ["1 0", "0 1", "-1 0", "0 -1"];
  const turn = directions.indexOf(right(picture).join(" "));
  assert.equal(directions.indexOf(up(picture).join(" ")), (turn + 3) % 4, `${picture.alt} is mirrored`);
  return turn;
}

describe("pictures on pieces", function () {
  this.timeout(60_000);

  for (const [name, text, count, place] of cases) {
    it(`${name}: inside a piece, in shape, the right way up and described`, async () => {
      const { pages, pieces } = await made(text);
      assert.equal(pages.flatMap((page) => page.pictures).length, count);
      let found = 0;
      // A board is one piece; its pictures are looked for in its cells.
      const places = pieces.flatMap(({ at: [box], make }) => {
        const page = pages[(box?.page ?? 0) - 1];
        assert.ok(box && page);
        return (make === "board" ? rectanglesOn(page, 0.5) : [box]).map((each) => ({ box: each, page }));
      });
      for (const { box, page } of places) {
        const here = picturesIn(page, box).sort((a, b) => a.y - b.y);
        found += here.length;
        here.forEach((picture, i) => {
          const known = seen.get(picture.alt);
          assert.ok(known, picture.alt);
          assert.ok(isInside(picture, box, 1.9), `${picture.alt} reaches a cut`);
          const [mx, my] = [
            picture.x + picture.w / 2 - box.x - box.w / 2,
            picture.y + picture.h / 2 - box.y - box.h / 2,
          ];
          const edge = Math.abs(my) > Math.abs(mx) ? (my < 0 ? 0 : 2) : mx > 0 ? 1 : 3;
          const turn = place === "edge" ? edge : here.length === 2 && i === 0 ? 2 : 0;
          assert.equal(turnOf(picture, known), turn, picture.alt);
          const [w, h] = turn % 2 === 0 ? [picture.w, picture.h] : [picture.h, picture.w];
          assert.ok(Math.abs(w / h / known.ratio - 1) < 0.01, `${picture.alt} is ${w} × ${h}`);
          assert.ok(Math.max(w, h) > 12, `${picture.alt} is only ${w} × ${h} mm`);
          if (place === "middle") assert.ok(Math.abs(mx) < 0.05, `${picture.alt} is off the middle by ${mx}`);
          assert.deepEqual(textsIn(page, picture), []);
        });
      }
      assert.equal(found, count);
    });
  }

  it("show what is behind what is transparent, and photos as they were seen", async () => {
    const { card, pages } = await made(unitOf(piles, "make: sort"));
    const { width, grey } = rasterOf(card, 127);
    const at = (picture: PrintedPicture | undefined, x: number, y: number): number => {
      assert.ok(picture);
      const [px, py] = [picture.x + x * picture.w, picture.y + y * picture.h].map((mm) => Math.round(mm * 5));
      return grey[(py ?? 0) * width + (px ?? 0)] ?? -1;
    };
    const drawn = pages[0]?.pictures ?? [];
    const drawing = drawn.find(({ alt }) => alt === "a bell");
    assert.deepEqual([at(drawing, 0.1, 0.5), at(drawing, 0.3, 0.5), at(drawing, 0.9, 0.5)], [255, 255, 0]);
    const photo = drawn.find(({ alt }) => alt === "a pump");
    const quarter = [0.25, 0.75].flatMap((y) => [0.25, 0.75].map((x) => at(photo, x, y)));
    for (const [i, expected] of [160, 0, 240, 80].entries())
      assert.ok(Math.abs((quarter[i] ?? -1) - expected) < 12, quarter.join());
  });

  it("are told in words on keys and lists, in their places", async () => {
    const told = async (items: string, block: string): Promise<string> =>
      paperText((await made(unitOf(items, block))).files, "One.paper.pdf");
    const key = await told(events, "make: strips");
    assert.match(key, /\[a bell\] *A campainha toca\./);
    assert.match(key, /\[a pump\]/);
    assert.match(
      await told(sentences, "make: rebuild"),
      /O Tomé procura *\[a pump\] *e ouve *\[a bell\] *a campainha\./,
    );
    const statements = Array.from({ length: 5 }, (_, i) => `- [${i % 2 ? "x" : " "}] O muro ${i} cai.`).join("\n");
    const list = await told(`${statements}\n- [x] ${bell} A campainha toca.`, "make: calls");
    assert.match(list, /\[a bell\] *A campainha toca\./);
  });

  it("stand on the label of a packet whose translation is a picture", async () => {
    const { files } = await made(unitOf(sentences, "make: rebuild"));
    const labels = await readPrint(files.find(({ name }) => name.endsWith(".labels.pdf"))?.bytes ?? new Uint8Array());
    const [picture, ...others] = labels.flatMap((page) => page.pictures);
    assert.deepEqual([picture?.alt, others], ["a pump", []]);
    assert.ok(picture && Math.abs(picture.w / picture.h - 32 / 48) < 0.01);
    assert.deepEqual(textsIn(labels[0] ?? { texts: [] }, picture), []);
  });

  it("of events and statements are asked for, and missed where they are not there", async () => {
    const text = unitOf(`${events}\n\n- [x] ${bell} A campainha toca.`, "make: strips");
    assert.deepEqual([...(await testWorkshop()).needs(text).pictures].sort(), ["img/bell.png", "img/pump.jpg"]);
    const { findings } = await readUnitText(text);
    const missing = findings.filter(({ code }) => code === "missing-picture");
    assert.deepEqual(
      missing.map(({ range }) => text.slice(range.start, range.end)),
      [bell, pump, bell],
    );
    const [fix] = missing[0]?.fixes ?? [];
    const [edit] = fix?.edits ?? [];
    assert.ok(edit);
    const mended = text.slice(0, edit.range.start) + edit.text + text.slice(edit.range.end);
    assert.ok(mended.includes("1. a bell A campainha toca."));
  });

  it("make another deal where another picture stands in the place of one", async () => {
    for (const [, text] of cases.slice(-3)) {
      const codes = async (unit: string): Promise<string> =>
        (await readUnitText(unit, { pictures })).activities
          .flatMap(({ deals }) => deals.map(({ code }) => code))
          .join();
      assert.notEqual(await codes(text), await codes(text.replace("img/pump.jpg", "img/bell.png")));
    }
  });
});
