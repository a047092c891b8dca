import { Recent } from "../base/recent";

const quotes: readonly (readonly [string, string])[] = [
  ['"', '"'],
  ["'", "'"],
  ["“", "”"],
  ["„", "“"],
  ["„", "”"],
  ["”", "”"],
  ["‘", "’"],
  ["‚", "‘"],
  ["’", "’"],
  ["«", "»"],
  ["»", "«"],
  ["‹", "›"],
  ["›", "‹"],
  ["「", "」"],
  ["『", "』"],
];

function unquote(text: string): string {
  if (text.length < 2) return text;
  const pair = quotes.find(([open, close]) => text.startsWith(open) && text.endsWith(close));
  return pair ? text.slice(1, -1).trim() : text;
}

/**
 * The form in which two texts are the same for a learner: NFC, white space collapsed, outer quotation marks and one final
 * full stop dropped (`...` is no full stop). Case and accents stay: they make another word. Where nothing would be left,
 * the text as written.
 */
export function fold(text: string): string {
  return kept.get(text, () => foldAnew(text));
}

const kept = new Recent<string>(20_000);

function foldAnew(text: string): string {
  const spaced = text.normalize("NFC").replace(/\s+/gu, " ").trim();
  let bare = unquote(spaced);
  if (/(?<![.。])[.。]$/u.test(bare)) bare = bare.slice(0, -1).trimEnd();
  bare = unquote(bare);
  return bare === "" ? spaced : bare;
}
