import type { Run } from "../../base/run";
import type { Caution, GuideEntry } from "../contract";
import { inSleeve, pencils } from "../copies";
import { listed } from "../printed";
import { counted } from "../report";
import type { DealtBoard } from "./model";

const said = { word: "a word", gloss: "a word’s translation", example: "a sentence with a word" };

/** What a colleague needs to run a board. */
export function boardGuide({ request, options, words, targets, grid, lists, deals }: DealtBoard): GuideEntry {
  const { clue, facing, players, slip, boards } = options;
  const size = grid ? `${grid.rows} × ${grid.columns}` : "";
  const never = words.length - targets;
  const levels = new Set(deals.map(({ level }) => level)).size > 1;
  const where = levels ? "on the hard boards" : "on the board";
  const sit = facing === "opposite" ? "opposite each other" : "side by side";
  const sets = boards === "different" ? " Each board has an arrangement of its own; one list serves all." : "";
  const hours = lists.length > 1 ? `${lists.length} callers’ lists, one for each class hour` : "one caller’s list";
  const cautions: Caution[] = slip === "none" ? [] : ["cutter", "scissors"];
  if (options.reuse === "laminate") cautions.push("laminator");
  return {
    summary: `${players === 2 ? "Two" : "Three"} learners sit ${sit} at a board of ${size} cells. The caller says ${said[clue]}; who touches its cell first scores. A dispute goes to the teacher, who has a column too. The papers have ${hours}: ${counted(targets, "call")}${never > 0 ? `; ${counted(never, "word")} ${where} ${never === 1 ? "is" : "are"} never called` : ""}.${sets}`,
    materials: (words) => [
      options.blanks > 0 && options.reuse === "sleeve" ? words.sleevedBoardTable : words.boardTable,
      ...(options.blanks > 0 ? [words.forDottedCells(pencils(words, options, "some"))] : []),
      ...(slip === "none" ? [] : [words.scoreSlip(inSleeve(words, options), pencils(words, options, "one"))]),
      words.list,
    ],
    atSet: players,
    called: true,
    // Own estimate: half a minute a call, four to explain and to count.
    minutes: request.options.value.minutes ?? Math.max(8, Math.round(4 + targets / 2)),
    answers: words
      .slice(0, targets)
      .map(({ shown, clue: own }): readonly Run[] => [...(own?.runs ?? []), { text: " = " }, ...listed(shown).runs]),
    cautions,
  };
}
