/** What is heard of a text: its words, whatever their capitals and marks; a question is heard. */
export function heard(text: string): string {
  return text
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}?？;]+/gu, " ")
    .trim();
}
