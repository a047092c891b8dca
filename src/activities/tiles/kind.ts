import schema from "../../../schemas/tiles.schema.json";
import { validateTiles } from "../../base/generated/validators";
import type { ActivityKind } from "../contract";
import { dealingTiles, dealTiles, hasEnough } from "./deal";
import { directions, tilesGuide, tilesLabels } from "./guide";
import { solutionSheets } from "./key";
import { layingTiles } from "./layout";
import type { DealtTiles, TilesDeal } from "./model";
import { levelsOf } from "./options";
import { confusedTiles, edgeTexts } from "./overlooked";
import { cellSaid, tilePieces, tileRecord } from "./pieces";
import { rules } from "./rules";
import { blanksIn, optionFixes } from "./rules/causes";
import { pieceSheets } from "./sheets";
import { holdingSoon, structureOfRequest } from "./trial";
import { verdicts } from "./verdicts";

/** Square tiles laid so that touching edges belong together. */
export const tiles: ActivityKind<TilesDeal, DealtTiles> = {
  name: "tiles",
  takes: ["pairs", "tables"],
  pieceName: "tile",
  edgeToEdge: true,
  schema,
  validate: validateTiles,
  deal: dealTiles,
  // Words outside may come from anywhere.
  alone: ({ options }) => levelsOf(options).every((level) => level === "gentle"),
  dealing: dealingTiles,
  trial: { deals: hasEnough, structure: structureOfRequest, holding: holdingSoon, options: optionFixes },
  pieceSheets,
  solutionSheets,
  pieces: tilePieces,
  belongs: cellSaid,
  record: tileRecord,
  papers: () => [],
  guide: tilesGuide,
  directions: (dealt, lang) => directions[lang]?.(dealt),
  labels: tilesLabels,
  overlooked: {
    bySeed: true,
    piece: "tile",
    alone: (name) => `nothing else says how tile ${name} is turned`,
    harm: "can lay the tiles in another way",
    texts: edgeTexts,
    confused: confusedTiles,
  },
  elseLoose: (dealt) => {
    const open = dealt.deals.find(({ proof }) => proof.status === "several");
    return open ? blanksIn(dealt, open) : "";
  },
  overruled: [{ key: "outer", by: "levels", why: "gentle leaves the outer edges blank and hard has decoys there" }],
  laying: layingTiles,
  rules,
  verdicts,
};
