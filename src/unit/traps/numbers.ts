/*
 * Numbers in the digits of any script: Markdown numbers items with 0 to 9 only.
 */

/** The value of a number in any script's digits, or in a circle as `①`; NaN where it is none. */
export function numberOf(written: string): number {
  return Number([...written.normalize("NFKC")].map(digit).join(""));
}

/** Unicode keeps the ten digits of a script in a row, from zero on. */
function digit(char: string): string {
  const code = char.codePointAt(0) ?? 0;
  if (!/^\p{Nd}$/u.test(char) || code < 0x80) return char;
  let zero = code;
  while (code - zero < 9 && /^\p{Nd}$/u.test(String.fromCodePoint(zero - 1))) zero--;
  return String(code - zero);
}
