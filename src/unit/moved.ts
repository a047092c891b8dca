import type { Range } from "../base/range";
import type { Answer, Item, Pair, Phrase, Side, Statement, StoryEvent } from "./unit";

/*
 * The same item at another place: what it says is taken over as it is, only its ranges move.
 */

export function movedRange({ start, end }: Range, by: number): Range {
  return { start: start + by, end: end + by };
}

export function movedPhrase({ range, runs, text, picture }: Phrase, by: number): Phrase {
  const at = movedRange(range, by);
  return picture
    ? { range: at, runs, text, picture: { ...picture, range: movedRange(picture.range, by) } }
    : { range: at, runs, text };
}

export function movedAnswer({ range, runs, text, picture, parts }: Answer, by: number): Answer {
  const at = movedRange(range, by);
  const own = parts.map((part) => movedPhrase(part, by));
  return picture
    ? { range: at, runs, text, picture: { ...picture, range: movedRange(picture.range, by) }, parts: own }
    : { range: at, runs, text, parts: own };
}

function movedSide({ range, answers: [first, ...rest] }: Side, by: number): Side {
  return {
    range: movedRange(range, by),
    answers: [movedAnswer(first, by), ...rest.map((answer) => movedAnswer(answer, by))],
  };
}

/** Items of one line without anything nested, ties or remarks: all that most items are. */
export function movedPair({ range, left, right }: Pair, by: number, block: Range): Pair {
  return {
    range: movedRange(range, by),
    block,
    ties: [],
    left: movedSide(left, by),
    right: movedSide(right, by),
    examples: [],
    orders: [],
  };
}

export function movedStatement(statement: Statement, by: number, block: Range): Statement {
  const { mark, truth } = statement;
  return { ...movedPhrase(statement, by), block, ties: [], mark: movedRange(mark, by), truth };
}

export function movedText(item: Item & Answer, by: number, block: Range): Item & Answer {
  return { ...movedAnswer(item, by), block, ties: [] };
}

/** What items have besides their words, whatever they are. */
function movedCommon(item: Item, by: number): Omit<Item, "range"> {
  return {
    block: movedRange(item.block, by),
    ties: item.ties.map((tie) => ({ ...tie, range: movedRange(tie.range, by), target: movedRange(tie.target, by) })),
    ...(item.by ? { by: { ...item.by, range: movedRange(item.by.range, by) } } : {}),
  };
}

/** Any pair, with all that belongs to it. */
export function movedWhole(pair: Pair, by: number): Pair {
  const { ties, examples, orders } = pair;
  const plain = movedPair(pair, by, movedRange(pair.block, by));
  if (ties.length + examples.length + orders.length === 0 && !pair.by) return plain;
  return {
    ...plain,
    ...movedCommon(pair, by),
    examples: examples.map((example) => movedPhrase(example, by)),
    orders: orders.map(({ range, parts }) => ({ range: movedRange(range, by), parts })),
  };
}

/** Any statement, with all that belongs to it. */
export function movedClaim(statement: Statement, by: number): Statement {
  const { ties, correction } = statement;
  const plain = movedStatement(statement, by, movedRange(statement.block, by));
  if (ties.length === 0 && !statement.by && !correction) return plain;
  return {
    ...plain,
    ...movedCommon(statement, by),
    ...(correction ? { correction: movedPhrase(correction, by) } : {}),
  };
}

export function movedEvent(event: StoryEvent, by: number): StoryEvent {
  const moved = (each: Item & Phrase): Item & Phrase => ({ ...movedPhrase(each, by), ...movedCommon(each, by) });
  return { ...moved(event), free: event.free.map(moved) };
}

/** Any plain item. */
export function movedPlain(item: Item & Answer, by: number): Item & Answer {
  return { ...movedAnswer(item, by), ...movedCommon(item, by) };
}
