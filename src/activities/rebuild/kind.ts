import schema from "../../../schemas/rebuild.schema.json";
import { validateRebuild } from "../../base/generated/validators";
import type { ActivityKind } from "../contract";
import { dealingRebuild, dealRebuild } from "./deal";
import { rebuildDirections } from "./directions";
import { rebuildGuide, rebuildLabels } from "./guide";
import { solutionSheets } from "./key";
import { layingRebuild } from "./layout";
import type { DealtRebuild, RebuildDeal } from "./model";
import { confusedParts, partPlaces, partTexts } from "./overlooked";
import { rebuildPapers } from "./papers";
import { partSaid, rebuildPieces, rebuildRecord } from "./pieces";
import { rules } from "./rules";
import { pieceSheets, rebuildSharing } from "./sheets";
import { verdicts } from "./verdicts";

/** Sentences cut into cards, in numbered packets, to be put together again. */
export const rebuild: ActivityKind<RebuildDeal, DealtRebuild> = {
  name: "rebuild",
  takes: ["pairs"],
  schema,
  validate: validateRebuild,
  // Two sentences of one translation harm nothing: their cards are told apart by packet and letter.
  sharesGlosses: true,
  showsParts: true,
  overlooked: {
    piece: "card",
    harm: "can lay another sentence",
    texts: partTexts,
    role: (_dealt, _deal, key) => key,
    places: partPlaces,
    calmer: ({ options }) =>
      options.packet > 1 ? [{ title: "Put one sentence into each packet", key: "packet", value: 1 }] : [],
    confused: confusedParts,
  },
  deal: dealRebuild,
  dealing: dealingRebuild,
  pieceSheets,
  sharing: rebuildSharing,
  solutionSheets,
  pieces: rebuildPieces,
  belongs: partSaid,
  record: rebuildRecord,
  papers: rebuildPapers,
  guide: rebuildGuide,
  directions: rebuildDirections,
  labels: rebuildLabels,
  overruled: [
    { key: "capitals", by: "levels", why: "gentle keeps capitals and hard hides them" },
    { key: "stops", by: "levels", why: "gentle keeps the marks at the ends and hard hides them" },
  ],
  laying: layingRebuild,
  rules,
  verdicts,
};
