/*
 * Which script each character of a text is written in, as far as shaping needs to know: stretches of one script are
 * shaped apart, and the shaper names the script itself.
 */

const names = [
  "Latin",
  "Greek",
  "Cyrillic",
  "Han",
  "Hiragana",
  "Katakana",
  "Hangul",
  "Arabic",
  "Hebrew",
  "Devanagari",
  "Thai",
  "Armenian",
  "Georgian",
  "Bengali",
  "Gurmukhi",
  "Gujarati",
  "Oriya",
  "Tamil",
  "Telugu",
  "Kannada",
  "Malayalam",
  "Sinhala",
  "Lao",
  "Tibetan",
  "Myanmar",
  "Khmer",
  "Ethiopic",
  "Cherokee",
  "Canadian_Aboriginal",
  "Mongolian",
  "Syriac",
  "Thaana",
  "Bopomofo",
  "Tifinagh",
  "Nko",
  "Yi",
] as const;

const tests = names.map((name) => new RegExp(`\\p{Script=${name}}`, "u"));
const neutral = /[\p{Script=Common}\p{Script=Inherited}]/u;

/** Stands for a script outside the list; neighbours in two of those would be shaped together, which does little harm. */
const OTHER = names.length;
const NEUTRAL = -1;

const known = new Map<number, number>();

function scriptOf(codePoint: number): number {
  let script = known.get(codePoint);
  if (script === undefined) {
    const character = String.fromCodePoint(codePoint);
    script = neutral.test(character) ? NEUTRAL : tests.findIndex((test) => test.test(character));
    if (script === NEUTRAL && !neutral.test(character)) script = OTHER;
    known.set(codePoint, script);
  }
  return script;
}

/** Whether a character has a script of its own, by which a stretch of text is shaped. */
export function hasScript(codePoint: number): boolean {
  return scriptOf(codePoint) !== NEUTRAL;
}

/** A number for the script of every UTF-16 unit. Spaces, digits, punctuation and marks join what stands before them. */
export function scriptsOf(text: string): readonly number[] {
  const scripts: number[] = [];
  let current = NEUTRAL;
  for (const character of text) {
    const script = scriptOf(character.codePointAt(0) ?? 0);
    if (script !== NEUTRAL) {
      if (current === NEUTRAL) scripts.fill(script);
      current = script;
    }
    for (let i = 0; i < character.length; i++) scripts.push(current);
  }
  return scripts;
}
