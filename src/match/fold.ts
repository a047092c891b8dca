import { Recent } from "../base/recent";
import { fullStops } from "../base/stops";

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

/** What leaves no ink: soft hyphen, zero width space, word joiner, byte order mark and marks of direction. */
const inkless = /[\u00ad\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/gu;
/** Joiners change how Arabic and Indic letters look, and nothing after others. */
const idleJoiner = /(?<=^|[\p{Script=Latin}\p{Script=Greek}\p{Script=Cyrillic}\p{P}\s])[\u200c\u200d]/gu;
/** Latin ligatures, which print like their letters. */
const ligature = /[\ufb00-\ufb06]/gu;
const special = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060\u2066-\u2069\ufb00-\ufb06\ufeff]/u;

/**
 * The form in which two texts are the same for a learner: NFC, white space collapsed, outer quotation marks and one final
 * full stop of any script dropped (`...` is no full stop), and nothing in it that cannot be seen. Case and accents stay: they make another
 * word. Where nothing would be left, the text as written.
 */
export function fold(text: string): string {
  // Asked for several times for each text of a unit at each keystroke: not even a function is made for it.
  const known = kept.find(text);
  if (known !== undefined) return known;
  const folded = foldAnew(text);
  kept.set(text, folded);
  return folded;
}

const kept = new Recent<string>(20_000);

/** One alone: `...` is none. */
const lastStop = new RegExp(`(?<![${fullStops}])[${fullStops}]$`, "u");

function foldAnew(text: string): string {
  const spaced = visible(text).normalize("NFC").replace(/\s+/gu, " ").trim();
  let bare = unquote(spaced);
  if (lastStop.test(bare)) bare = bare.slice(0, -1).trimEnd();
  bare = unquote(bare);
  return bare === "" ? spaced : bare;
}

function visible(text: string): string {
  if (!special.test(text)) return text;
  const plain = text.replace(ligature, (each) => each.normalize("NFKC"));
  return plain.replace(inkless, "").replace(idleJoiner, "");
}
