/**
 * Accents and points as marks: of Latin, Greek and Cyrillic letters, Hebrew and Arabic points, and the voicing of kana. Vowel
 * signs of Indic scripts and Thai are no accents, they make another word.
 */
const marks = /[\u0300-\u036f\u0591-\u05c7\u064b-\u065f\u0670\u3099\u309a]/gu;

/** Letters with a stroke, which Unicode takes apart into nothing, and the i without its dot. */
const stroked: Readonly<Record<string, string>> = {
  ł: "l",
  Ł: "L",
  ø: "o",
  Ø: "O",
  đ: "d",
  Đ: "D",
  ħ: "h",
  Ħ: "H",
  ŧ: "t",
  Ŧ: "T",
  ı: "i",
};
const stroke = new RegExp(`[${Object.keys(stroked).join("")}]`, "gu");

/** A text without accents, points and strokes. */
export function withoutAccents(text: string): string {
  const plain = text.normalize("NFD").replace(marks, "").normalize("NFC");
  return plain.replace(stroke, (letter) => stroked[letter] ?? letter);
}

/** Two letters that are written as one. */
const joined: Readonly<Record<string, string>> = { œ: "oe", Œ: "Oe", æ: "ae", Æ: "Ae", ß: "ss", ẞ: "Ss" };
const join = new RegExp(`[${Object.keys(joined).join("")}]`, "gu");

/** A text in which each letter that stands for two is these. */
export function lettersApart(text: string): string {
  return text.replace(join, (letter) => joined[letter] ?? letter);
}
