import type { Fix, TextEdit } from "../base/finding";
import { sentenceEnd } from "../base/stops";
import type { PlainBullet, Section, Unit } from "../unit/unit";

/*
 * Bullets with text alone that an activity was likely meant to take, where it finds nothing that it can: they are notes as they stand.
 */

type Place = PlainBullet["nested"][number];

/** A sentence, or what may be one; or the beginning of one that goes on in the bullets below. */
const isSentence = (said: string, { nested }: PlainBullet): boolean =>
  sentenceEnd.test(said) || said.split(/\s+/).length > 3 || (nested.length > 0 && /[:：]$/u.test(said));

/** What the one section that is taken holds, where it is of the unit itself and holds nothing but items of this kind. */
function only(kind: "plain" | "events", unit: Unit, sections: readonly Section[]): readonly PlainBullet[] {
  const [section, ...others] = sections;
  if (!section || others.length > 0 || !unit.sections.includes(section)) return [];
  const { pairs, statements, events, piles, tables, plain } = section;
  const rest = [pairs, statements, piles, tables, kind === "plain" ? events : plain];
  if (rest.some(({ length }) => length > 0)) return [];
  return kind === "plain" ? plain : events.map(({ range, block, free }) => ({ range, block, nested: free }));
}

/** Bullets that are sentences, as events are, and what makes events of them. */
export function bulletsAsEvents(
  unit: Unit,
  sections: readonly Section[],
  fewest: number,
): { readonly count: number; readonly edits: readonly TextEdit[] } | undefined {
  const plain = only("plain", unit, sections);
  const { text } = unit;
  if (plain.length < fewest || !plain.every((each) => isSentence(text.slice(each.range.start, each.range.end), each)))
    return undefined;
  const edits = plain.flatMap((bullet, i) => {
    const sign = signOf(text, bullet);
    const number = `${i + 1}. `;
    return [
      { range: sign, text: number },
      ...belowIn(unit, bullet, (start) => {
        const more = number.length - (sign.end - sign.start);
        return more > 0 ? { range: { start, end: start }, text: " ".repeat(more) } : undefined;
      }),
    ];
  });
  return { count: plain.length, edits };
}

/** What may be meant as piles: what is told of it, and what makes piles of it. */
interface Meant {
  readonly told: string;
  readonly fix: Fix;
}

/** Items that all have bullets below them, as piles have cards, or their cards behind a colon: what makes headings of them. */
export function bulletsAsPiles(unit: Unit, sections: readonly Section[], fewest: number): Meant | undefined {
  const bullets = only("plain", unit, sections);
  const plain = bullets.length > 0 ? bullets : only("events", unit, sections);
  const { text, lines } = unit;
  if (plain.length < fewest) return undefined;
  if (!plain.every(({ nested }) => nested.length > 0)) return linesAsPiles(unit, plain);
  const edits = plain.flatMap((bullet, i): TextEdit[] => {
    const { range, block } = bullet;
    const [first] = bullet.nested;
    const head = lines.lineAt(range.start);
    const end = lines.line(head).end;
    const isBelow = i > 0 && text.slice(lines.start(head - 1), block.start).trim() !== "";
    const colon = /\s*[:：]\s*$/u.exec(text.slice(range.start, range.end))?.[0].length ?? 0;
    const isTight = first !== undefined && lines.lineAt(first.block.start) === head + 1;
    const inner = first ? signOf(text, first).start - first.block.start : 0;
    return [
      { range: { start: block.start, end: range.start }, text: `${isBelow ? lines.newline : ""}### ` },
      { range: { start: range.end - colon, end: range.end }, text: "" },
      ...(isTight ? [{ range: { start: end, end }, text: lines.newline }] : []),
      ...belowIn(unit, bullet, (start, lead) => {
        const cut = Math.min(inner, lead);
        return cut > 0 ? { range: { start, end: start + cut }, text: "" } : undefined;
      }),
    ];
  });
  const cards = plain.reduce((sum, { nested }) => sum + nested.length, 0);
  return {
    told: `${plain.length} items with ${cards} bullets below them: a heading names a pile`,
    fix: { title: "Make headings of the items with bullets below them", edits },
  };
}

/** `O mar: o barco, a vela`: a pile, and behind a colon its cards with commas between them. */
const pileInLine = /^([^:：]+?)\s*[:：]\s*([^,，、:：]+(?:[,，、][^,，、:：]+)+)$/u;

/** Bullets that all are piles in a line. */
function linesAsPiles({ text, lines }: Unit, plain: readonly PlainBullet[]): Meant | undefined {
  const found = plain.map(({ range, nested }) =>
    nested.length > 0 ? null : pileInLine.exec(text.slice(range.start, range.end)),
  );
  const cards = found.map((match) => match?.[2]?.split(/[,，、]/u).map((card) => card.trim()) ?? []);
  if (cards.some(({ length }) => length === 0)) return undefined;
  const { newline } = lines;
  const edits = plain.map(({ range, block }, i) => {
    const items = (cards[i] ?? []).map((card) => `- ${card}`).join(newline);
    const above = i > 0 && text.slice(lines.start(lines.lineAt(block.start) - 1), block.start).trim() !== "";
    const written = `${above ? newline : ""}### ${found[i]?.[1] ?? ""}${newline}${newline}${items}`;
    return { range: { start: block.start, end: range.end }, text: written };
  });
  return {
    told: `${plain.length} items with words behind a colon: a heading names a pile, and each of its cards has a bullet`,
    fix: { title: "Make headings of the words before the colons", edits },
  };
}

/** The sign of a bullet, with the white space behind it. */
function signOf(text: string, { range, block }: Place): Place["range"] {
  const lead = text.slice(block.start, range.start).search(/\S/);
  return { start: block.start + Math.max(0, lead), end: range.start };
}

/** An edit in each line below the first one of a bullet, where that is not blank. */
function belowIn(
  { text, lines }: Unit,
  { range, block }: Place,
  editOf: (start: number, lead: number) => TextEdit | undefined,
): TextEdit[] {
  const edits: TextEdit[] = [];
  for (let line = lines.lineAt(range.start) + 1; line < lines.count && lines.start(line) < block.end; line++) {
    const { start, end } = lines.line(line);
    const lead = text.slice(start, end).search(/\S/);
    const edit = lead < 0 ? undefined : editOf(start, lead);
    if (edit) edits.push(edit);
  }
  return edits;
}
