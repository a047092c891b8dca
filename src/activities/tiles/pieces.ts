import { placeSquares } from "../../page/squares";
import { isNumber } from "../belongs";
import { blankPieces } from "../blank-pieces";
import type { Piece, PieceFace, Press } from "../contract";
import { layoutTiles } from "./layout";
import type { DealtTiles, TilesDeal } from "./model";

const sides = ["n", "e", "s", "w"] as const;

/** The tiles in the order dealt: faces as they stand in the solution, place on the sheets, cell. Then blank ones, which have no cell. */
export function tilePieces(dealt: DealtTiles, deal: TilesDeal, press: Press): Piece[] {
  const { box, packing, count } = layoutTiles(dealt, press);
  const places = placeSquares(box, packing, count);
  const tiles = deal.tiles.map(({ cell, turn }, i): Piece => {
    const face = deal.solved[cell] ?? [];
    const place = places[i];
    return {
      faces: sides.map((side, edge): PieceFace => {
        const shown = face[edge];
        return shown ? { side, text: shown.text, source: shown.source } : { side, text: "" };
      }),
      at: place
        ? [{ page: place.page, x: place.x, y: place.y, w: packing.side, h: packing.side, turn, side: "front" }]
        : [],
      solution: { row: Math.floor(cell / deal.frame.columns), column: cell % deal.frame.columns },
    };
  });
  const { side } = packing;
  const blank = places.slice(tiles.length).map(({ page, x, y }) => ({ page, x, y, w: side, h: side }));
  return [...tiles, ...blankPieces(blank, {})];
}

/** What it takes to print this deal again as it was. */
export function tileRecord(dealt: DealtTiles, deal: TilesDeal, press: Press): unknown {
  const { paper, margin, packing, size } = layoutTiles(dealt, press);
  const { seed, turn } = dealt.options;
  return {
    frame: deal.frame,
    settings: { seed, attempt: deal.attempt, turn, paper: paper.name, margin },
    layout: { side: packing.side, columns: packing.columns, rows: packing.rows, size: size ?? null },
    tiles: deal.tiles.map(({ cell, turn: turned }) => ({
      cell,
      turn: turned,
      faces: (deal.solved[cell] ?? []).map((edge) =>
        edge ? { runs: edge.runs, lang: edge.lang, ...(edge.picture ? { picture: edge.picture.path } : {}) } : null,
      ),
    })),
  };
}

/** `row 2, column 3`, counted from 1, from a tile's `solution`. */
export function cellSaid(solution: unknown): string {
  const { row, column } = (solution ?? {}) as { readonly row?: unknown; readonly column?: unknown };
  return isNumber(row) && isNumber(column) ? `row ${row + 1}, column ${column + 1}` : "";
}
