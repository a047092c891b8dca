import type { Fix, Report, Rule } from "../../../base/finding";
import type { Range } from "../../../base/range";
import type { Steps } from "../../../base/steps";
import type { Pair } from "../../../unit/unit";
import type { RequestChange } from "../../contract";
import { setOption } from "../../edits";
import { type Changing, saying, withOptions } from "../../foreseen";
import { looksLike } from "../../printed";
import { quotedList } from "../../report";
import { causeOf, changed, distinctFixes, dropAnswer, dropPair, laterOf, type Standing } from "../../shared-answers";
import { dealBoard } from "../deal";
import { doubledPlaces, doubledWords, placeOf } from "../doubled";
import type { BoardWord, DealtBoard, DoubleClue } from "../model";
import type { BoardOptions } from "../options";
import type { BoardContext } from "./context";
import { isCalm, outcomeWith, smallerGrid } from "./deals-with";

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
  check: (context) => {
    const { dealt } = context;
    if (dealt.deals.length === 0) return [];
    // One finding for each later item, however many clues it has to do with.
    const reports = new Map<number, Report>();
    for (const double of dealt.doubles) {
      const key = placeOf(dealt, double);
      if (!reports.has(key)) reports.set(key, report(context, double));
    }
    return [...reports.values()];
  },
};

function report(context: BoardContext, double: DoubleClue): Report {
  const { dealt } = context;
  const { said, other } = doubledWords(dealt, double);
  const { request } = dealt;
  if (!said?.pair || !said.clue || !other) return { range: request.block.fence, message: "" };
  const too = looksLike(other.shown) === looksLike(said.shown) ? "another " : "";
  const message = `“${said.clue.text}” is called for “${said.shown.text}” and fits ${too}“${other.shown.text}” on the board as well.`;
  if (!other.pair) {
    const related = [{ range: said.pair.range, message: "It is called for this" }];
    return {
      range: other.shown.source,
      message,
      related,
      fixes: () => withoutNamed(context, double, other),
    };
  }
  const { range, alternative, others } = causeBetween(dealt, said, said.pair, other.pair);
  const later = laterOf(said.pair, other.pair);
  const earlier = later === said.pair ? other.pair : said.pair;
  const inEarlier = range.start >= earlier.block.start && range.end <= earlier.block.end;
  return {
    range,
    message,
    related: [
      { range: (inEarlier ? later : earlier).range, message: "The other pair" },
      ...others.slice(0, 2).map((pair) => ({ range: pair.range, message: "This says that the two fit" })),
    ],
    fixes: function* () {
      return distinctFixes(yield* fixesFor(context, double, [later, earlier], alternative));
    },
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

/** Where a clue fits two words, and which: names for comparing before and after a change. */
function namesOf(dealt: DealtBoard): { readonly places: ReadonlySet<number>; readonly doubles: ReadonlySet<string> } {
  return {
    places: doubledPlaces(dealt),
    doubles: new Set(dealt.doubles.map((double) => nameOf(dealt, double))),
  };
}

function nameOf(dealt: DealtBoard, double: DoubleClue): string {
  const { said, other } = doubledWords(dealt, double);
  return JSON.stringify([said?.clue?.text, said?.shown.text, other?.shown.text]);
}

/** Whether after a change this clue fits one word, fewer do not, and no further item has to do with them. */
function isMended(before: DealtBoard, double: DoubleClue, after: DealtBoard): boolean {
  if (after.deals.length === 0 || after.doubles.length >= before.doubles.length) return false;
  const left = namesOf(after);
  return !left.doubles.has(nameOf(before, double)) && left.places.size <= namesOf(before).places.size;
}

/** Fixes that leave fewer clues that fit two words, each tried by dealing again; those that leave none first. */
function* fixesFor(
  { dealt, foresee }: BoardContext,
  double: DoubleClue,
  pairs: readonly Pair[],
  alternative: Standing | undefined,
): Steps<Fix[], unknown> {
  const { request, options } = dealt;
  const { block, unit } = request;
  const tried = [alternative && dropAnswer(alternative), ...pairs.map(dropPair)];
  const helping: (Changing & { readonly calm: boolean; readonly left: number })[] = [];
  for (const each of tried.flatMap((one) => one ?? [])) {
    yield "trying a fix";
    const change: RequestChange = (before) => changed(before, each.change);
    const after = dealBoard(change(request));
    if (!isMended(dealt, double, after)) continue;
    helping.push({ fix: each.fix, change, calm: isCalm(dealt, after), left: after.doubles.length });
  }
  const smaller = yield* smallerGrid(dealt);
  if (smaller) {
    const { rows, columns } = smaller.grid;
    const grid = `${rows} x ${columns}`;
    const edits = [setOption(block, unit.text, "grid", grid)];
    const fix = { title: `Make a board of ${rows} × ${columns}`, edits };
    helping.push({ fix, change: withOptions({ grid }), calm: smaller.outcome === "calm", left: 0 });
  }
  const call = (clue: BoardOptions["clue"], title: string): void => {
    const outcome = outcomeWith(dealt, { clue });
    const fix = { title, edits: [setOption(block, unit.text, "clue", clue)] };
    const change = withOptions({ clue });
    if (outcome !== "no") helping.push({ fix, change, calm: outcome === "calm", left: 0 });
  };
  yield "trying another clue";
  if (options.clue === "example") call("gloss", "Call by translation");
  // Where nothing can be spared, the board shows what is called: telling the two apart is the game then.
  if (helping.length === 0 && options.clue === "gloss" && options.show === "word")
    call("word", "Call the words themselves");
  // What brings up a warning instead is offered only where nothing else helps, and says so.
  const calm = helping.filter((each) => each.calm);
  const best = calm.some(({ left }) => left === 0) ? calm : helping;
  const told = [...best.filter(({ left }) => left === 0), ...best.filter(({ left }) => left > 0)];
  return yield* saying(told, best === calm ? undefined : foresee);
}

/**
 * The list of named distractors without one of them, else without all that fit a clue, else without any, on a board that the other
 * words fill: the smallest of these changes that leaves fewer clues that fit two words.
 */
function* withoutNamed({ dealt, foresee }: BoardContext, double: DoubleClue, word: BoardWord): Steps<Fix[], unknown> {
  const { options, request, words, doubles } = dealt;
  const { distractors } = options;
  if (typeof distractors !== "object") return [];
  const { block, unit } = request;
  const fitting = new Set(doubles.flatMap(({ other }) => (words[other]?.pair ? [] : (words[other]?.shown.text ?? []))));
  const without = (out: ReadonlySet<string>): readonly string[] => distractors.filter((text) => !out.has(text));
  const tries: { readonly title: string; readonly rest: readonly string[]; readonly grid?: "auto" }[] = [
    { title: `Leave “${word.shown.text}” out`, rest: without(new Set([word.shown.text])) },
    { title: `Leave ${quotedList([...fitting])} out`, rest: without(fitting) },
    { title: "Call all words", rest: [] },
    { title: "Call all words, on a board that they fill", rest: [], grid: "auto" },
  ];
  for (const { title, rest, grid } of tries) {
    const named = rest.length > 0 ? rest : 0;
    const change = withOptions({ distractors: named, ...(grid ? { grid } : {}) });
    yield "trying a fix";
    const after = dealBoard(change(request));
    if (!isMended(dealt, double, after)) continue;
    const edits = [setOption(block, unit.text, "distractors", named === 0 ? "0" : JSON.stringify(rest))];
    if (grid) edits.push(setOption(block, unit.text, "grid", grid));
    return yield* saying([{ fix: { title, edits }, change }], foresee);
  }
  return [];
}
