import type { Steps } from "../../base/steps";
import { stops } from "../../base/stops";
import type { Span } from "../inline";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

/*
 * Signs that stand in many notes, and between the sides of a pair only where the items around say so: where most are pairs, or all
 * have this sign.
 */

interface Sign extends Span {
  /** Which of the ways it is. */
  readonly way: number;
  /** The bracket that closes it. */
  readonly close?: Span | undefined;
}

interface Way {
  readonly sign: RegExp;
  /** How often it may stand in an item, of which the first counts. */
  readonly times: number;
  /** How many words may stand on a side. */
  readonly words: number;
  /** It stands in so many notes that it says something only where nothing else is written than such items. */
  readonly all?: true;
  /** Words that go together have it too: `bonito/a`, `lindo, linda`. */
  readonly forms?: true;
  /** Whether it is a word of its own between these sides. */
  readonly word?: (left: string, right: string) => boolean;
}

const joining =
  "(?:und|oder|bzw\\.?|and|or|with|for|mit|für|e|ou|com|para|y|o|con|et|avec|pour|и|или|с|і|й|та|або|з)\\s";

/** Looks for each sign once. */
export function* practisingSigns(): Steps<void, undefined> {
  for (const [i, way] of ways.entries()) {
    signOf("the wheel: the brass bell – so", way, i);
    yield;
  }
}

/** What stands before the English “I”, or behind it. */
const beforeI =
  /(?:^|\s)(?:[ai]|am|and|are|because|but|can|could|did|do|does|had|have|here|how|if|may|might|must|not|now|or|shall|should|so|than|that|then|there|today|was|were|what|when|where|which|while|who|why|will|would|yes|no|as|before|after|until)$/iu;
const behindI =
  /^(?:am|can|could|did|do|don|feel|go|had|have|hear|hope|know|like|live|love|may|might|must|need|see|shall|should|think|too|used|want|was|will|wish|would)(?![\p{L}\p{M}])/iu;

/** What has a Roman number behind it. */
const counted =
  /(?:^|\s)(?:kapitel|teil|band|lektion|akt|klasse|niveau|stufe|einheit|chapter|part|volume|unit|lesson|book|act|level|type|form|grade|parte|capítulo|livro|unidade|lição|ato|nível|tomo|tipo|chapitre|partie|tome|leçon|acte|розділ|частина|том|клас|рівень|урок)$/iu;

/** In many typefaces these look like a bar. A single l is no word, but of litres. */
const letters: Way = {
  sign: /\s+[Il]\s+/gu,
  times: 1,
  words: 3,
  word: (left, right) => beforeI.test(left) || behindI.test(right) || counted.test(left) || /\d$/.test(left),
};

