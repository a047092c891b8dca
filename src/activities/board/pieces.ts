import type { Piece, Press } from "../contract";
import { recorded } from "../printed";
import { layoutBoard } from "./layout";
import { type BoardDeal, callsOf, type DealtBoard } from "./model";

/** The cells, row by row; `solution` has the numbers under which a cell is called, by class hour. */
export function boardPieces(dealt: DealtBoard, deal: BoardDeal, press: Press): Piece[] {
  const { cells } = layoutBoard(dealt, press);
  return deal.cells.flatMap((word, i): Piece[] => {
    const cell = cells[i];
    if (!cell) return [];
    const shown = dealt.words[word ?? -1]?.shown;
    return [
      {
        faces: [shown ? { side: "front", text: shown.text, source: shown.source } : { side: "front", text: "" }],
        at: [{ page: 0, ...cell, turn: 0, side: "front" }],
        solution: callsOf(dealt, word),
      },
    ];
  });
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
