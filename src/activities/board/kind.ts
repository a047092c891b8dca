import schema from "../../../schemas/board.schema.json";
import { validateBoard } from "../../base/generated/validators";
import type { ActivityKind } from "../contract";
import { dealBoard, dealingBoard } from "./deal";
import { boardDirections } from "./directions";
import { doubledPlaces } from "./doubled";
import { boardGuide } from "./guide";
import { solutionSheets } from "./key";
import { layingBoard } from "./layout";
import type { BoardDeal, DealtBoard } from "./model";
import { boardOptions } from "./options";
import { boardTexts, confusedWords, unheard } from "./overlooked";
import { boardPapers } from "./papers";
import { boardPieces, boardRecord, callsSaid } from "./pieces";
import { rules } from "./rules";
import { pieceSheets } from "./sheets";
import { verdicts } from "./verdicts";

/** A board for two or three: the caller says a word, who touches it first scores. */
export const board: ActivityKind<BoardDeal, DealtBoard> = {
  name: "board",
  takes: ["pairs", "tables"],
  schema,
  validate: validateBoard,
  tellsShared: true,
  pieceName: "board",
  wholeSheets: true,
  leastAtSet: ({ options }) => boardOptions(options).players,
  called: true,
  deal: dealBoard,
  // Words that are never called may come from anywhere.
  alone: ({ options: { levels }, short }) => !levels?.includes("hard") && short.distractors === 0,
  dealing: dealingBoard,
  faults: (dealt) => doubledPlaces(dealt).size + unheard(dealt),
  pieceSheets,
  solutionSheets,
  pieces: boardPieces,
  belongs: callsSaid,
  record: boardRecord,
  oneHour: (dealt) => ({ ...dealt, lists: dealt.lists.slice(0, 1) }),
  papers: boardPapers,
  guide: boardGuide,
  directions: boardDirections,
  // A board is a whole sheet: there is no bag to label.
  labels: () => [],
  overlooked: {
    bySeed: true,
    piece: "word",
    harm: "may touch the wrong word",
    heard: ({ words, options }, _, keys) =>
      options.clue === options.show || keys.every((key) => words.some(({ clue }) => clue?.key === key)),
    // Whoever hears the very word has nothing but its sound to go by, whatever it means.
    role: ({ options }, _, key) => (options.clue === options.show ? key : undefined),
    texts: boardTexts,
    confused: confusedWords,
  },
  overruled: [{ key: "versions", by: "boards", value: "different", why: "each set has a board of its own" }],
  laying: layingBoard,
  rules,
  verdicts,
};
