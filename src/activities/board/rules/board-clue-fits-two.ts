import type { Fix, Report, Rule } from "../../../base/finding";
import type { Range } from "../../../base/range";
import type { Pair } from "../../../unit/unit";
import { setOption } from "../../edits";
import {
  causeOf,
  changed,
  distinctFixes,
  dropAnswer,
  dropPair,
  laterOf,
  type PairChange,
  type Standing,
} from "../../shared-answers";
import { dealBoard } from "../deal";
import type { BoardWord, DealtBoard, DoubleClue } from "../model";
import { type BoardOptions, cellsIn, largestGrid } from "../options";
import { fewestTargets } from "../words";
import type { BoardContext } from "./context";
import { dealsWith } from "./deals-with";

export const boardClueFitsTwo: Rule<BoardContext> = {
  code: "board-clue-fits-two",
  severity: "error",
  title: "A clue that fits two words on the board",
  why: "The caller says it, two players touch two cells, and both are right. Such words are left out as long as there are others; here there are too few. Give one of them a clue of its own, take one out, or take a smaller board.",
  example: {
    wrong:
      "## People\n\n- o patrão = the boss\n- o chefe = the boss\n- a amiga = the friend\n- o vizinho = the neighbour\n\n```activity\nmake: board\n```",
    right:
      "## People\n\n- o patrão = the boss\n- o chefe = the leader\n- a amiga = the friend\n- o vizinho = the neighbour\n\n```activity\nmake: board\n```",
  },
  check: ({ dealt }) => {
    if (dealt.deals.length === 0) return [];
    // One finding for each later item, however many clues it has to do with.
    const reports = new Map<number, Report>();
    for (const double of dealt.doubles) {
      const key = placeOf(dealt, double);
      if (!reports.has(key)) reports.set(key, report(dealt, double));
    }
    return [...reports.values()];
  },
};

function wordsOf({ words }: DealtBoard, { clue, other }: DoubleClue): { said?: BoardWord; other?: BoardWord } {
  const [a, b] = [words[clue], words[other]];
  return { ...(a ? { said: a } : {}), ...(b ? { other: b } : {}) };
}

/** Where the later of the two items stands: a named word, else a pair. */
function placeOf(dealt: DealtBoard, double: DoubleClue): number {
  const { said, other } = wordsOf(dealt, double);
  if (!said?.pair || !other) return -1;
  return other.pair ? laterOf(said.pair, other.pair).range.start : other.shown.source.start;
}

function report(dealt: DealtBoard, double: DoubleClue): Report {
  const { said, other } = wordsOf(dealt, double);
  const { request } = dealt;
  if (!said?.pair || !said.clue || !other) return { range: request.block.fence, message: "" };
  const message = `“${said.clue.text}” is called for “${said.shown.text}” and fits “${other.shown.text}” on the board as well.`;
  if (!other.pair) {
    const related = [{ range: said.pair.range, message: "It is called for this" }];
    return { range: other.shown.source, message, related, fixes: [withoutNamed(dealt, other)].flat() };
  }
  const { range, alternative, others } = causeBetween(dealt, said, said.pair, other.pair);
  const later = laterOf(said.pair, other.pair);
  const earlier = later === said.pair ? other.pair : said.pair;
  const inEarlier = range.start >= earlier.range.start && range.end <= earlier.range.end;
  return {
    range,
    message,
    related: [
      { range: (inEarlier ? later : earlier).range, message: "The other pair" },
      ...others.slice(0, 2).map((pair) => ({ range: pair.range, message: "This says that the two fit" })),
    ],
    fixes: distinctFixes(fixesFor(dealt, [later, earlier], alternative)),
  };
}

/** What makes a clue fit another word: a sentence with both words in it, the same text, or an answer that they share. */
function causeBetween(
  { options, request }: DealtBoard,
  said: BoardWord,
  own: Pair,
  other: Pair,
): { readonly range: Range; readonly alternative?: Standing; readonly others: readonly Pair[] } {
  const side = (name: "word" | "gloss") => (name === "word" ? "left" : "right");
  if (options.clue === "example") return { range: said.clue?.source ?? own.range, others: [] };
  const [clueSide, showSide] = [side(options.clue), side(options.show)] as const;
  if (clueSide === showSide) return { range: laterOf(own, other)[showSide].answers[0].range, others: [] };
  return causeOf({ pair: own, side: clueSide }, { pair: other, side: showSide }, request.relation);
}

/** Fixes that leave fewer clues that fit two words, each tried by dealing again. */
function fixesFor(dealt: DealtBoard, pairs: readonly Pair[], alternative: Standing | undefined): Fix[] {
  const { request, grid, options } = dealt;
  const { block, unit } = request;
  const helps = (change: PairChange): boolean => {
    const after = dealBoard(changed(request, change));
    return after.deals.length > 0 && after.doubles.length < dealt.doubles.length;
  };
  const tried = [alternative && dropAnswer(alternative), ...pairs.map(dropPair)];
  const fixes = tried.flatMap((each) => (each && helps(each.change) ? [each.fix] : []));
  for (let cells = grid ? cellsIn(grid) - 1 : 0; cells >= fewestTargets; cells--) {
    const smaller = largestGrid(cells);
    const value = smaller ? `${smaller.rows} x ${smaller.columns}` : "auto";
    if (!smaller || cellsIn(smaller) < cells || !dealsWith(dealt, { grid: value })) continue;
    const title = `Make a board of ${smaller.rows} × ${smaller.columns}`;
    fixes.push({ title, edits: [setOption(block, unit.text, "grid", value)] });
    break;
  }
  if (options.clue === "example" && dealsWith(dealt, { clue: "gloss" }))
    fixes.push({ title: "Call by translation", edits: [setOption(block, unit.text, "clue", "gloss")] });
  // Where nothing can be spared, the board shows what is called: telling the two apart is the game then.
  if (fixes.length === 0 && options.clue === "gloss" && options.show === "word" && dealsWith(dealt, { clue: "word" }))
    fixes.push({ title: "Call the words themselves", edits: [setOption(block, unit.text, "clue", "word")] });
  return fixes;
}

/** The list of named distractors without one of them. */
function withoutNamed(dealt: DealtBoard, word: BoardWord): Fix[] {
  const { options, request } = dealt;
  const { distractors } = options;
  if (typeof distractors !== "object") return [];
  const rest = distractors.filter((text) => text !== word.shown.text);
  const value = rest.length > 0 ? JSON.stringify(rest) : "0";
  const without: BoardOptions = { ...options, distractors: rest.length > 0 ? rest : 0 };
  const after = dealBoard({ ...request, options: { ...request.options, value: without } });
  if (after.deals.length === 0 || after.doubles.length >= dealt.doubles.length) return [];
  const edits = [setOption(request.block, request.unit.text, "distractors", value)];
  return [{ title: `Leave “${word.shown.text}” out`, edits }];
}
