import type { LineIndex } from "../../base/range";
import { stops } from "../../base/stops";
import type { Span } from "../inline";
import type { RawItem } from "../items";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";
import type { Together } from "../together";
import type { Problem } from "../unit";
import { doubtfulSign, letterSign, numberSign, numerals, tellDoubtful } from "./doubtful-signs";
import { hiddenEquals } from "./hidden-signs";
import { textOf } from "./lines";
import { isNumberedSentence } from "./other-numbers";

/*
 * What was meant as a pair and has another sign than “ = ”; signs that stand in most notes too are in `doubtful-signs.ts`.
 */

const otherSeparators = [
  // A picture and its word.
  /(?<=^!\[[^\]\n]*\]\([^()\n]*\))[^\S\n]+(?=[^\s=＝]\S*(?:[^\S\n]+\S+){0,2}[^\S\n]*$)/u,
  /(?<=^\S+(?:[^\S\n]+\S+){0,2})(?<![=＝])[^\S\n]+(?=!\[[^\]\n]*\]\([^()\n]*\)[^\S\n]*$)/u,
  /\s*\t\s*/u,
  /\s+(?::=|(\*{1,3}|_{1,3}|`)[=＝]\1)\s+/u,
  /\s+(?:\p{Pd}|[−ー←-⇿⟰-⟿⤀-⥿➔-➾►▶≈≡≃≅≙≗∼～~·﹦═⩵꞊⹀∶꞉]|-{1,2}>?|<?[-=]{1,2}>|<-{1,2}|={2,}|:{1,2})\s+/u,
  /\s*[:：](?:\s+|(?<=：))/u,
  // `**roda:** wheel`: the colon before the end of what is bold.
  /(?<=^(?<bold>\*{1,3}|_{1,3})[^\s*_:：][^*_:：]*)\s*[:：]\k<bold>\s+/u,
  // White space as other programs write it.
  /(?:&(?:nbsp|#160|#xa0);)+[^\S\n]*[=＝][^\S\n]*(?:&(?:nbsp|#160|#xa0);)+|[^\S\n]+[=＝](?:&(?:nbsp|#160|#xa0);)+|(?:&(?:nbsp|#160|#xa0);)+[=＝][^\S\n]+/iu,
  /\s+[=＝﹦═⩵꞊⹀]{1,3}(?:\\\s+|(?=[^\s=＝>/]))|(?<=[^\s=＝<>!/])[=＝﹦═⩵꞊⹀]{1,3}\s+/u,
  /(?<=[^\s=＝<>!])[=＝﹦═⩵꞊⹀]{1,3}(?=[^\s=＝>])/u,
];

/** What stands around an item. */
interface Around {
  readonly bullets: Together;
  readonly lines: LineIndex;
}

/** Signs that stand in notes as well. */
const loose = /^[^\S\n]*(?:[\p{Pd}−:：]|-{1,2})[^\S\n]*$/u;

/** What notes begin with, before a colon. */
const noteWords =
  /^[*_]{0,3}(?:see|see also|cf\.?|note|notes|n\.?b\.?|p\.?s\.?|tip|hint|reminder|remember|attention|warning|source|e\.?g\.?|homework|to ?do|materials?|plural|plurals|needs?|needed|bring|game|grammar|next (?:week|time|lesson)|ver|ver também|nota|notas|dica|atenção|lembrete|lembrar|fonte|materiais|plurais|tpc|próxima aula|véase|ojo|atención|recordatorio|materiales|plurales|deberes|tarea|voir|voir aussi|remarque|rappel|matériel|pluriel|devoirs|siehe|siehe auch|vgl\.?|hinweis|merke|achtung|tipp|quelle|mehrzahl|hausaufgaben?|mitbringen|див\.?|примітка|увага|порада|матеріали|множина|домашнє завдання|提醒|注意|备注|作业|复习|注|例|宿題|メモ|復習|ملاحظة|تنبيه|واجب|הערה|שימו לב|หมายเหตุ|การบ้าน|σημείωση|προσοχή|uwaga|notatka|dikkat|ödev|lưu ý|ghi chú|bài tập|figyelem|házi feladat)[*_]{0,3}$/iu;

/** A letter, with a number or a full stop, in bold perhaps. */
const speaker = /^[*_]{0,3}\p{Lu}\d?\.?[*_]{0,3}$/u;

/** A group, a table or a part, by its letter or Roman number: `Gruppe A`, `Kapitel II`. */
const lettered = /^[*_]{0,3}\p{L}[\p{L}\p{M}]+[^\S\n]+(\p{Lu}|[IVX]{2,4})[*_]{0,3}$/u;

const endOfSentence = new RegExp(String.raw`[${stops}][\p{Pf}\p{Pe}"'”*_]*$`, "u");

/** Whether a sign parts the words of a note rather than the sides of a pair; `wary` where the items around say that few are pairs in disguise. */
function inNote(text: string, { start, end }: Span, stop: number, wary: boolean): boolean {
  const sign = text.slice(start, end).replace(/[*_]+(?=\s*$)/, "");
  // A part of an address.
  const word = /\S*$/.exec(text.slice(0, end))?.[0] ?? "";
  if (/:\/\/|^www\./i.test(word + (/^\S*/.exec(text.slice(end))?.[0] ?? ""))) return true;
  // What is said of a link: `[Songs](https://b.example) – for later`.
  if (/:\/\/|(?<!!\[[^\]\n]*)\]\((?!#)/u.test(text.slice(0, stop)) && !/[=＝]/u.test(sign)) return true;
  if (!loose.test(sign)) return false;
  const left = text.slice(0, start).trim();
  const right = text.slice(end, stop).trim();
  if (/[:：]/u.test(sign) && noteWords.test(left)) return true;
  // Who speaks, and what: `A: Guten Tag!`.
  if (/[:：]/u.test(sign) && speaker.test(left) && endOfSentence.test(right)) return true;
  // A cut sentence is no note.
  if (/\s[|｜]\s/u.test(left) && /\s/u.test(sign)) return false;
  // An event that stands behind a bullet: `1 – Ela ri.`
  if (isNumberedSentence(text.slice(0, stop).trimEnd())) return true;
  // Times and prices.
  if (!/\p{L}/u.test(left + right)) return true;
  // Who writes the other items as pairs, or as cards, means a pair only where both sides are as short as words, and have the same numbers; what
  // has several words parted by commas behind its colon is a list.
  const long = (side: string): boolean => side.split(/\s+/).length > 3;
  const list = /[:：]/u.test(sign) && !/[,，]/u.test(left) && /[,，]/u.test(right);
  // Who gets what; the other side of a pair would have the letter as well.
  const label = wary ? lettered.exec(left)?.[1] : undefined;
  if (label !== undefined && !right.split(/[^\p{L}]+/u).includes(label)) return true;
  if (wary && endOfSentence.test(right) && !endOfSentence.test(left)) return true;
  return wary && (long(left) || long(right) || list || numerals(left) !== numerals(right));
}

const arrow = /^\s+(?:[←-⇿⟰-⟿⤀-⥿➔-➾►▶]|[-=]{1,2}>)\s+$/u;

const sides = (text: string, { start, end }: Span, stop: number): readonly [string, string] => [
  text.slice(0, start).trim(),
  text.slice(end, stop).trim(),
];

/** `masc.`, `sg.`, `n. pl.` */
const shortened = (side: string): boolean => /^(?:\p{L}{1,6}\.\s*)+$/u.test(side);

/** An ending, `-ão`, or a word with its case or gender in brackets, `den (Akk.)`. */
const ofWords = (side: string): boolean => /^[-–~]\p{L}|\(\p{L}{1,5}\.\)$/u.test(side);

/** Whether each word of the shorter text, or only one of them, is in the other in another form. */
function sharedForms(one: string, other: string): "all" | "some" | undefined {
  const words = (side: string): string[] => side.toLowerCase().match(/\p{L}[\p{L}\p{M}]*/gu) ?? [];
  const [few = [], many = []] = [words(one), words(other)].sort((a, b) => a.length - b.length);
  const related = few.map((word) =>
    many.some((each) => {
      const [short = "", long = ""] = [word, each].sort((a, b) => a.length - b.length);
      return long.startsWith(short) && [1, 2].includes(long.length - short.length);
    }),
  );
  const long = few.some((word, i) => related[i] && word.length > 1);
  if (!long) return undefined;
  return related.every(Boolean) ? "all" : few.some((word, i) => related[i] && word.length > 3) ? "some" : undefined;
}

/**
 * `um → uma`, `verde → verdes`, `sg. → pl.`, `10:30 → aula 4`: an arrow from one form of a word to another is a note among pairs that
 * have “ = ”. Only perhaps where but one of several words is such: `un vieux vélo → de vieux vélos`, `o artista → the artist`.
 */
function ofGrammar(text: string, span: Span, stop: number): boolean | "perhaps" {
  if (!arrow.test(text.slice(span.start, span.end))) return false;
  const [left, right] = sides(text, span, stop);
  if ((shortened(left) && shortened(right)) || ofWords(left) || ofWords(right)) return true;
  if (numerals(left) !== numerals(right)) return true;
  const shared = sharedForms(left, right);
  return shared === "all" || (shared === "some" && "perhaps");
}

/** `bel` and `belle`: of two words that are the same but for their ends, neither says what the other means. */
function areAkin(one: string, other: string): boolean {
  const [short = "", long = ""] = [one, other].sort((a, b) => a.length - b.length).map((word) => word.toLowerCase());
  let shared = 0;
  while (shared < short.length && short.charAt(shared) === long.charAt(shared)) shared++;
  return shared >= Math.max(1, short.length - 2) && shared * 2 >= short.length && long.length - shared < 4;
}

/**
 * `masc. / fem.`, `beau / bel / belle`, and `sim/não` where most pairs have articles, so that two bare words are not like them; `ser ≠ estar`:
 * among pairs that have “ = ” this sign says that something is none.
 */
function isNotedSign(text: string, span: Span, stop: number, phrased: boolean): boolean {
  const sign = text.slice(span.start, span.end).trim();
  if (sign === "≠") return true;
  if (!/^[/／∕]$/u.test(sign)) return false;
  const both = sides(text, span, stop);
  const words = both.join(" / ").split(/\s*[/／∕]\s*/u);
  const [first = ""] = words;
  if (words.every((word) => !/\s/.test(word) && areAkin(first, word))) return true;
  return both.every(shortened) || (phrased && both.every((side) => !/\s/.test(side)));
}

/** Whether a pair stands further down in the same list, without a blank line: notes stand below the pairs. */
function abovePair(lines: LineIndex, { block }: RawItem): boolean {
  let number = lines.lineAt(block.start);
  while (lines.start(number) < block.end && number < lines.count) number++;
  for (; number < lines.count && textOf(lines, number).trim() !== ""; number++)
    if (/^[ \t]{0,3}[-*+][ \t].*\S\s[=＝]\s\S/u.test(textOf(lines, number))) return true;
  return false;
}

/**
 * `dr Nowak – poniedziałek`, `Who am I? – guessing`, `mañana: repaso`, `Haus → Häuser`: beside pairs that look otherwise, or below all of
 * them, a dash or a colon may stand in a note, and an arrow anywhere.
 */
function maybeNoted(item: RawItem, { bullets, lines }: Around, sign: string, [left, right]: readonly [string, string]) {
  if (!bullets.hasPairs || bullets.ofBothSides(left, right)) return false;
  if (bullets.phrased || endOfSentence.test(left) || (bullets.hasOnlySmall && /\p{Lu}/u.test(left + right)))
    return true;
  return bullets.mostlyPairs && (arrow.test(sign) || !abovePair(lines, item));
}

/** `- Bom dia!` and `— Boa tarde.` below it: a dash at the beginning of a line is that of someone who speaks, or of an item. */
const inNextLine = /\n[^\S\n]*[\p{Pd}−>]/u;

/** A whole pair in code. */
const coded = /^(`{1,2})[^\S\n]*[^`\s][^`\n]*[^\S\n][=＝][^\S\n][^`\n]*[^`\s][^\S\n]*\1$/u;

/** `` `roda = wheel` ``: in code nothing parts. */
function pairInCode(source: SourceText, end: number, problems: Problems): boolean {
  const text = source.text.slice(0, end).trimEnd();
  const sign = coded.exec(text)?.[1]?.length;
  if (sign === undefined) return false;
  const stop = text.length;
  problems.tell(
    "pairs",
    "meant-as-pair",
    source.range(0, stop),
    "This item is no pair: it stands in signs of code, between which “ = ” parts nothing.",
    {
      title: "Take the signs out",
      edits: [
        { range: source.range(0, sign), text: "" },
        { range: source.range(stop - sign, stop), text: "" },
      ],
    },
  );
  return true;
}

/** `roda`, `wheel` and `f.` with tabs between them: what makes a comment of the third, which would be printed with the second. */
function thirdColumn(source: SourceText, from: number, stop: number): Problem["fixes"][number]["edits"] {
  const [, gap = "", remark = ""] =
    /^[^\t\n]*[^\s]([^\S\n]*\t[^\S\n]*)([^\t\n<>]+)$/.exec(source.text.slice(from, stop).trimEnd()) ?? [];
  if (remark === "" || remark.includes("--")) return [];
  const end = from + source.text.slice(from, stop).trimEnd().length;
  const at = end - remark.length;
  return [{ range: source.range(at - gap.length, end), text: ` <!-- ${remark} -->` }];
}

/** Words with commas between them. */
const inLine = /[^\s,，、][,，、]\s*[^\s,，、]/u;

/** `roda – wheel`, `roda: wheel`, a tab, `roda=wheel`, `roda =wheel`: nearly a pair. */
export function meantAsPair(
  item: RawItem,
  open: (span: Span) => boolean,
  end: number,
  around: Around,
  problems: Problems,
): void {
  const { text: source } = item;
  const { bullets } = around;
  if (pairInCode(source, end, problems)) return;
  const unseen = hiddenEquals(source.text);
  if (unseen && unseen.start > 0 && unseen.end < end && open(unseen)) {
    problems.tell(
      "pairs",
      "meant-as-pair",
      source.range(unseen.start, unseen.end),
      "This item is no pair: beside its equals sign stands a sign that nobody sees, instead of white space.",
      write("Write “ = ”", source.range(unseen.start, unseen.end), " = "),
    );
    return;
  }
  for (const separator of otherSeparators) {
    const match = separator.exec(source.text);
    if (!match) continue;
    const span = { start: match.index, end: match.index + match[0].length };
    if (span.start === 0 || span.end >= end) continue;
    // What stands for white space is no text that a sign could be part of.
    const at = match[0].includes("&") ? span.start + match[0].search(/[=＝]/u) : -1;
    if (!open(at < 0 ? span : { start: at, end: at + 1 })) continue;
    if (inNote(source.text, span, end, bullets.mostlyPairs || bullets.hasCards)) continue;
    const grammar = bullets.mostlyPairs && ofGrammar(source.text, span, end);
    if (grammar === true) return;
    if (bullets.mostlyPairs && bullets.ofOneSide(...sides(source.text, span, end))) continue;
    const both = sides(source.text, span, end);
    if (inNextLine.test(match[0]) && endOfSentence.test(both[0])) continue;
    const bold = match.groups?.["bold"] ?? "";
    const doubtful = bold !== "" || loose.test(match[0]) || arrow.test(match[0]) || inNextLine.test(match[0]);
    // A pile and its cards have this form too.
    const listed = /[:：]/u.test(match[0]) && inLine.test(both[1]);
    const unsure = grammar || listed || (doubtful && maybeNoted(item, around, match[0], both));
    const sign =
      match[0].trim() === ""
        ? match[0].includes("\t")
          ? "a tab"
          : "white space"
        : `“${match[0].trim().slice(0, bold === "" ? undefined : -bold.length)}”`;
    const further = sign === "a tab" ? thirdColumn(source, span.end, end) : [];
    problems.tell(
      "pairs",
      "meant-as-pair",
      source.range(span.start, span.end),
      `This item is no pair: ${sign} parts nothing; the two sides are parted by “ = ”.`,
      {
        title: further.length > 0 ? "Write “ = ”, and what is behind the next tab in a comment" : "Write “ = ”",
        edits: [{ range: source.range(span.start, span.end), text: `${bold} = ` }, ...further],
        ...(unsure || further.length > 0 ? { unsure: true } : {}),
      },
    );
    return;
  }
  const all = source.text.slice(0, end);
  const sign =
    bullets.mostlyPairs || bullets.alike
      ? doubtfulSign(all, !bullets.hasPairs)
      : bullets.parted
        ? letterSign(all)
        : undefined;
  const escaped = sign && /^\s*(?:\\|&)/.test(source.text.slice(sign.start, sign.end));
  const noted =
    sign &&
    bullets.mostlyPairs &&
    (isNotedSign(source.text, sign, end, bullets.phrased) || bullets.ofOneSide(...sides(all, sign, end)));
  if (sign && (escaped || open(sign)) && !noted && !inNote(source.text, sign, end, true)) {
    tellDoubtful(source, sign, problems);
    return;
  }
  const number = bullets.mostlyPairs && bullets.numbered ? numberSign(all) : undefined;
  if (number && open(number)) {
    tellDoubtful(source, number, problems);
    return;
  }
  const border = bullets.mostlyPairs ? bullets.borderIn(all) : undefined;
  if (border && open(border)) {
    tellDoubtful(
      source,
      { ...border, way: -1, ...(border.close.start < border.close.end ? {} : { close: undefined }) },
      problems,
    );
    return;
  }
  const cuts = [...source.text.matchAll(/\s+[|｜¦‖│∣ǀ❘┃￨]\s+/gu)];
  const [cut] = cuts;
  if (!cut || !open({ start: cut.index, end: cut.index + cut[0].length }) || cut.index + cut[0].length >= end) return;
  const range = source.range(cut.index, cut.index + cut[0].length);
  problems.tell(
    "pairs",
    "meant-as-pair",
    range,
    "This item is no pair, so that nothing of it is used: a bar only cuts the left side, and the two sides are parted by “ = ”.",
    // Who writes pairs beside it knows their sign: the other side may just be missing yet.
    ...(cuts.length > 1 || bullets.hasCuts
      ? []
      : [
          {
            ...write("Write “ = ”", range, " = "),
            ...(bullets.hasPairs || endOfSentence.test(all.trim()) ? { unsure: true as const } : {}),
          },
        ]),
  );
}
