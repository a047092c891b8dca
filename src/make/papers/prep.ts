import { cutsOf } from "../../page/cards";
import type { Block } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { PrintedActivity } from "../printable";
import { count } from "./guide";

/** Sheets that a desk cutter takes at once: ten of 80 g/m², five of 160 (from memory, no source). */
const cardStack = 5;
const paperStack = 10;
/** g/m² */
const weights = { card: 160, paper: 80 } as const;

/** What to print, cut and sort before the first class. Counts come from the sheets as they are laid out. */
export function prepBlocks(printed: readonly PrintedActivity[]): Block[] {
  const rows = printed.flatMap(({ printable, card, paper, sets }) => [
    ...(card.length > 0 ? [row(printable.title, "card", card, sets)] : []),
    ...(paper.length > 0 ? [row(printable.title, "paper", paper, 0)] : []),
  ]);
  const cards = printed.flatMap(({ card }) => card);
  const papers = printed.flatMap(({ paper }) => paper);
  const laminated = printed.filter(({ printable }) => printable.dealt.request.options.value.reuse === "laminate");
  const edges = laminated.filter(({ printable }) => printable.kind.name === "tiles");
  const pouches = laminated.reduce((sum, { card }) => sum + card.length, 0);
  const minutes = Math.max(
    5,
    Math.ceil(strokes(cards, cardStack) / 3 + strokes(papers, paperStack) / 3 + (cards.length + papers.length) / 15),
  );
  return [
    { type: "heading", level: 1, text: "Prep sheet" },
    {
      type: "facts",
      rows: [
        {
          label: `Card, ${weights.card} g/m²`,
          value: `${count(cards.length, "sheet", "sheets")}, ${mass(cards, weights.card)}`,
        },
        {
          label: `Paper, ${weights.paper} g/m²`,
          value: `${count(papers.length, "sheet", "sheets")}, ${mass(papers, weights.paper)}`,
        },
        ...(pouches > 0 ? [{ label: "Pouches", value: `${pouches}, each 6 mm larger than the sheet` }] : []),
        {
          label: "Time",
          value: `about ${minutes} minutes (an estimate: twenty seconds a cut, ${cardStack} sheets of card or ${paperStack} of paper at once, four seconds a sheet)`,
        },
      ],
    },
    {
      type: "table",
      columns: [
        { head: "Activity" },
        { head: "Stock", width: "fit" },
        { head: "Sheets", width: "fit", align: "end" },
        { head: "Sets", width: "fit", align: "end" },
        { head: "Cuts a sheet", width: "fit", align: "end" },
        { head: "Done", width: "fit" },
      ],
      rows,
    },
    { type: "heading", level: 2, text: "In this order" },
    { type: "steps", items: order(laminated.length > 0, edges.length > 0) },
  ];
}

function order(laminates: boolean, edges: boolean): string[] {
  return [
    "Print the card sheets at 100 %, on one side unless a sheet says otherwise, and lay a ruler on the bar of the first one.",
    "Print the papers. Keep keys and lists apart from the pieces.",
    ...(laminates && !edges ? ["Laminate the sheets first, then cut, leaving 2 mm of film round each piece."] : []),
    ...(edges
      ? [
          "Tiles meet at their edges: laminate their sheets whole and cut afterwards without a rim, or do not laminate them.",
        ]
      : []),
    "Cut along the hairlines: first all the way across, then the strips.",
    "Bag each set by its deal code and set number, and stick the label on. A colour of paper or a sign for each set makes stray pieces easy to place.",
  ];
}

function row(title: string, stock: string, sheets: readonly Sheet[], sets: number) {
  const cuts = [...new Set(sheets.map((sheet) => cutsOf(sheet)))].sort((a, b) => a - b);
  const shown = cuts.length > 1 ? `${cuts[0]}–${cuts.at(-1)}` : String(cuts[0] ?? 0);
  return [title, stock, String(sheets.length), sets > 0 ? String(sets) : "–", shown, { boxes: 1 }];
}

/** Strokes of the cutter: equal sheets are cut in stacks. */
function strokes(sheets: readonly Sheet[], stack: number): number {
  const byCuts = new Map<number, number>();
  for (const sheet of sheets) byCuts.set(cutsOf(sheet), (byCuts.get(cutsOf(sheet)) ?? 0) + 1);
  return [...byCuts].reduce((sum, [cuts, number]) => sum + cuts * Math.ceil(number / stack), 0);
}

/** Mass of some sheets: area times grammage (A4 at 160 g/m² 9.98 g). */
function mass(sheets: readonly Sheet[], weight: number): string {
  const grams = sheets.reduce((sum, { width, height }) => sum + ((width * height) / 1e6) * weight, 0);
  return grams < 1000 ? `${Math.round(grams)} g` : `${(grams / 1000).toFixed(1)} kg`;
}
