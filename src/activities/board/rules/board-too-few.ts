import type { Fix, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { counted, optionPlace, quotedList } from "../../report";
import { type BoardOptions, cellsIn, largestGrid } from "../options";
import { fewestTargets } from "../words";
import type { BoardContext } from "./context";
import { dealsWith } from "./deals-with";

const whatIsSaid = { word: "words on the left", gloss: "words on the right", example: "an example sentence" };

export const boardTooFew: Rule<BoardContext> = {
  code: "board-too-few",
  severity: "error",
  counts: true,
  title: "Too few words to fill a board",
  why: "Every cell carries a word that is called, one that is never called, or is blank by `blanks`. Words that are called need something to say: with `clue: example` a bullet with a sentence under the pair. Words that are never called must fit none of the clues. Take a smaller grid, or add pairs.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: board\ngrid: 3 x 4\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: board\ngrid: 2 x 2\n```",
  },
  check: ({ dealt }) => {
    const { deals, request, options, short, grid } = dealt;
    if (deals.length > 0) return [];
    const { block, unit, sections } = request;
    const names = quotedList(sections.map(({ name }) => name));
    const has = `${names} has ${counted(short.callable, "pair")} with ${whatIsSaid[options.clue]}${short.callable < short.pairs ? `, of ${short.pairs}` : ""}.`;
    const wanted = Math.max(fewestTargets, short.targets);
    const size = grid ? `A board of ${grid.rows} × ${grid.columns}` : "A board";
    const lacking = short.callable < wanted || !grid;
    const message = lacking
      ? `${size} needs ${counted(wanted, "word")} to call; ${has}`
      : short.targets < fewestTargets
        ? `A board needs at least ${fewestTargets} words to call; here are ${short.targets}.`
        : `${size} needs ${counted(short.distractors, "word")} that ${short.distractors === 1 ? "is" : "are"} never called; ${short.spare === 0 ? "none" : `only ${short.spare}`} could be found that fits no clue.`;
    const fixes: Fix[] = [];
    const offer = (title: string, change: Partial<BoardOptions>, key: string, value: string): void => {
      if (deals.length === 0 && dealsWith(dealt, change))
        fixes.push({ title, edits: [setOption(block, unit.text, key, value)] });
    };
    const smaller =
      grid &&
      largestGrid(cellsIn(grid) - Math.max(1, short.targets - short.callable + short.distractors - short.spare));
    if (smaller) {
      const value = `${smaller.rows} x ${smaller.columns}`;
      offer(`Make a board of ${smaller.rows} × ${smaller.columns}`, { grid: value }, "grid", value);
    }
    if (options.clue === "example") offer("Call by translation", { clue: "gloss" }, "clue", "gloss");
    if (options.distractors !== undefined) offer("Call all words", { distractors: 0 }, "distractors", "0");
    const key =
      lacking || short.targets < fewestTargets ? ["grid", "take", "clue", "from"] : ["distractors", "take", "grid"];
    return [{ range: optionPlace(block, ...key), message, fixes }];
  },
};
