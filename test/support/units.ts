import { nothingAround, openWorkshop, type Reading, type Surroundings, type Workshop } from "../../src/make/workshop";
import { testAssets } from "./typeface";

let opened: Promise<Workshop> | undefined;

/** One engine for all tests. */
export function testWorkshop(): Promise<Workshop> {
  opened ??= openWorkshop(testAssets());
  return opened;
}

export async function readUnitText(text: string, around: Partial<Surroundings> = {}): Promise<Reading> {
  const workshop = await testWorkshop();
  return workshop.read({ name: "unit", text }, { ...nothingAround, ...around });
}

/** The text of a range. */
export function slice(text: string, { start, end }: { start: number; end: number }): string {
  return text.slice(start, end);
}

/** Applies edits that do not overlap. */
export function applyEdits(
  text: string,
  edits: readonly { range: { start: number; end: number }; text: string }[],
): string {
  return [...edits]
    .sort((a, b) => b.range.start - a.range.start)
    .reduce((now, edit) => now.slice(0, edit.range.start) + edit.text + now.slice(edit.range.end), text);
}

/** A section of `count` invented pairs with nothing in common, and an activity about it. */
export function unitOf(count: number, options: string, front = ""): string {
  const pairs = Array.from({ length: count }, (_, i) => `- ${word(i)}a = ${word(i)}o`);
  return `${front}## Words\n\n${pairs.join("\n")}\n\n\`\`\`activity\nmake: tiles\n${options}\n\`\`\`\n`;
}

/** Distinct pronounceable words: ba, be, … baba, … */
export function word(n: number): string {
  const syllables = ["ba", "de", "fi", "go", "ku", "la", "me", "ni", "po", "ru", "sa", "te"];
  let out = "";
  let rest = n + 12;
  while (rest > 0) {
    out = (syllables[rest % 12] ?? "") + out;
    rest = Math.floor(rest / 12);
  }
  return out;
}
