import assert from "node:assert/strict";
import * as vscode from "vscode";
import schema from "../../../schemas/activity.schema.json";
import { callsOn, cellsOn } from "../../board/reader";
import { rowsOf } from "../../calls/reader";
import { cardsOn, walk } from "../../loop/reader";
import { bare, makes, cardsOn as sentenceCards } from "../../rebuild/reader";
import { cardIn, keyOf } from "../../sort/reader";
import { stripsOn } from "../../strips/reader";
import { type PrintedPage, readPrint, tilesOn } from "../../support/print";
import { rectanglesOn, textsIn } from "../../support/rectangles";
import { keyboard, until, workbench } from "./driver";
import { kindsUnit, pairsIn, pilesIn, statementsIn, storiesIn } from "./kinds-unit";
import { closeAll, focusEditor, openUnit, place, replace } from "./units";
// Reads the PDFs in this very thread: an extension host has no page to start a worker from.
import "pdfjs-dist/legacy/build/pdf.worker.mjs";

/*
 * Each kind from the unit's text through the palette to print, and from the print alone back to what the text says.
 */

interface Print {
  readonly card: readonly PrintedPage[];
  readonly paper: readonly PrintedPage[];
}

/** Sentences are cut by bars; words are not. */
const isSentence = (text: string): boolean => text.includes(" | ");
const pairs = new Map([...pairsIn(kindsUnit)].filter(([left]) => !isSentence(left)));
const belong = (a: string, b: string): boolean => pairs.get(a) === b || pairs.get(b) === a;

const checks: Readonly<Record<string, (print: Print) => void>> = {
  tiles: ({ card: [sheet], paper: [key] }) => {
    assert.ok(sheet && key);
    const [cut, solved] = [tilesOn(sheet), tilesOn(key)];
    const looks = (edges: readonly string[]): string =>
      [0, 1, 2, 3].map((turn) => [...edges.slice(turn), ...edges.slice(0, turn)].join("|")).sort()[0] ?? "";
    assert.equal(cut.length, 9);
    assert.deepEqual(cut.map(({ edges }) => looks(edges)).sort(), solved.map(({ edges }) => looks(edges)).sort());
    const touching = solved.flatMap(({ edges }, i): [string, string][] => [
      ...(i % 3 < 2 ? [[edges[1], solved[i + 1]?.edges[3] ?? ""] as [string, string]] : []),
      ...(i < 6 ? [[edges[2], solved[i + 3]?.edges[0] ?? ""] as [string, string]] : []),
    ]);
    for (const [a, b] of touching) assert.ok(belong(a, b), `${a} | ${b}`);
    assert.equal(new Set(touching.map((pair) => [...pair].sort().join("|"))).size, 12);
  },
  loop: ({ card, paper: [key] }) => {
    const cards = card.flatMap((page) => cardsOn(page, 0.75));
    const circle = walk(cards, "A", new Map([...pairs, ...[...pairs].map(([l, r]) => [r, l] as const)]));
    assert.equal(circle.length, 12);
    const row = key?.texts.map(({ text }) => text.trim()).find((text) => /^([A-Z] ){11}[A-Z]$/.test(text));
    assert.ok(`${row} ${row}`.includes(circle.join(" ")), `${row} for ${circle.join(" ")}`);
  },
  board: ({ card: [board], paper }) => {
    assert.ok(board);
    const cells = cellsOn(board, 0);
    assert.deepEqual([...cells].sort(), [...pairs.keys()].sort());
    const list = paper.find(({ texts }) => texts.some(({ text }) => text.startsWith("Caller’s list")));
    assert.ok(list);
    const calls = callsOn(list);
    assert.equal(calls.length, 12);
    // The list names a picture as its description.
    for (const { say, word } of calls) assert.ok(cells.includes(word) && pairs.get(word) === say, `${say}: ${word}`);
    assert.equal(new Set(calls.map(({ word }) => word)).size, 12);
  },
  strips: ({ card, paper: [key] }) => {
    // Two sets, each a sheet with its back.
    assert.equal(card.length, 4);
    const [front, back] = card;
    assert.ok(front && back && key);
    const strips = stripsOn(front);
    const order = key.texts.map(({ text }) => text).find((text) => /^[A-F( )]{9,}$/.test(text)) ?? "";
    const laid = [...order.replace(/[^A-F]/g, "")].map((sign) => strips.find((strip) => strip.sign === sign)?.text);
    assert.ok(storiesIn(kindsUnit).includes(laid.join("|")), laid.join("|"));
    assert.ok(!storiesIn(kindsUnit).includes(strips.map(({ text }) => text).join("|")));
    for (const { text, box } of strips) {
      const places = storiesIn(kindsUnit).map((story) => story.split("|").indexOf(text) + 1);
      const [number] = textsIn(back, { ...box, x: back.width - box.x - box.w });
      assert.equal(number?.text, [...new Set(places)].sort().join("–"));
    }
  },
  rebuild: ({ card: [sheet], paper: [key] }) => {
    assert.ok(sheet && key);
    const cards = sentenceCards(sheet);
    const sentences = [...pairsIn(kindsUnit).keys()].filter(isSentence);
    assert.equal(cards.length, 10);
    sentences.forEach((sentence, i) => {
      const parts = cards.filter(({ head }) => head === `${i + 1}`).map(({ text }) => bare(text));
      assert.ok(makes(parts, bare(sentence.replaceAll(" | ", " "))), `${parts.join(" | ")}: ${sentence}`);
    });
    const told = key.texts.map(({ text }) => text).join(" ");
    for (const sentence of sentences) assert.ok(told.includes(sentence.replaceAll(" | ", " ")), sentence);
  },
  calls: ({ card, paper: [list] }) => {
    // Nothing is cut.
    assert.deepEqual(card, []);
    assert.ok(list);
    const rows = rowsOf(list).map(([, said = "", answer = "", instead = ""]) => [said, [answer, instead]] as const);
    assert.deepEqual(new Map(rows), statementsIn(kindsUnit));
    assert.equal(rows.length, 6);
  },
  sort: ({ card: [sheet], paper: [key] }) => {
    assert.ok(sheet && key);
    const cards = rectanglesOn(sheet, 0.25).map((box) => cardIn(sheet, box));
    const zones = keyOf(key);
    const piles = pilesIn(kindsUnit);
    assert.deepEqual(cards.map(({ text }) => text).sort(), [...piles.keys(), ...[...piles.values()].flat()].sort());
    for (const [pile, items] of piles) {
      const zone = zones.get(pile)?.join(" ") ?? "";
      for (const item of items) {
        const code = cards
          .find(({ text }) => text === item)
          ?.mark.split("-")
          .at(-1);
        assert.match(zone, new RegExp(`\\b${code} *${item}`), pile);
      }
    }
  },
};

