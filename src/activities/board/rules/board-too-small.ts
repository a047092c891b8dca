import type { Fix, Rule } from "../../../base/finding";
import { sizeFor, xHeightOf, xHeights } from "../../../page/legibility";
import { setOption } from "../../edits";
import { cardFace } from "../../printed";
import { optionPlace } from "../../report";
import { dealBoard } from "../deal";
import { layoutBoard, layoutOf, sizeOn } from "../layout";
import type { DealtBoard } from "../model";
import { cellsIn, largestGrid } from "../options";
import { fewestTargets } from "../words";
import type { BoardContext } from "./context";

export const boardTooSmall: Rule<BoardContext> = {
  code: "board-too-small",
  severity: "warning",
  title: "Words that are too small to read on a board",
  why: "A board lies between its players, so it is read from 600 mm: small letters should be 3.49 mm high (20 minutes of arc) and must be 2.79 mm (16 minutes). All words have one size, so the longest decides. Take a smaller grid, seat the players side by side, or use a shorter word.",
  example: {
    wrong:
      "## Times\n\n- ontem à noite depois da ceia com toda a família = last night\n- hoje = today\n- logo = soon\n- já = now\n- nunca = never\n- sempre = always\n- tarde = late\n- cedo = early\n- ainda = still\n- antes = before\n- depois = after\n- agora = at present\n- amanhã = tomorrow\n- anteontem = the day before yesterday\n- outrora = in the past\n- breve = short\n\n```activity\nmake: board\ngrid: 4 x 4\nfacing: opposite\n```",
    right:
      "## Times\n\n- ontem = yesterday\n- hoje = today\n- logo = soon\n- já = now\n\n```activity\nmake: board\ngrid: 2 x 2\n```",
  },
  check: ({ dealt, press }) => {
    const { grid, words, deals, options, request } = dealt;
    if (deals.length === 0 || !grid) return [];
    const { size, cells } = layoutBoard(dealt, press);
    const { typeface } = press;
    const comfort = sizeFor(xHeights.board.comfortable, typeface);
    const [cell] = cells;
    if (!cell || (size !== undefined && size >= comfort)) return [];
    const small = words
      .map(({ shown }) => ({ shown, own: sizeOn([cardFace(shown, press)], cell, options.facing, press) }))
      .filter(({ own }) => own === undefined || own < comfort)
      .sort((a, b) => (a.own ?? 0) - (b.own ?? 0) || a.shown.source.start - b.shown.source.start);
    const [worst, ...others] = small;
    if (!worst) return [];
    const height = worst.own === undefined ? 0 : xHeightOf(worst.own, typeface);
    const state = worst.own === undefined ? "does not fit" : `has letters only ${height.toFixed(1)} mm high`;
    return [
      {
        range: worst.shown.source,
        severity: height < xHeights.board.least ? "error" : "warning",
        message: `“${worst.shown.text}” ${state} in cells of ${Math.floor(cell.w)} × ${Math.floor(cell.h)} mm, and sets the size of all. At 600 mm they should be 3.5 mm.`,
        related: [
          ...others.slice(0, 4).map(({ shown }) => ({ range: shown.source, message: "Too small as well" })),
          ...(options.grid === "auto"
            ? []
            : [{ range: optionPlace(request.block, "grid"), message: "The grid that was asked for" }]),
        ],
        fixes: [...smallerGrid(dealt, comfort, press), ...sideBySide(dealt, comfort, press)],
      },
    ];
  },
};

/** The largest smaller grid whose words are comfortable; another choice of words counts. */
function smallerGrid(dealt: DealtBoard, comfort: number, press: BoardContext["press"]): Fix[] {
  const { grid, request, options } = dealt;
  for (let cells = grid ? cellsIn(grid) - 1 : 0; cells >= fewestTargets; cells--) {
    const smaller = largestGrid(cells);
    if (!smaller || cellsIn(smaller) < cells) continue;
    const written = `${smaller.rows} x ${smaller.columns}`;
    const value = { ...options, grid: written };
    const after = dealBoard({ ...request, options: { ...request.options, value } });
    if (after.deals.length === 0 || (layoutBoard(after, press).size ?? 0) < comfort) continue;
    const edits = [setOption(request.block, request.unit.text, "grid", written)];
    return [{ title: `Make a board of ${smaller.rows} × ${smaller.columns}`, edits }];
  }
  return [];
}

function sideBySide(
  { words, grid, options, request }: DealtBoard,
  comfort: number,
  press: BoardContext["press"],
): Fix[] {
  if (options.facing === "side" || !grid) return [];
  if ((layoutOf(words, grid, { ...options, facing: "side" }, press).size ?? 0) < comfort) return [];
  const edits = [setOption(request.block, request.unit.text, "facing", "side")];
  return [{ title: "Seat the players side by side", edits }];
}
