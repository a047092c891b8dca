import { dealCode } from "../../base/mark";
import { Random, upTo } from "../../base/seed";
import { proveAssignment, unclearClues } from "../../prove/items/items";
import type { DealRequest } from "../contract";
import { copiesOf } from "../copies";
import { printOf } from "../printed";
import { callLists } from "./lists";
import type { BoardDeal, DealtBoard, DoubleClue } from "./model";
import { type BoardOptions, boardOptions, cellsIn } from "./options";
import { doublesIn, fewestTargets, supplyWords } from "./words";

/** Arrangements drawn before one that another board has is taken. */
const attempts = 20;

export function dealBoard(request: DealRequest): DealtBoard {
  const options = boardOptions(request.options);
  const { grid, words, targets, short } = supplyWords(request, options);
  const used = words.flatMap(({ pair }) => pair ?? []);
  const doubles = doublesIn(words, targets, request.relation, options);
  const base = { request, options, grid, words, targets, short, doubles, used };
  const enough = targets >= Math.max(fewestTargets, short.targets) && short.spare >= short.distractors;
  if (!grid || !enough || words.length > cellsIn(grid)) {
    return { ...base, summary: "board", lists: [], deals: [] };
  }
  const proof = proofOf(words.length, targets, doubles);
  const plans = plansFor(options, request);
  const taken = new Set<string>();
  const deals = plans.map(({ version, copies }): BoardDeal => {
    const { cells, attempt } = drawCells(cellsIn(grid), words.length, `board/${options.seed}/${version}`, taken);
    taken.add(cells.join(" "));
    const texts = words.map(({ shown, clue }) => [printOf(shown), clue?.runs ?? 0]);
    const code = dealCode(JSON.stringify(["board", version, grid, options.facing, cells, texts]));
    return { code, level: "gentle", version, attempt, copies, cells, proof };
  });
  const lists = callLists(targets, grid, deals, Math.max(1, request.classes.length), `board/${options.seed}/list`);
  return { ...base, deals, lists, summary: `${grid.rows} × ${grid.columns} board` };
}

/** A deal for each version; with different boards one for each set. */
function plansFor(
  options: BoardOptions,
  { classes }: DealRequest,
): { readonly version: number; readonly copies: BoardDeal["copies"] }[] {
  const counted = { ...options, group: options.players };
  if (options.boards === "different") {
    const [sets = 1] = copiesOf(counted, classes, [{ level: "gentle" }]);
    if (sets !== "by copier") return upTo(sets).map((i) => ({ version: i + 1, copies: 1 }));
  }
  const plans = upTo(options.versions).map((i) => ({ level: "gentle", version: i + 1 }));
  const copies = copiesOf(counted, classes, plans);
  return plans.map(({ version }, i) => ({ version, copies: copies[i] ?? 1 }));
}

/** Words in cells, by the seed; not as an earlier board has them. */
function drawCells(
  cells: number,
  words: number,
  stream: string,
  taken: ReadonlySet<string>,
): { readonly cells: readonly (number | undefined)[]; readonly attempt: number } {
  const contents = upTo(cells).map((i) => (i < words ? i : undefined));
  for (let attempt = 0; ; attempt++) {
    const drawn = new Random(`${stream}/${attempt}`).shuffle(contents);
    if (!taken.has(drawn.join(" ")) || attempt + 1 === attempts) return { cells: drawn, attempt };
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
