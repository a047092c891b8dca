import type { Steps } from "../../../base/steps";
import { dealBoard } from "../deal";
import type { DealtBoard } from "../model";
import { type BoardOptions, cellsIn, type Grid, largestGrid } from "../options";
import { unheard } from "../overlooked";
import { fewestTargets } from "../words";

/** What becomes of a board with other options: each clue fits one word, and if so whether anything is warned of that is not now. */
export type Outcome = "no" | "warns" | "calm";

/** What the same words with other options make. */
export function outcomeWith(dealt: DealtBoard, change: Partial<BoardOptions>): Outcome {
  const known = answers.get(dealt) ?? new Map<string, Outcome>();
  answers.set(dealt, known);
  const question = JSON.stringify(change);
  const answer = known.get(question) ?? dealsAnew(dealt, change);
  known.set(question, answer);
  return answer;
}

/** What was asked of a board: its findings ask the same. */
const answers = new WeakMap<DealtBoard, Map<string, Outcome>>();

function dealsAnew(dealt: DealtBoard, change: Partial<BoardOptions>): Outcome {
  const value = { ...dealt.options, ...change };
  const after = dealBoard({ ...dealt.request, options: { ...dealt.request.options, value } });
  if (after.deals.length === 0 || after.doubles.length > 0) return "no";
  return isCalm(dealt, after) ? "calm" : "warns";
}

/** Whether no more words cannot be told by ear than now, and levels differ as they do now; of what is not dealt now, at all. */
export function isCalm(now: DealtBoard, after: DealtBoard): boolean {
  const before = now.deals.length === 0 ? 0 : unheard(now);
  const same = now.deals.length > 0 && now.sameLevels !== undefined;
  return unheard(after) <= before && (after.sameLevels === undefined || same);
}

export interface Smaller {
  readonly grid: Grid;
  readonly outcome: Outcome;
}

/** In steps: the largest board with fewer cells on which each clue fits one word; where there is one, of those that bring no warning. */
export function* smallerGrid(dealt: DealtBoard): Steps<Smaller | undefined> {
  let found: Smaller | undefined;
  for (let cells = dealt.grid ? cellsIn(dealt.grid) - 1 : 0; cells >= fewestTargets; cells--) {
    const grid = largestGrid(cells);
    if (!grid || cellsIn(grid) < cells) continue;
    yield "trying a smaller board";
    const outcome = outcomeWith(dealt, { grid: `${grid.rows} x ${grid.columns}` });
    if (outcome === "calm") return { grid, outcome };
    if (outcome === "warns") found ??= { grid, outcome };
  }
  return found;
}
