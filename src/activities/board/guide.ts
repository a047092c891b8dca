import type { Run } from "../../base/run";
import type { Caution, GuideEntry } from "../contract";
import { inSleeve, pencils } from "../copies";
import { listed } from "../printed";
import { counted } from "../report";
import { type DealtBoard, saysForms } from "./model";

/** What the caller says: of words, and of cells of a forms table. */
const said = { word: "a word", gloss: "a word’s translation", example: "a sentence with a word" };
const saidOfForms = { word: "a verb and a person", gloss: "a form of a verb", example: "a sentence with a form" };

/** What a colleague needs to run a board. */
export function boardGuide(dealt: DealtBoard): GuideEntry {
  const { request, options, words, targets, grid, lists, deals } = dealt;
  const { clue, facing, players, slip, boards } = options;
  const size = grid ? `${grid.rows} × ${grid.columns}` : "";
  const never = words.length - targets;
  const levels = new Set(deals.map(({ level }) => level)).size > 1;
  const where = levels ? "on the hard boards" : "on the board";
  const sit =
    facing === "side"
      ? `side by side at a board of ${size} cells`
      : players === 2
        ? `opposite each other at a board of ${size} cells`
        : `at a board of ${size} cells, two of them opposite the third`;
  const forms = saysForms(dealt);
  const says = {
    none: said[clue],
    some: `${said[clue]} or ${saidOfForms[clue]}`,
    all: saidOfForms[clue],
  }[forms];
  const sets = boards === "different" ? " Each board has an arrangement of its own; one list serves all." : "";
  const hours = lists.length > 1 ? `${lists.length} callers’ lists, one for each class hour` : "one caller’s list";
  const cautions: Caution[] = slip === "none" ? [] : ["cutter", "scissors"];
  if (options.reuse === "laminate") cautions.push("laminator");
  return {
    summary: `${players === 2 ? "Two" : "Three"} learners sit ${sit}. The caller says ${says}; who touches its cell first scores. A dispute goes to the teacher, who has a column too. The papers have ${hours}: ${counted(targets, "call")}${never > 0 ? `; ${counted(never, "word")} ${where} ${never === 1 ? "is" : "are"} never called` : ""}.${sets}`,
    materials: (words) => [
      options.blanks > 0 && options.reuse === "sleeve" ? words.sleevedBoardTable : words.boardTable,
      ...(options.blanks > 0 ? [words.forDottedCells(pencils(words, options, "some"))] : []),
      ...(slip === "none" ? [] : [words.scoreSlip(inSleeve(words, options), pencils(words, options, "one"))]),
      words.list,
    ],
    atSet: players,
    // Own estimate: half a minute a call, four to explain and to count.
    minutes: request.options.value.minutes ?? Math.max(8, Math.round(4 + targets / 2)),
    answers: words
      .slice(0, targets)
      .map(({ shown, clue: own }): readonly Run[] => [...(own?.runs ?? []), { text: " = " }, ...listed(shown).runs]),
    cautions,
  };
}
