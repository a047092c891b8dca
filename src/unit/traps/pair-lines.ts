import { type Env, scan, spacedSeparators } from "../inline";
import { numerals } from "./doubtful-signs";
import { anySign, madeLetter } from "./glued";
import { type Line, noHyphen, noPairs, type Style } from "./styles";

/*
 * Lines that are pairs but for their bullet, or have another sign between two columns.
 */

/** Few words and no sentence. */
export const isShort = (text: string): boolean => text.split(/\s+/).length <= 8 && !/[.!?:;,]$/.test(text);

/** Whether a line is a pair and hardly a sentence of notes: few words on each side. */
export function isPairLine(text: string, env: Env): boolean {
  const isBold = /^(\*{1,3})[^\s*][^*\n]*\1(?=\s)/.test(text);
  if (!/[=＝]/u.test(text) || (anySign.test(text) && !isBold)) return false;
  const { mask } = scan(text, env);
  const [sign, second] = spacedSeparators(text, mask, "=");
  if (!sign || second || sign.start === 0 || sign.end >= text.length) return false;
  return isShort(text.slice(0, sign.start)) && isShort(text.slice(sign.end));
}

/** `ovo = egg` in each line. */
export function pairs(found: readonly Line[], env: Env): Style | undefined {
  const all = found.every(({ text }) => isPairLine(text, env));
  const begins = found.map(({ text }) => ({ cut: madeLetter.exec(text)?.[0].length ?? 0, put: "- " }));
  return all ? { begins, message: noHyphen, as: "pairs" } : undefined;
}

/** Two columns, parted by tabs as a spreadsheet gives them, or by another sign in at least three lines. */
export function columns(found: readonly Line[], env: Env): Style | undefined {
  for (const [sign, least, inNotes] of [
    [/[^\S\n]*\t\s*/u, 2, false],
    [/\s+[|｜]\s+/u, 2, false],
    [/\s+(?:[\p{Pd}−]|-{1,2}>?|[→⇒])\s+/u, 3, true],
    [/\s+[/／]\s+/u, 3, true],
    [/\s*[;；؛]\s+|;/u, 3, true],
    [/\s*[:：]\s+/u, 3, true],
  ] as const) {
    if (found.length < least) continue;
    const parts = found.map(({ text }) => {
      if (anySign.test(text) || /\|$/.test(text)) return undefined;
      const pieces = text.split(sign);
      const match = sign.exec(text);
      if (pieces.length !== 2 || !match || pieces.some((piece) => piece === "" || !isShort(piece))) return undefined;
      // A plan with its times, or with minutes.
      if (inNotes && numerals(pieces[0] ?? "") !== numerals(pieces[1] ?? "")) return undefined;
      const part = { start: match.index, end: match.index + match[0].length };
      return scan(text, env).mask.slice(part.start, part.end).some(Boolean) ? undefined : part;
    });
    if (!parts.every((part) => part !== undefined)) continue;
    // Who speaks comes again and again, a word does not.
    const lefts = new Set(parts.map(({ start }, i) => found[i]?.text.slice(0, start)));
    if (inNotes && lefts.size < parts.length) continue;
    return {
      begins: parts.map((part) => ({ cut: 0, put: "- ", part })),
      message: noPairs,
      as: "pairs",
      ...(inNotes ? { unsure: true as const } : {}),
    };
  }
  return undefined;
}
