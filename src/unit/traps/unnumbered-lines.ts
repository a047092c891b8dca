import type { LineIndex } from "../../base/range";
import { sentenceEnd, stops } from "../../base/stops";
import { countedWords, worded } from "./counted-words";
import {
  lettered,
  letters,
  nearlyAlone,
  nearlyNumber,
  numbers,
  numbersAround,
  plainNumber,
  tightNumber,
} from "./numbered-lines";
import { hasItems, otherNumbers } from "./other-numbers";
import type { Begin, Line, Style } from "./styles";

/*
 * Paragraphs of numbered lines some of which have no number: `1 Ela abre.`, `2 Ele chega.`, `Todos riem.` Such a line goes on the one
 * above it, or is an event of its own.
 */

const signs = [nearlyNumber, nearlyAlone, tightNumber, lettered, worded];

const counted = (text: string): boolean => signs.some((sign) => sign.test(text));

const sentence = new RegExp(String.raw`^\p{P}*[\p{Lu}\p{Lo}].*[${stops}]\p{P}*$`, "u");

const isSentence = (text: string): boolean => sentence.test(text);

const ended = (text: string): boolean => sentenceEnd.test(text);

/** Lines that count on, with others below them, where a story is wanted. */
export function unnumbered(
  lines: LineIndex,
  map: readonly [number, number],
  found: readonly Line[],
): Style | undefined {
  const heads = found.filter(({ text }) => counted(text));
  const [head] = heads;
  const lead = head ? found.indexOf(head) : -1;
  if (heads.length < 2 || heads.length === found.length || lead > 1) return undefined;
  // What would be an item by itself is told as one that the text above it takes.
  if (lead === 1 && heads.some(({ text }) => plainNumber.test(text))) return undefined;
  // Above them at most what they are about.
  if (lead === 1 && ended(found[0]?.text ?? "")) return undefined;
  const style =
    numbers(heads, numbersAround(lines, map)) ??
    (hasItems(lines, map[0]) ? undefined : (letters(heads) ?? countedWords(heads))) ??
    otherNumbers(lines, [map[0] + lead, map[1]], heads);
  if (!style) return undefined;
  const first = Number.parseInt(style.begins[0]?.put ?? "", 10);
  const cuts = new Map(heads.map((line, i) => [line, style.begins[i]?.cut ?? 0]));
  const own = found.map(
    (line, i) => cuts.has(line) || (i > lead && isSentence(line.text) && ended(found[i - 1]?.text ?? "")),
  );
  const beginsWhere = (isEvent: (line: Line, i: number) => boolean | undefined): Begin[] => {
    let next = first;
    return found.map((line, i) => {
      if (i < lead) return { cut: 0, put: "" };
      if (!isEvent(line, i)) return { cut: 0, put: " ".repeat(`${next - 1}. `.length) };
      const above = i > 0 && i === lead ? lines.newline : "";
      return { cut: cuts.get(line) ?? 0, put: `${above}${next++}. ` };
    });
  };
  const kept = beginsWhere((line) => cuts.has(line));
  const apart = own.filter(Boolean).length === cuts.size ? undefined : beginsWhere((_, i) => own[i]);
  return {
    begins: apart ?? kept,
    first: lead,
    ...(apart ? { otherwise: { title: "Leave those without a number with the one above", begins: kept } } : {}),
    message: style.message,
    as: "events",
    unsure: true,
  };
}
