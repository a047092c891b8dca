import schema from "../../../schemas/sort.schema.json";
import { validateSort } from "../../base/generated/validators";
import { isText, listOf } from "../belongs";
import type { ActivityKind } from "../contract";
import { quotedList } from "../report";
import { hasForms } from "../twins";
import { dealingSort, dealSort } from "./deal";
import { sortDirections } from "./directions";
import { sortGuide, sortLabels } from "./guide";
import { solutionSheets } from "./key";
import { layingSort } from "./layout";
import { sortPapers } from "./mats";
import type { DealtSort, SortDeal } from "./model";
import { confusedPiles, pilesFor, sortPlaces, sortTexts } from "./overlooked";
import { sortPieces, sortRecord } from "./pieces";
import { rules } from "./rules";
import { pieceSheets, sortSharing } from "./sheets";
import { verdicts } from "./verdicts";

/** Cards that are sorted into piles: true or false, or what the headings of a section say. */
export const sort: ActivityKind<SortDeal, DealtSort> = {
  name: "sort",
  takes: ["pairs", "statements", "events", "tables"],
  sortsPiles: true,
  // Cards that share an answer are no riddle to each other: each has its pile.
  tellsShared: true,
  schema,
  validate: validateSort,
  overlooked: {
    piece: "card",
    harm: "can sort the cards in another way",
    texts: sortTexts,
    role: pilesFor,
    places: sortPlaces,
    confused: confusedPiles,
  },
  faults: ({ options, missingMispairs }) => (options.mispair === undefined ? 0 : missingMispairs),
  deal: dealSort,
  // Tables anywhere may make false twins.
  alone: ({ by, request }) => by === "headings" || !hasForms(request),
  dealing: dealingSort,
  pieceSheets,
  sharing: sortSharing,
  solutionSheets,
  pieces: sortPieces,
  belongs: (piles) => quotedList(listOf(piles, isText)),
  record: sortRecord,
  papers: sortPapers,
  guide: sortGuide,
  directions: sortDirections,
  labels: sortLabels,
  laying: layingSort,
  rules,
  verdicts,
};
