import schema from "../../../schemas/loop.schema.json";
import { validateLoop } from "../../base/generated/validators";
import { isText } from "../belongs";
import type { ActivityKind } from "../contract";
import { dealingLoop, dealLoop } from "./deal";
import { loopDirections } from "./directions";
import { loopGuide, loopLabels } from "./guide";
import { solutionSheets } from "./key";
import { layingLoop } from "./layout";
import { type DealtLoop, type LoopDeal, missingCards } from "./model";
import { cardTexts, closesEarly, confusedCards } from "./overlooked";
import { loopPapers } from "./papers";
import { loopPieces, loopRecord } from "./pieces";
import { rules } from "./rules";
import { clashCount } from "./rules/clashes";
import { loopSharing, pieceSheets } from "./sheets";
import { verdicts } from "./verdicts";

/** Cards that each answer the one before, in a circle round the room or on a table. */
export const loop: ActivityKind<LoopDeal, DealtLoop> = {
  name: "loop",
  takes: ["pairs", "tables"],
  schema,
  validate: validateLoop,
  tellsShared: true,
  closesCircles: true,
  faults: (dealt) => clashCount(dealt) + missingCards(dealt),
  deal: dealLoop,
  // Cards that belong nowhere may come from anywhere.
  alone: ({ options: { decoys = 0, levels } }) => decoys === 0 && !levels?.includes("hard"),
  dealing: dealingLoop,
  pieceSheets,
  sharing: loopSharing,
  solutionSheets,
  pieces: loopPieces,
  belongs: (next) => (isText(next) ? (next === "" ? "nowhere: it is left over" : `before ${next}`) : ""),
  record: loopRecord,
  papers: loopPapers,
  guide: loopGuide,
  directions: loopDirections,
  labels: loopLabels,
  overlooked: {
    bySeed: true,
    piece: "card",
    harm: "can close the circle in another way",
    texts: cardTexts,
    confused: confusedCards,
    besides: (dealt, deal, matching) =>
      closesEarly(dealt, deal, matching)
        ? `the cards of “${dealt.request.title}” can close a circle while others are left over`
        : undefined,
  },
  laying: layingLoop,
  rules,
  verdicts,
};