const folder = "kinds-out";
const reader = new TextDecoder();

async function read(name: string): Promise<Uint8Array> {
  return vscode.workspace.fs.readFile(place(`${folder}/${name}`));
}

async function namesIn(): Promise<readonly string[]> {
  return vscode.workspace.fs.readDirectory(place(folder)).then(
    (entries) => entries.map(([name]) => name),
    () => [],
  );
}

/** Chooses a command in the palette as a person does. */
async function choose(title: string): Promise<void> {
  await focusEditor();
  await keyboard.press("F1");
  await workbench.waitFor(".quick-input-widget .input");
  await keyboard.type(title);
  await workbench.waitFor(`.quick-input-widget .monaco-list-row.focused:has-text("${title}")`);
  await keyboard.press("Enter");
}

/** Makes the PDFs and waits until the pieces file, the last of the files, is a new one. */
async function make(): Promise<void> {
  const pieces = async (): Promise<string> => read("market.pieces.json").then((bytes) => reader.decode(bytes));
  const before = await pieces().catch(() => "");
  await choose("Cutwork: Make the PDFs");
  await until("the PDFs", async () => (await pieces()) !== before, 90_000);
}

describe("every kind, from the text to print", () => {
  let editor: vscode.TextEditor;
  const setting = vscode.workspace.getConfiguration("cutwork");
  before(async () => {
    await setting.update("outputFolder", folder, vscode.ConfigurationTarget.Workspace);
    await vscode.workspace.fs.writeFile(place("pear.png"), pear);
    editor = await openUnit("market.unit.md", kindsUnit);
    await make();
  });
  after(async () => {
    await closeAll();
    await setting.update("outputFolder", undefined, vscode.ConfigurationTarget.Workspace);
  });

  for (const kind of schema.properties.make.enum) {
    it(kind, async () => {
      const names = await namesIn();
      const pages = async (stock: string): Promise<PrintedPage[]> => {
        const name = names.find((each) => each.endsWith(`-${kind}.${stock}.pdf`));
        return name === undefined ? [] : readPrint(await read(name));
      };
      const print = { card: await pages("card"), paper: await pages("paper") };
      const check = checks[kind];
      assert.ok(check, `nothing here tells what ${kind} should print`);
      assert.ok(print.paper.length > 0);
      check(print);
    });
  }

  it("a lost strip of the print before an edit comes again: text, size, mark and back", async () => {
    const strips = (await namesIn()).find((name) => name.endsWith("-strips.card.pdf")) ?? "";
    const [front] = await readPrint(await read(strips));
    const lost = front && stripsOn(front).find(({ text }) => text === "Começa a chover.");
    assert.ok(front && lost);
    await replace(editor, "Começa a chover.", "Começa a nevar.");
    await make();
    const [after] = await readPrint(await read(strips));
    assert.ok(after && stripsOn(after).some(({ text }) => text === "Começa a nevar."));
    await choose("Cutwork: Print Lost Pieces Again");
    await workbench.waitFor('.quick-input-widget:has-text("The marks of the pieces")');
    await keyboard.type(lost.mark.toLowerCase());
    await keyboard.press("Enter");
    const name = await until("the piece", async () => (await namesIn()).find((each) => each.startsWith("reprint.")));
    const [again, back, ...more] = await readPrint(await read(name));
    assert.ok(again && back);
    assert.deepEqual(more, []);
    const [strip, ...others] = stripsOn(again);
    assert.deepEqual([strip?.text, strip?.mark, others], [lost.text, lost.mark, []]);
    const sizes = (page: PrintedPage, box = lost.box): number[] => textsIn(page, box).map(({ size }) => size);
    assert.deepEqual(sizes(again, strip?.box), sizes(front));
    assert.ok(strip && Math.abs(strip.box.w - lost.box.w) < 0.01 && Math.abs(strip.box.h - lost.box.h) < 0.01);
    const behind = textsIn(back, { ...strip.box, x: back.width - strip.box.x - strip.box.w });
    assert.deepEqual(
      behind.map(({ text }) => text),
      ["5"],
    );
  });
});

/** Two by three grey pixels; one is transparent, one half so. */
const pear = Uint8Array.from(
  atob("iVBORw0KGgoAAAANSUhEUgAAAAIAAAADCAQAAAAT4xYKAAAAFUlEQVR42mNgYIj6zxD1H0Q0RP0HACdpBj+HYxqzAAAAAElFTkSuQmCC"),
  (character) => character.charCodeAt(0),
);
