import { pieceMark } from "../../base/mark";
import { upTo } from "../../base/seed";
import { furniture } from "../../page/furniture";
import type { Sheet, SheetItem } from "../../page/sheet";
import { placeSquares, squareCuts } from "../../page/squares";
import type { Press } from "../contract";
import { titleOf } from "../sheet-page";
import { drawCentre, drawFace, drawUp } from "./draw";
import { layoutTiles } from "./layout";
import type { DealtTiles, TilesDeal } from "./model";
import { barLabel, folio, setLabel, stateOf } from "./words";

const markSize = 5;

/** The tiles of one copy, shuffled and turned as dealt, then the blank ones, in a block with shared cut lines. */
export function pieceSheets(dealt: DealtTiles, deal: TilesDeal, copy: number | undefined, press: Press): Sheet[] {
  const layout = layoutTiles(dealt, press);
  const { box, packing, paper, margin, size, count } = layout;
  const places = placeSquares(box, packing, count);
  const { request, options } = dealt;
  const state = [...stateOf(deal, options.levels?.length ?? 1, options.versions), setLabel(copy), deal.code].join(
    " · ",
  );
  return upTo(packing.pages).map((page) => {
    const onPage = places.map((place, piece) => ({ ...place, piece })).filter((place) => place.page === page);
    const tiles = onPage.flatMap(({ x, y, piece }): SheetItem[] => {
      const tile = deal.tiles[piece];
      const face = tile && deal.solved[tile.cell];
      const [code, ...rest] = pieceMark(deal.code, copy, piece).split("-");
      const mark = [code ?? "", rest.join("-")];
      // A blank tile has its mark and nothing else.
      if (!tile || !face) return drawCentre(mark, { x, y, side: packing.side, turn: 0 }, markSize);
      const place = { x, y, side: packing.side, turn: tile.turn };
      return [
        { type: "area", x, y, w: packing.side, h: packing.side, piece },
        ...(size === undefined ? [] : drawFace(face, place, size, press)),
        ...drawCentre(mark, place, markSize),
        ...(options.turn === "fixed" ? [drawUp(place)] : []),
      ];
    });
    const texts = {
      title: titleOf(request, press, [{ text: state }]),
      state: [{ text: state }],
      folio: folio(page, packing.pages),
    };
    return {
      width: paper.width,
      height: paper.height,
      stock: "card",
      label: `${request.title}, ${state}, ${folio(page, packing.pages)}`,
      lang: request.explains,
      items: [...furniture(paper, margin, texts, barLabel), ...squareCuts(onPage, packing.side), ...tiles],
    };
  });
}
