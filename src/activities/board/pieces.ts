import { isText, listOf } from "../belongs";
import type { Piece, PieceFace, Press } from "../contract";
import { recorded } from "../printed";
import { layoutBoard } from "./layout";
import type { BoardDeal, DealtBoard } from "./model";

/**
 * The board, which is one piece: its faces are the cells, row by row, a blank one without text. `solution` has the list of calls
 * of each class hour: the words in the order in which they are called.
 */
export function boardPieces(dealt: DealtBoard, deal: BoardDeal, press: Press): Piece[] {
  const { board } = layoutBoard(dealt, press);
  const { words, lists } = dealt;
  return [
    {
      faces: deal.cells.map((word): PieceFace => {
        const shown = words[word ?? -1]?.shown;
        return shown ? { side: "front", text: shown.text, source: shown.source } : { side: "front", text: "" };
      }),
      at: [{ page: 0, ...board, turn: 0, side: "front" }],
      solution: lists.map((list) => list.map((word) => words[word]?.shown.text ?? "")),
    },
  ];
}

/** What it takes to print this deal again as it was. */
export function boardRecord(dealt: DealtBoard, deal: BoardDeal, press: Press): unknown {
  const { options, words, grid, lists, targets } = dealt;
  const { paper, margin, cells, size } = layoutBoard(dealt, press);
  const { seed, facing, boards, show, clue } = options;
  return {
    settings: { seed, attempt: deal.attempt, facing, boards, show, clue, paper: options.paper, margin },
    layout: { ...grid, landscape: paper.width > paper.height, w: cells[0]?.w, h: cells[0]?.h, size: size ?? null },
    cells: deal.cells.map((word) => {
      const shown = words[word ?? -1]?.shown;
      return shown ? recorded(shown) : null;
    }),
    clues: words.slice(0, targets).map(({ clue: said }) => said?.runs ?? []),
    lists,
  };
}

/** The words in the order in which they are called, from a board's `solution`; where there are several class hours, of each. */
export function callsSaid(solution: unknown): string {
  const lists = listOf(solution, (list): list is unknown[] => Array.isArray(list)).map((list) => listOf(list, isText));
  return lists.map((words, hour) => `${lists.length > 1 ? `hour ${hour + 1}: ` : ""}${words.join(" · ")}`).join("; ");
}
