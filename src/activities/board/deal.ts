import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import { finished, mapped, type Steps, told } from "../../base/steps";
import { proveAssignment, unclearClues } from "../../prove/items/items";
import type { DealRequest } from "../contract";
import { copiesOf, setsFor } from "../copies";
import { type DealPlan, planCode, plansOf } from "../levels";
import type { Level } from "../options";
import { printOf } from "../printed";
import { callLists } from "./lists";
import type { BoardDeal, DealtBoard, DoubleClue } from "./model";
import { type BoardOptions, boardOptions, cellsIn } from "./options";
import { doublesIn, fewestTargets, supplyWords } from "./words";

/** Arrangements drawn before one that another board has is taken. */
const attempts = 20;

export function dealBoard(request: DealRequest): DealtBoard {
  return finished(dealingBoard(request));
}

/** The same with a pause after what is chosen, and after each deal. */
export function* dealingBoard(request: DealRequest): Steps<DealtBoard> {
  const options = boardOptions(request.options);
  const supply = supplyWords(request, options);
  yield "arranging";
  const { grid, targets, short } = supply;
  const hard = (options.levels ?? ["hard"]).includes("hard");
  // Gentle boards leave the cells of words that are never called blank.
  const words = hard ? supply.words : supply.words.slice(0, targets);
  const used = words.flatMap(({ pair }) => pair ?? []);
  const doubles = doublesIn(words, targets, request.relation, options);
  const base = { request, options, grid, words, targets, short, doubles, used };
  const enough = targets >= Math.max(fewestTargets, short.targets) && short.spare >= short.distractors;
  if (!grid || !enough || supply.words.length > cellsIn(grid)) {
    return { ...base, summary: "board", lists: [], deals: [] };
  }
  const never = supply.words.length - targets;
  const plain = never > 0 ? "hard" : "gentle";
  const plans = plansFor(options, request, plain);
  const taken = new Set<string>();
  const drawn = new Map<number, ReturnType<typeof drawCells>>();
  const deal = (plan: BoardPlan): BoardDeal => {
    const { level, version, copies } = plan;
    // Levels of one version have their words in the same cells.
    const full =
      drawn.get(version) ??
      drawCells(
        { cells: cellsIn(grid), words: supply.words.length, blanks: options.blanks },
        `board/${options.seed}/${version}`,
        taken,
      );
    drawn.set(version, full);
    taken.add(full.cells.join(" "));
    const shown = level === "hard" ? words : words.slice(0, targets);
    const cells = full.cells.map((word) => (word !== undefined && word < shown.length ? word : undefined));
    const texts = shown.map((word) => [printOf(word.shown), word.clue?.runs ?? 0]);
    const { writing } = full;
    const print = ["board", planCode(plan, plain), grid, options.facing, cells, texts];
    const code = dealCode(JSON.stringify(writing.length > 0 ? [...print, writing] : print));
    const proof = proofOf(
      shown.length,
      targets,
      doubles.filter(({ other }) => other < shown.length),
    );
    return { code, level, version, attempt: full.attempt, copies, cells, writing, proof };
  };
  const deals = yield* told(mapped(plans, deal), "arranging");
  const lists = callLists(targets, grid, deals, Math.max(1, request.classes.length), `board/${options.seed}/list`);
  const same = options.levels && hard && never === 0;
  return {
    ...base,
    deals,
    lists,
    summary: `${grid.rows} × ${grid.columns} board`,
    ...(same ? { sameLevels: "hard has words that are never called, and there is no word or no cell for them" } : {}),
  };
}

interface BoardPlan extends DealPlan {
  readonly copies: BoardDeal["copies"];
}

/** A deal for each level and version; with different boards one for each set, numbered through. */
function plansFor(options: BoardOptions, request: DealRequest, plain: Level): BoardPlan[] {
  const { classes } = request;
  const counted = { ...options, group: options.players };
  // Boards with cells to write on are used up by each class.
  const used = options.blanks > 0 && options.reuse === "once" && options.copies === undefined;
  const each = used ? Math.max(1, classes.length) : 1;
  if (options.boards === "different" && options.copies !== "by copier") {
    const plans = plansOf({ ...options, versions: 1 }, plain);
    const sets = copiesOf(counted, classes, plans);
    // A class has no use for the boards beyond its own number.
    const hours = used ? classes.map((learners) => copiesOf(counted, [learners], plans)) : [];
    const copiesAt = (plan: number, board: number): number =>
      each === 1 ? 1 : hours.filter((own) => Number(own[plan] ?? 0) > board).length;
    return plans
      .flatMap(({ level }, plan) =>
        upTo(Number(sets[plan] ?? 1)).map((board) => ({ level, copies: copiesAt(plan, board) })),
      )
      .map((board, i): BoardPlan => ({ ...board, version: i + 1 }));
  }
  const plans = plansOf(options, plain);
  const boards = classes.reduce((sum, learners) => sum + setsFor(learners, options.players), 0);
  const all = each > 1 ? { ...counted, copies: boards } : counted;
  const copies = copiesOf(all, classes, plans);
  return plans.map((plan, i): BoardPlan => ({ ...plan, copies: copies[i] ?? 1 }));
}

/** Words in cells, and which of the others are written in, by the seed; not as an earlier board has its words. */
function drawCells(
  { cells, words, blanks }: { readonly cells: number; readonly words: number; readonly blanks: number },
  stream: string,
  taken: ReadonlySet<string>,
): Pick<BoardDeal, "cells" | "writing" | "attempt"> {
  for (let attempt = 0; ; attempt++) {
    const contents = new Random(`${stream}/${attempt}`).shuffle(upTo(cells));
    const drawn = contents.map((i) => (i < words ? i : undefined));
    const writing = contents.flatMap((i, cell) => (i >= words && i < words + blanks ? [cell] : []));
    if (!taken.has(drawn.join(" ")) || attempt + 1 === attempts) return { cells: drawn, writing, attempt };
  }
}

/** Clues are called one at a time, so each must fit one word only, not just all together in one way. */
function proofOf(words: number, targets: number, doubles: readonly DoubleClue[]): BoardDeal["proof"] {
  const meant = upTo(targets);
  const lists = meant.map((clue) => [clue, ...doubles.filter((each) => each.clue === clue).map(({ other }) => other)]);
  const puzzle = { fits: lists, targets: words };
  const proof = proveAssignment(puzzle, meant);
  const [unclear] = unclearClues(puzzle);
  if (!unclear || proof.status !== "one") return proof;
  const other = unclear.targets.find((target) => target !== unclear.clue) ?? unclear.clue;
  return {
    status: "several",
    count: 2,
    capped: true,
    nodes: 0,
    by: "witness",
    second: meant.with(unclear.clue, other),
  };
}
