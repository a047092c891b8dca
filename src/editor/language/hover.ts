import { pairsOf } from "../../activities/supply";
import type { Range } from "../../base/range";
import { answerKey, Relation } from "../../match/relation";
import type { Answer, Pair, Unit } from "../../unit/unit";

/** What is worth knowing about an answer: what it fits, and in which other items it stands. */
export interface AnswerFacts {
  readonly range: Range;
  readonly text: string;
  /** The first of its side is printed, the others are only accepted. */
  readonly printed: boolean;
  /** Texts that fit it, each with the items that make it do so. */
  readonly fits: readonly { readonly text: string; readonly pairs: readonly Pair[] }[];
  /** Other items with the same text on one of their sides. */
  readonly elsewhere: readonly Pair[];
}

const relations = new WeakMap<Unit, Relation>();

/** All answers of a unit and which fit; worked out once a unit. */
function relationOf(unit: Unit): Relation {
  const known = relations.get(unit);
  if (known) return known;
  const relation = new Relation(unit.sections.flatMap(pairsOf));
  relations.set(unit, relation);
  return relation;
}

export function answerAt(unit: Unit, offset: number): AnswerFacts | undefined {
  const pair = unit.sections
    .flatMap(({ pairs }) => pairs)
    .find(({ range }) => range.start <= offset && offset <= range.end);
  const side = [pair?.left, pair?.right].find((each) => each && holds(each.range, offset));
  const answer = side?.answers.find(({ range }) => holds(range, offset));
  if (!pair || !side || !answer) return undefined;
  const relation = relationOf(unit);
  const key = answerKey(answer);
  const texts = new Map(relation.pairs.flatMap(answersOf).map((each) => [answerKey(each), each.text]));
  const fits = [...relation.partners(key)].map((partner) => ({
    text: texts.get(partner) ?? partner,
    pairs: relation.because(key, partner),
  }));
  const elsewhere = relation.pairs.filter(
    (other) => other !== pair && answersOf(other).some((each) => answerKey(each) === key),
  );
  return { range: answer.range, text: answer.text, printed: answer === side.answers[0], fits, elsewhere };
}

function answersOf({ left, right }: Pair): readonly Answer[] {
  return [...left.answers, ...right.answers];
}

function holds({ start, end }: Range, offset: number): boolean {
  return start <= offset && offset <= end;
}

/** In Markdown. `link` makes a link to an item, with the number of its line as text. */
export function answerMarkdown({ text, printed, fits, elsewhere }: AnswerFacts, link: (pair: Pair) => string): string {
  const head = `**${plain(text)}** ${printed ? "is printed" : "is accepted, and not printed"}. It fits ${list(
    fits.map((each) => `“${plain(each.text)}”`),
  )}.`;
  if (elsewhere.length === 0) return head;
  const shown = elsewhere.slice(0, 5).map((pair) => `- ${named(pair)} (${link(pair)})`);
  const more = elsewhere.length > shown.length ? [`- and ${elsewhere.length - shown.length} more`] : [];
  return [head, `\nThe same text stands in:\n`, ...shown, ...more].join("\n");
}

function named({ left, right }: Pair): string {
  return `${plain(left.answers[0].text)} = ${plain(right.answers[0].text)}`;
}

/** Texts as they stand in a sentence. */
export function list(texts: readonly string[]): string {
  const last = texts.at(-1) ?? "nothing";
  return texts.length < 2 ? last : `${texts.slice(0, -1).join(", ")} and ${last}`;
}

/** A text as it is, in Markdown. */
export function plain(text: string): string {
  return text.replace(/[\\`*_{}[\]()#+\-.!|<>&~]/g, "\\$&");
}
