import type { Block, DocumentPage } from "../../src/page/document";
import { papers } from "../../src/page/paper";

/** Every kind of block, on about two pages. */
export const everyBlock: readonly Block[] = [
  { type: "heading", level: 1, text: "Caller’s list: At the counter" },
  {
    type: "facts",
    rows: [
      { label: "Players", value: "pairs, one caller for the room" },
      { label: "Time", value: "12 minutes" },
      {
        label: "Materials",
        value:
          "one board for each pair, one score slip, a pencil; a timer that everyone can see, set to the length of a round",
      },
    ],
  },
  { type: "heading", level: 2, text: "How to run it" },
  {
    type: "paragraph",
    text: [
      { text: "Read each statement " },
      { text: "once", bold: true },
      {
        text: ". Learners put a hand on the object when it is true and leave it when it is false. Wait until every pair has decided, then say the answer; for a false statement ask for the correction first. Points go to the quicker hand, and a point is lost for a hand on a false one. The teacher settles disputes and has a column of their own.",
      },
    ],
  },
  {
    type: "steps",
    items: [
      "Give each pair a board and a slip.",
      "Say that both hands stay at the edge of the table until the statement is over. Whoever starts too early sits out the next one.",
      "Read the list from top to bottom. The order has no pattern.",
      { runs: [{ text: "Says who is first: " }, { text: "o copo", italic: true }], lang: "pt" },
    ],
  },
  {
    type: "bullets",
    items: [
      "A false start costs nothing in the first round.",
      "שלום עולם: right to left, with Latin inside, and long enough that the line has to be broken before it ends, which שלום עולם שלום עולם שלום עולם does",
    ],
  },
  { type: "heading", level: 3, text: "Statements" },
  {
    type: "table",
    rules: "grid",
    rowHeight: 9,
    columns: [
      { head: "", width: 9, align: "end" },
      { head: "Statement", share: 3 },
      { head: "Answer", width: "fit" },
      { head: "Correction", share: 2 },
      { head: "Done", width: "fit", align: "middle" },
      { head: "Score", width: 18 },
    ],
    rows: Array.from({ length: 16 }, (_, i) => [
      `${i + 1}`,
      i % 3 === 0
        ? "A tigela está cheia de água quente e o copo está vazio em cima da mesa."
        : "O pai come sopa na cozinha.",
      i % 2 === 0 ? "true" : "false",
      i % 2 === 0 ? "" : "O pai come uma mochila.",
      { boxes: 1 + (i % 2) },
      "",
    ]),
  },
  {
    type: "table",
    columns: [{ head: "Round" }, { head: "Ana’s pair", align: "middle" }, { head: "Other pair", align: "end" }],
    rows: [
      ["1", "3", "4"],
      ["2", "Donaudampfschifffahrtsgesellschaftskapitänsmützenabzeichenverleihungsfeier", "5"],
    ],
  },
  { type: "heading", level: 2, text: "Pairs" },
  {
    type: "columns",
    count: 3,
    entries: Array.from({ length: 26 }, (_, i) =>
      i % 5 === 4
        ? `palavra ${i + 1} = a word that has a much longer translation than the others`
        : `palavra ${i + 1} = word`,
    ),
  },
  {
    type: "together",
    blocks: [
      { type: "heading", level: 2, text: "The table" },
      {
        type: "figure",
        height: 30,
        draw: ({ x, y, w, h }) => [
          { type: "line", role: "rule", x1: x, y1: y, x2: x + w, y2: y + h, weight: 0.35 },
          { type: "line", role: "rule", x1: x, y1: y + h, x2: x + w, y2: y, weight: 0.35 },
        ],
      },
    ],
  },
  { type: "heading", level: 2, text: "Notes" },
  { type: "lines", count: 4 },
];

export function samplePage(paper: "A4" | "Letter"): DocumentPage {
  return {
    paper: papers[paper],
    margin: 10,
    title: [{ text: "The bicycle shop", bold: true }, { text: " · At the counter" }],
    state: [{ text: "gentle · 7KQ4MX" }],
    barLabel: "Print at 100 %: this bar is 100 mm long.",
    folio: (page, pages) => `sheet ${page + 1} of ${pages}`,
    label: (page) => `Caller’s list, page ${page + 1}`,
    lang: "en",
  };
}
