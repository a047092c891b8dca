import type { LineIndex } from "../../base/range";
import { nearlyAlone, nearlyNumber, numbers, numbersAround, tightNumber } from "./numbered-lines";
import { otherNumbers } from "./other-numbers";
import type { Begin, Line, Style } from "./styles";

/*
 * Paragraphs of numbered lines some of which have no number: `1 Ela abre.`, `2 Ele chega.`, `Todos riem.` Such a line goes on the one
 * above it, or is an event of its own.
 */

const counted = (text: string): boolean => [nearlyNumber, nearlyAlone, tightNumber].some((sign) => sign.test(text));

const isSentence = (text: string): boolean => /^\p{P}*[\p{Lu}\p{Lo}].*[.!?…。！？।؟]\p{P}*$/u.test(text);

const ended = (text: string): boolean => /[.!?…。！？।؟]\p{P}*$/u.test(text);

/** Lines that count on, with others below them, where a story is wanted. */
export function unnumbered(
  lines: LineIndex,
  map: readonly [number, number],
  found: readonly Line[],
): Style | undefined {
  const heads = found.filter(({ text }) => counted(text));
  const [head] = heads;
  if (heads.length < 2 || heads.length === found.length || head !== found[0]) return undefined;
  const style = numbers(heads, numbersAround(lines, map)) ?? otherNumbers(lines, map, heads);
  if (!style) return undefined;
  const first = Number.parseInt(style.begins[0]?.put ?? "", 10);
  const cuts = new Map(heads.map((line, i) => [line, style.begins[i]?.cut ?? 0]));
  const own = found.map((line, i) => cuts.has(line) || (isSentence(line.text) && ended(found[i - 1]?.text ?? "")));
  const beginsWhere = (isEvent: (line: Line, i: number) => boolean | undefined): Begin[] => {
    let next = first;
    return found.map((line, i) =>
      isEvent(line, i)
        ? { cut: cuts.get(line) ?? 0, put: `${next++}. ` }
        : { cut: 0, put: " ".repeat(`${next - 1}. `.length) },
    );
  };
  const kept = beginsWhere((line) => cuts.has(line));
  const apart = own.filter(Boolean).length === cuts.size ? undefined : beginsWhere((_, i) => own[i]);
  return {
    begins: apart ?? kept,
    ...(apart ? { otherwise: { title: "Leave those without a number with the one above", begins: kept } } : {}),
    message: style.message,
    as: "events",
    unsure: true,
  };
}
