import type Token from "markdown-it/lib/token.mjs";
import { LineIndex } from "../base/range";
import { finished, type Steps } from "../base/steps";
import { readingFront } from "./front";
import { type Env, parsingBlocks } from "./inline";
import { Problems } from "./problems";
import { Reader } from "./reader";
import { Journal, type Start } from "./resume";
import type { Unit } from "./unit";

/** Reads a unit. Never throws: what cannot be read is in `problems`. */
export function readUnit(text: string): Unit {
  return finished(readingUnit(text));
}

/**
 * The same with a pause after each heading, item or other block. Sections that stand above or below all that differs from a text
 * that was read `before` are taken from there.
 */
export function* readingUnit(text: string, before: readonly Unit[] = []): Steps<Unit, undefined> {
  yield;
  const lines = new LineIndex(text);
  const problems = new Problems();
  const front = yield* readingFront(lines, problems);
  yield;
  const start = Journal.resume(lines, front.body, problems.list, before);
  if (start) {
    const env: Env = {};
    const tokens = yield* blocksFrom(lines, start, env);
    // A definition of links concerns what stands elsewhere too.
    if (env["references"] === undefined) return yield* new Reader(lines, front, env, start).read(tokens);
  }
  const env: Env = {};
  const begin = Journal.begin(front.body, problems.list);
  const tokens = yield* blocksFrom(lines, begin, env);
  return yield* new Reader(lines, front, env, begin).read(tokens);
}

/** The blocks from where a reading starts, to the heading with which a rest begins that need not be read. */
function* blocksFrom(lines: LineIndex, { line, rests }: Start, env: Env): Steps<Token[], undefined> {
  // Lines above stay, empty, so that markdown-it's line numbers are the file's.
  const text = "\n".repeat(line) + lines.text.slice(lines.start(line)).replace(/^\uFEFF/, " ");
  return yield* parsingBlocks(text, env, (each) => rests.has(each));
}
