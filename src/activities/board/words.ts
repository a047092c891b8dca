import { Random } from "../../base/seed";
import { fold } from "../../match/fold";
import type { Matching } from "../../match/look-alikes";
import { answerKey } from "../../match/relation";
import type { Pair } from "../../unit/unit";
import { type Choice, choosePairs } from "../choice";
import type { DealRequest } from "../contract";
import { looksLike, type Printed, standsOut, toPrinted } from "../printed";
import { pairsOf } from "../supply";
import { exampleFits } from "./examples";
import { callsToo, likeSounds, soundsLike } from "./hearing";
import type { BoardWord, Clue, DoubleClue, Shortage } from "./model";
import { type BoardOptions, cellsIn, type Grid, largestGrid, writtenGrid } from "./options";

/** Fewer words to call than these make no game; a board that nothing says otherwise of has at most so many cells. Ours. */
export const fewestTargets = 4;
const autoCells = 20;

export interface BoardSupply {
  readonly grid: Grid | undefined;
  readonly words: readonly BoardWord[];
  readonly targets: number;
  readonly short: Shortage;
}

/** Of the cells of a board without a number of its own, what a hard level has for words that are never called. Ours. */
const hardShare = 1 / 4;

/**
 * Chooses what stands on the board: targets whose clues fit nothing else there as far as the words allow, and distractors. A hard
 * level has a quarter of these where nothing says how many, or as many as there are.
 */
export function supplyWords(request: DealRequest, options: BoardOptions): BoardSupply {
  const { take, distractors, levels } = options;
  const plain = chooseWords(request, options);
  const { grid } = plain;
  const asked = distractors !== undefined || plain.short.distractors > 0;
  if (asked || !grid || !levels?.includes("hard")) return plain;
  const written = writtenGrid(options.grid);
  // A board that `take` fills has no cells for others.
  if (take !== undefined && written) return plain;
  const most = take === undefined ? cellsIn(grid) * hardShare : (take * hardShare) / (1 - hardShare);
  const size = take === undefined ? `${grid.rows} x ${grid.columns}` : options.grid;
  for (let count = Math.floor(most); count > 0; count--) {
    const { short, ...supply } = chooseWords(request, { ...options, grid: size, distractors: count });
    const enough = supply.targets >= Math.max(fewestTargets, take ?? 0) && short.spare >= count;
    if (enough) return { ...supply, short };
  }
  return plain;
}

function chooseWords(request: DealRequest, options: BoardOptions): BoardSupply {
  const all = request.sections.map((section) => pairsOf(section).filter((pair) => clueOf(pair, request, options)));
  const named = typeof options.distractors === "object" ? namedWords(options.distractors, request, options) : undefined;
  const asked = named?.length ?? (typeof options.distractors === "number" ? options.distractors : undefined);
  const groups = named ? withoutNamed(all, named, request, options) : all;
  const callable = all.flat();
  const most = Math.min(options.take ?? groups.flat().length, groups.flat().length);
  const grid = writtenGrid(options.grid) ?? largestGrid(autoRoom(most + (asked ?? 0) + options.blanks, options));
  const cells = grid ? cellsIn(grid) : 0;
  const room = Math.max(0, cells - options.blanks - (asked ?? 0));
  const wanted = Math.min(options.take ?? room, room);
  const distractors = asked ?? room - wanted;
  const stream = `board/${options.seed}`;
  const words = new Map(callable.map((pair) => [pair, wordOf(pair, request, options)]));
  const toWord = (pair: Pair): BoardWord => words.get(pair) ?? wordOf(pair, request, options);
  const clash = (p: Pair, q: Pair): boolean => {
    const [a, b] = [toWord(p), toWord(q)];
    return fits(a, b, request.relation, options) || fits(b, a, request.relation, options);
  };
  const chosen = chooseHeard(groups, wanted, { clash, stream: `${stream}/choice` }, toWord);
  const called = chosen.map(toWord);
  const spare = named ?? spareWords(called, distractors, request, options);
  const pairs = request.sections.flatMap(pairsOf).length;
  return {
    grid,
    words: [...called, ...spare],
    targets: called.length,
    short: { targets: wanted, distractors, callable: callable.length, pairs, spare: spare.length },
  };
}

/** Chooses pairs, of which none sound alike when they are called as far as that leaves none that clash otherwise. */
function chooseHeard(
  groups: readonly (readonly Pair[])[],
  wanted: number,
  choice: Choice,
  toWord: (pair: Pair) => BoardWord,
): readonly Pair[] {
  const words = new Map(groups.flat().map((pair) => [pair, toWord(pair)]));
  const soundAs = likeSounds([...words.values()]);
  const plain = (): readonly Pair[] => choosePairs(groups, wanted, choice);
  if (soundAs.size === 0 || wanted >= words.size) return plain();
  const clash = (p: Pair, q: Pair): boolean => {
    const [a, b] = [soundAs.get(words.get(p)), soundAs.get(words.get(q))];
    return (a !== undefined && a === b) || choice.clash(p, q);
  };
  const chosen = choosePairs(groups, wanted, { ...choice, clash });
  const isClear = chosen.every((p, i) => chosen.slice(i + 1).every((q) => !clash(p, q)));
  return isClear ? chosen : plain();
}

