import type { Range } from "../base/range";
import { type Env, opaque, parseRuns, readAnswer, spacedSeparators } from "./inline";
import type { SourceText } from "./source-text";
import type { Answer, Pair, Problem, Side, Statement } from "./unit";

/** One list item as found in the file, with the first paragraphs of the bullets nested in it. */
export interface RawItem {
  readonly text: SourceText;
  /** Whole lines with everything nested and the final line ending. */
  readonly block: Range;
  readonly nested: readonly SourceText[];
}

/** A statement or a pair by the item's shape; undefined where it has neither (the teacher's own note). */
export function readItem(
  item: RawItem,
  env: Env,
  problems: Problem[],
): { pair: Pair } | { statement: Statement } | undefined {
  const task = /^\[([ xX])\](?=\s)\s*/.exec(item.text.text);
  if (task) return { statement: readStatement(item, task, env) };
  const pair = readPair(item, env, problems);
  return pair && { pair };
}

function readStatement(item: RawItem, task: RegExpExecArray, env: Env): Statement {
  const start = task[0].length;
  const [runs, text] = printed(item.text.text.slice(start), env);
  const [below] = item.nested;
  return {
    range: item.text.range(start, item.text.text.trimEnd().length),
    block: item.block,
    mark: item.text.range(0, 3),
    truth: task[1] !== " ",
    runs,
    text,
    ...(below ? { correction: { range: whole(below), text: printed(below.text, env)[1] } } : {}),
  };
}

function readPair(item: RawItem, env: Env, problems: Problem[]): Pair | undefined {
  const { text } = item;
  const mask = opaque(text.text, env);
  const equals = spacedSeparators(text.text, mask, "=");
  const [first, second] = equals;
  if (!first) return undefined;
  if (second) {
    const sign = second.start + text.text.slice(second.start, second.end).search(/[=＝]/u);
    problems.push({
      code: "second-equals",
      range: text.range(sign, sign + 1),
      message: "Only the first “ = ” parts the two sides; this one is read as text.",
      replacement: { title: "Mark it as text", range: text.range(sign, sign), text: "\\" },
    });
  }
  const end = withoutComment(text.text, mask);
  const left = readSide(text, 0, first.start, mask, env, true);
  const right = readSide(text, first.end, Math.max(first.end, end), mask, env, false);
  for (const side of [left, right]) {
    for (const answer of side.answers) {
      if (answer.text === "" && !answer.picture) {
        problems.push({
          code: "empty-answer",
          range: answer.range.end > answer.range.start ? answer.range : text.range(first.start, first.end),
          message: "Nothing is written here. Each side of a pair needs a word or a picture.",
        });
        return undefined;
      }
    }
  }
  return {
    range: text.range(0, text.text.trimEnd().length),
    block: item.block,
    left,
    right,
    examples: item.nested.map((below) => {
      const [runs, plain] = printed(below.text, env);
      return { range: whole(below), runs, text: plain };
    }),
  };
}

/** Where the item's own text ends before a comment at the end of its line. */
function withoutComment(text: string, mask: readonly boolean[]): number {
  const comment = /\s*<!--(?:(?!-->)[\s\S])*-->\s*$/.exec(text);
  return comment && mask[text.indexOf("<!--", comment.index)] ? comment.index : text.trimEnd().length;
}

function readSide(
  text: SourceText,
  start: number,
  end: number,
  mask: readonly boolean[],
  env: Env,
  cutAtBars: boolean,
): Side {
  const answers: Answer[] = [];
  let from = start;
  for (const slash of spacedSeparators(text.text, mask, "/", start, end)) {
    answers.push(readAnswer(text, from, Math.max(from, slash.start), { mask, env, cutAtBars }));
    from = slash.end;
  }
  const last = readAnswer(text, from, end, { mask, env, cutAtBars });
  const [head, ...rest] = [...answers, last];
  return { range: text.range(start, end), answers: [head ?? last, ...rest] };
}

function printed(source: string, env: Env): [Statement["runs"], string] {
  const { runs } = parseRuns(source, env);
  return [runs, runs.map((run) => run.text).join("")];
}

function whole(text: SourceText): Range {
  return text.range(0, text.text.trimEnd().length);
}
