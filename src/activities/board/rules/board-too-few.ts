import type { Fix, Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { setOption } from "../../edits";
import { type Changing, saying, withOptions } from "../../foreseen";
import { counted, optionPlace, quotedList } from "../../report";
import { type BoardOptions, cellsIn } from "../options";
import { fewestTargets } from "../words";
import type { BoardContext } from "./context";
import { type Outcome, outcomeWith, smallerGrid } from "./deals-with";

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
  check: (context) => {
    const { dealt } = context;
    const { deals, request, options, short, grid } = dealt;
    if (deals.length > 0) return [];
    const { block, sections } = request;
    const names = quotedList(sections.map(({ name }) => name));
    const has = `${names} has ${counted(short.callable, "pair")} with ${whatIsSaid[options.clue]}${short.callable < short.pairs ? `, of ${short.pairs}` : ""}.`;
    const wanted = Math.max(fewestTargets, short.targets);
    const size = grid ? `A board of ${grid.rows} × ${grid.columns}` : "A board";
    const few = options.take !== undefined && options.take < fewestTargets && short.callable >= fewestTargets;
    const lacking = short.callable < wanted || !grid;
    const least = `A board needs at least ${fewestTargets} words to call`;
    const message = few
      ? `${least}; \`take\` leaves ${options.take} of ${short.callable}.`
      : lacking
        ? `${size} needs ${counted(wanted, "word")} to call; ${has}`
        : short.targets < fewestTargets
          ? `${least}; of ${cellsIn(grid)} cells ${short.targets === 0 ? "none is" : short.targets === 1 ? "only one is" : `only ${short.targets} are`} left for them.`
          : `${size} needs ${counted(short.distractors, "word")} that ${short.distractors === 1 ? "is" : "are"} never called; ${short.spare === 0 ? "none could be found that fits" : short.spare === 1 ? "only one could be found that fits" : `only ${short.spare} could be found that fit`} no clue.`;
    const key = few
      ? ["take"]
      : lacking || short.targets < fewestTargets
        ? ["grid", "take", "clue", "from"]
        : ["distractors", "take", "grid"];
    return [{ range: optionPlace(block, ...key), message, fixes: () => fixesFor(context, few) }];
  },
};

/** Other options with which each clue fits one word: where some of them bring no warning, only these, else each says what it leaves. */
function* fixesFor({ dealt, foresee }: BoardContext, few: boolean): Steps<Fix[], unknown> {
  const { options, request } = dealt;
  const { block, unit } = request;
  const tried: (Changing & { readonly outcome: Outcome })[] = [];
  const offer = (title: string, key: keyof BoardOptions, value: string | number): void => {
    const outcome = outcomeWith(dealt, { [key]: value });
    if (outcome === "no") return;
    const fix = { title, edits: [setOption(block, unit.text, key, String(value))] };
    tried.push({ fix, outcome, change: withOptions({ [key]: value }) });
  };
  if (few) offer(`Take ${fewestTargets}`, "take", fewestTargets);
  const smaller = yield* smallerGrid(dealt);
  if (smaller) {
    const { rows, columns } = smaller.grid;
    offer(`Make a board of ${rows} × ${columns}`, "grid", `${rows} x ${columns}`);
  }
  yield "trying a fix";
  if (options.clue === "example") offer("Call by translation", "clue", "gloss");
  if (options.distractors !== undefined) offer("Call all words", "distractors", 0);
  const calm = tried.filter(({ outcome }) => outcome === "calm");
  if (calm.length > 0) return calm.map(({ fix }) => fix);
  return yield* saying(tried, foresee);
}
