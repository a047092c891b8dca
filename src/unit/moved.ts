import type { Range } from "../base/range";
import type { Answer, Item, Pair, Phrase, Side, Statement } from "./unit";

/*
 * The same item at another place: what it says is taken over as it is, only its ranges move.
 */

export function movedRange({ start, end }: Range, by: number): Range {
  return { start: start + by, end: end + by };
}

function movedPhrase({ range, runs, text, picture }: Phrase, by: number): Phrase {
  const at = movedRange(range, by);
  return picture
    ? { range: at, runs, text, picture: { ...picture, range: movedRange(picture.range, by) } }
    : { range: at, runs, text };
}

function movedAnswer({ range, runs, text, picture, parts }: Answer, by: number): Answer {
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
