import type { Run } from "../../base/run";
import { upTo } from "../../base/seed";
import { type Block, type Cell, setDocument } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { listed } from "../printed";
import { counted } from "../report";
import { activityPage } from "../sheet-page";
import { type BoardDeal, boardState, callsOf, type DealtBoard, neverIn } from "./model";

/** Height of a row of the board on the key, mm. */
const rowHeight = 15;

/** The board with the number at which each word is called, by class hour. */
export function solutionSheets(dealt: DealtBoard, deal: BoardDeal, view: "solved" | "second", press: Press): Sheet[] {
  const { request, grid, targets, lists } = dealt;
  if (view === "second" || !grid) return [];
  const never = neverIn(dealt, deal);
  const where = lists.length > 1 ? `on the callers’ lists of hours 1 to ${lists.length}` : "on the caller’s list";
  const numbers = `Beside each word its number ${where}${never > 0 ? "; a dash: never called" : ""}.`;
  const written = deal.writing.length;
  const blank = deal.cells.filter((word) => word === undefined).length - written;
  const state = boardState(dealt, deal);
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `Key: ${request.title}` },
    {
      type: "facts",
      rows: [
        {
          label: "Board",
          value: `${grid.rows} × ${grid.columns}, ${[`${counted(targets, "word")} called`, ...(never > 0 ? [`${never} never`] : []), ...(written > 0 ? [`${counted(written, "cell")} to write in`] : []), ...(blank > 0 ? [`${counted(blank, "cell")} blank`] : [])].join(", ")}; deal code ${deal.code}`,
        },
        { label: "Numbers", value: numbers },
        { label: "Clues", value: proofText(dealt, deal) },
      ],
    },
    {
      type: "table",
      size: 9.5,
      rules: "grid",
      rowHeight,
      columns: upTo(grid.columns).map(() => ({ align: "middle" as const })),
      rows: upTo(grid.rows).map((row) =>
        upTo(grid.columns).map((column) => cellOf(dealt, deal, row * grid.columns + column)),
      ),
    },
  ];
  return setDocument(blocks, activityPage(request, press, "Key", state), press.typeface);
}

function cellOf(dealt: DealtBoard, { cells, writing }: BoardDeal, cell: number): Cell {
  if (writing.includes(cell)) return [{ text: "to write in", italic: true }];
  const word = cells[cell];
  const shown = dealt.words[word ?? -1]?.shown;
  if (!shown) return "";
  const calls = callsOf(dealt, word);
  // No-break spaces: the numbers of one word stay together.
  const number: Run = { text: `\u2003${calls.length > 0 ? calls.join("\u00a0·\u00a0") : "–"}`, bold: true };
  const words = listed(shown);
  return { ...words, runs: [...words.runs, number] };
}

export function proofText({ options }: Pick<DealtBoard, "options">, { proof }: BoardDeal): string {
  if (proof.status === "one" && options.clue === "example")
    return "Each fits one word on the board as it is written there, proven; other forms of words are not compared.";
  return proof.status === "one"
    ? "Each fits one word on the board, proven."
    : "Some fit more than one word on the board.";
}