/**
 * Without the pairs whose words are named as never called, and where still enough are left, without those whose clue fits such a
 * word; all of them where too few would be left to call.
 */
function withoutNamed(
  groups: readonly (readonly Pair[])[],
  named: readonly BoardWord[],
  request: DealRequest,
  options: BoardOptions,
): readonly (readonly Pair[])[] {
  const written = writtenGrid(options.grid);
  const room = written ? Math.max(0, cellsIn(written) - options.blanks - named.length) : Number.POSITIVE_INFINITY;
  const others = groups.map((group) =>
    group.filter((pair) => named.every(({ shown }) => shown.key !== wordOf(pair, request, options).shown.key)),
  );
  const clear = others.map((group) =>
    group.filter(
      (pair) => !named.some((word) => fits(wordOf(pair, request, options), word, request.relation, options)),
    ),
  );
  const enough = (left: readonly (readonly Pair[])[], wanted: number): boolean =>
    left.flat().length >= Math.max(fewestTargets, Math.min(wanted, room));
  if (enough(clear, options.take ?? others.flat().length)) return clear;
  return enough(others, options.take ?? (written ? room : 0)) ? others : groups;
}

/** Cells of a board that nothing says otherwise of. */
function autoRoom(words: number, { take }: BoardOptions): number {
  return take === undefined ? Math.min(words, autoCells) : words;
}

function wordOf(pair: Pair, request: DealRequest, options: BoardOptions): BoardWord {
  const side = options.show === "word" ? pair.left : pair.right;
  const shown = toPrinted(side.answers[0], options.show === "word" ? request.teaches : request.explains);
  const clue = clueOf(pair, request, options);
  return { shown, pair, ...(clue ? { clue } : {}) };
}

/** What is said for a pair; undefined where it has no words for it. */
function clueOf(pair: Pair, { teaches, explains }: DealRequest, { clue }: BoardOptions): Clue | undefined {
  if (clue === "example") {
    const [example] = pair.examples;
    if (!example) return undefined;
    const { runs, text, range } = example;
    return { runs, text, key: fold(text), source: range, lang: teaches };
  }
  const [answer] = (clue === "word" ? pair.left : pair.right).answers;
  if (answer.text.trim() === "") return undefined;
  const { runs, text, range } = answer;
  const said = runs.length > 0 ? runs : [{ text }];
  return { runs: said, text, key: answerKey(answer), source: range, lang: clue === "word" ? teaches : explains };
}

/**
 * Words of pairs that are not called: first such as have as many words as some that are, and of those first the ones of the
 * activity's own sections, then of the rest of the unit. A sentence among words is touched by nobody.
 */
function spareWords(
  called: readonly BoardWord[],
  count: number,
  request: DealRequest,
  options: BoardOptions,
): BoardWord[] {
  if (count === 0) return [];
  const taken = new Set(called.map(({ pair }) => pair));
  const looks = new Set(called.map(({ shown }) => looksLike(shown)));
  const own = new Set(request.sections.flatMap(pairsOf).filter((pair) => !taken.has(pair)));
  const others = request.relation.pairs.filter((pair) => !taken.has(pair) && !own.has(pair));
  const random = new Random(`board/${options.seed}/distractors`);
  const words: BoardWord[] = [];
  const callable = called.map(({ shown }) => shown);
  const drawn = [...random.shuffle([...own]), ...random.shuffle(others)]
    .map((pair) => ({ shown: wordOf(pair, request, options).shown, pair }))
    .map((word) => ({ word, off: standsOut(word.shown, callable), like: soundsLike(word, called, options) }))
    .sort((a, b) => Number(a.like) - Number(b.like) || a.off - b.off);
  for (const { word } of drawn) {
    if (words.length === count) break;
    const { shown } = word;
    if (looks.has(looksLike(shown)) || called.some((each) => fits(each, word, request.relation, options))) continue;
    looks.add(looksLike(shown));
    words.push(word);
  }
  return words;
}

function namedWords(texts: readonly string[], request: DealRequest, options: BoardOptions): BoardWord[] {
  const entry = request.block.options.entries.find(({ key }) => key === "distractors");
  const place = request.options.place("distractors") ?? request.block.fence;
  const lang = options.show === "word" ? request.teaches : request.explains;
  return texts.map((text, i) => {
    const shown: Printed = { runs: [{ text }], text, key: fold(text), source: entry?.items[i] ?? place, lang };
    return { shown };
  });
}

/** Whether what is said for one word fits another on the board. */
export function fits({ clue, pair }: BoardWord, other: BoardWord, relation: Matching, options: BoardOptions): boolean {
  if (!clue) return false;
  if (options.clue === "example") return exampleFits(clue, other, relation, options.show);
  if (options.clue === options.show) return pair !== other.pair && callsToo(clue, other, relation, options);
  return relation.fits(clue.key, other.shown.key) || (pair !== other.pair && callsToo(clue, other, relation, options));
}

/** Clues that fit a word besides their own. */
export function doublesIn(
  words: readonly BoardWord[],
  targets: number,
  relation: Matching,
  options: BoardOptions,
): DoubleClue[] {
  const doubles: DoubleClue[] = [];
  for (const [clue, word] of words.slice(0, targets).entries())
    for (const [other, each] of words.entries())
      if (other !== clue && fits(word, each, relation, options)) doubles.push({ clue, other });
  return doubles;
}
