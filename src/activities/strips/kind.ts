import schema from "../../../schemas/strips.schema.json";
import { validateStrips } from "../../base/generated/validators";
import { placesSaid } from "../belongs";
import type { ActivityKind } from "../contract";
import { dealingStrips, dealStrips } from "./deal";
import { stripsDirections } from "./directions";
import { stripsGuide, stripsLabels } from "./guide";
import { solutionSheets } from "./key";
import { layingStrips } from "./layout";
import type { DealtStrips, StripsDeal } from "./model";
import { confusedStrips, stripPlaces, stripTexts } from "./overlooked";
import { stripPapers } from "./papers";
import { stripPieces, stripRecord } from "./pieces";
import { rules } from "./rules";
import { pieceSheets } from "./sheets";
import { verdicts } from "./verdicts";

/** Events of a story on strips, to be put in order. */
export const strips: ActivityKind<StripsDeal, DealtStrips> = {
  name: "strips",
  takes: ["events"],
  pieceName: "strip",
  schema,
  validate: validateStrips,
  overlooked: {
    piece: "strip",
    harm: "can put the story in another order",
    texts: stripTexts,
    role: (_dealt, _deal, key) => key,
    places: stripPlaces,
    confused: confusedStrips,
  },
  overruled: [{ key: "versions", by: "desks", why: "each desk has a version of its own" }],
  deal: dealStrips,
  // A plan of stations may lay them out at desks.
  alone: ({ request }) => request.unit.stations.length === 0,
  dealing: dealingStrips,
  pieceSheets,
  solutionSheets,
  pieces: stripPieces,
  belongs: placesSaid,
  record: stripRecord,
  papers: stripPapers,
  guide: stripsGuide,
  directions: stripsDirections,
  labels: stripsLabels,
  laying: layingStrips,
  rules,
  verdicts,
};