const ways: readonly Way[] = [
  letters,
  { sign: /\s+(?:[/／⁄∕⧸\\]|>{1,2}|[»›•●…*≠]|\.{2,3})\s+/gu, times: 3, words: 3 },
  { sign: /\s*\|\|\s*/gu, times: 1, words: 3 },
  // As programs write the sign that are afraid of Markdown, and others that stand for it.
  {
    sign: /\s+(?:\\[=＝]|&(?:#61|#x3d|equals|[nm]dash|#821[12]|#x201[34]|[rlh]arr|#859[246]|#x219[024]);)\s+/giu,
    times: 1,
    words: 3,
  },
  { sign: /\s*(?<!&#?\w{1,9})[;；؛](?:\s+|(?<=；))/gu, times: 3, words: 3 },
  // Not as in “Vor- und Nachteile”.
  {
    sign: new RegExp(
      `[^\\S\\n]+[\\p{Pd}−](?=[^\\s\\p{Pd}>])|(?<=[^\\s\\p{Pd}<])[\\p{Pd}−][^\\S\\n]+(?!${joining})`,
      "gu",
    ),
    times: 1,
    words: 3,
  },
  // Without white space, as some typographers set them, and as Chinese does.
  { sign: /(?<=[\p{L}\p{M})])(?:[—―]{1,3}|–{2,3})(?=[\p{L}(])/gu, times: 1, words: 3 },
  // Signs of chats.
  { sign: /\s+(?:[👉👈⏩]|[←-⇿➔-➾▶⬅](?=\uFE0F))\uFE0F?\s+/gu, times: 1, words: 3 },
  { sign: /(?<=[\p{L}\p{M})])[/／∕](?=[\p{L}(])/gu, times: 1, words: 3, forms: true },
  { sign: /(?<=\S)(?:\s*[,،]\s+|\s*[，、]\s*)/gu, times: 1, words: 2, all: true, forms: true },
  { sign: new RegExp(`[^\\S\\n]{2,}(?!${joining})|[^\\S\\n]*\\u3000[^\\S\\n]*`, "gu"), times: 1, words: 3 },
];

/** `roda (wheel)`, at the end. */
const bracketed = /^[^()（）[\]]*[^()（）[\]\s](\s*[(（[]\s*)[^()（）[\]]+?(\s*[)）\]])$/u;

/** The sign of one way in a text, where the sides around it may be those of a pair; `index` is the way's own. */
function signOf(whole: string, way: Way, index: number): Sign | undefined {
  const found = [...whole.matchAll(way.sign)];
  const [first] = found;
  if (!first || found.length > way.times) return undefined;
  const sign = { way: index, start: first.index, end: first.index + first[0].length };
  const [left, right] = [whole.slice(0, sign.start), whole.slice(sign.end)];
  if (way.word?.(left, right) || (way.forms && areForms(left, right))) return undefined;
  return isPair(left, right, way.words) ? sign : undefined;
}

/** A letter that looks like a bar: among items with a sign of another kind it says as much as among pairs. */
export const letterSign = (text: string): Sign | undefined => signOf(text.trimEnd(), letters, 0);

/**
 * The sign that may be meant to part the sides of a pair in a text; undefined where there is none, or a side is no few words. `all`
 * says that the section has nothing but such items.
 */
export function doubtfulSign(text: string, all: boolean): Sign | undefined {
  const whole = text.trimEnd();
  for (const [i, way] of ways.entries()) {
    const sign = way.all && !all ? undefined : signOf(whole, way, i);
    if (sign) return sign;
  }
  const match = all ? bracketed.exec(whole) : null;
  if (!match?.[1] || !match[2]) return undefined;
  const start = whole.search(/\s*[(（[]/u);
  const close = { start: whole.length - match[2].length, end: whole.length };
  const sign = { way: ways.length, start, end: start + match[1].length, close };
  const [left, right] = [whole.slice(0, start), whole.slice(sign.end, close.start)];
  return isPair(left, right) && !areForms(left, right) ? sign : undefined;
}

/** `bonito` and `a`, `um` and `uma`, `lindo` and `linda`, `aluno` and `-a`: an ending, or a form of the same word. */
function areForms(left: string, right: string): boolean {
  const [a, b] = [left, right].map((side) => side.trim().toLowerCase());
  if (!a || !b) return false;
  const short = /^[-~]?\p{L}{1,2}$/u;
  return short.test(b) || a.startsWith(b) || b.startsWith(a) || (a.length > 3 && a.slice(0, 3) === b.slice(0, 3));
}

const stopped = new RegExp(`[${stops}:]$`, "u");

const stop = (side: string): boolean => stopped.test(side);

/** The numbers in a text. */
export const numerals = (side: string): string => (side.match(/\p{N}+/gu) ?? []).join(" ");

/** Few words on each side, both with the same numbers, and no beginning of a sentence that ends in the other. */
function isPair(left: string, right: string, words = 3): boolean {
  const isSide = (side: string): boolean => /\p{L}/u.test(side) && side.trim().split(/\s+/u).length <= words;
  const alike = (of: (side: string) => unknown): boolean => of(left.trim()) === of(right.trim());
  return isSide(left) && isSide(right) && alike(stop) && alike(numerals);
}

const wordAndNumber =
  /^(?:[\p{L}\p{M}][\p{L}\p{M}' -]*?(?<one>[^\S\n]*(?:[:：;→|｜/]|\p{Pd}+>?)[^\S\n]*|[^\S\n]+)\p{N}+|\p{N}+(?<other>[^\S\n]*(?:[:：;→|｜/]|\p{Pd}+>?)[^\S\n]*|[^\S\n]+)[\p{L}\p{M}][\p{L}\p{M}' -]*)$/du;

/** `um: 1` among pairs of a word and a number. */
export function numberSign(text: string): Sign | undefined {
  const groups = wordAndNumber.exec(text.trimEnd())?.indices?.groups;
  const span = groups?.["one"] ?? groups?.["other"];
  return span && { way: ways.length + 1, start: span[0], end: span[1] };
}

/** Whether all texts have one and the same such sign; `all` as above. */
export function haveOneSign(texts: readonly string[], all: boolean): boolean {
  const signs = texts.map((text) => {
    const sign = doubtfulSign(text, all);
    return sign && `${sign.way} ${text.slice(sign.start, sign.end).trim()}`;
  });
  return signs[0] !== undefined && signs.every((sign) => sign === signs[0]);
}

export function tellDoubtful(source: SourceText, { start, end, close }: Sign, problems: Problems): void {
  const range = source.range(start, end);
  if (close) {
    const shut = source.range(close.start, close.end);
    problems.tell(
      "pairs",
      "meant-as-pair",
      { start: range.start, end: shut.end },
      "This item is no pair: brackets part nothing; the two sides are parted by “ = ”.",
      {
        title: "Write “ = ”",
        unsure: true,
        edits: [
          { range, text: " = " },
          { range: shut, text: "" },
        ],
      },
    );
    return;
  }
  const written = source.text.slice(start, end).trim();
  problems.tell(
    "pairs",
    "meant-as-pair",
    range,
    `This item is no pair: ${written === "" ? "white space" : `“${written}”`} parts nothing; the two sides are parted by “ = ”.`,
    { ...write("Write “ = ”", range, " = "), unsure: true },
  );
}
