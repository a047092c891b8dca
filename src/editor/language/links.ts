import { foreignName } from "../../activities/foreign";
import type { Range } from "../../base/range";
import type { Answer, Unit } from "../../unit/unit";

/** A path written in a unit, relative to the unit's folder. */
export interface PathLink {
  readonly kind: "picture" | "unit";
  readonly range: Range;
  readonly path: string;
}

/** Pictures, and other units that activities take sections from. */
export function linksIn(unit: Unit): readonly PathLink[] {
  const answers = unit.sections.flatMap(({ pairs, piles, tables }) => [
    ...pairs.flatMap(({ left, right }) => [...left.answers, ...right.answers]),
    ...piles.flatMap(({ members }) => members.flatMap(({ shape, item }) => (shape === "text" ? [item] : []))),
    ...tables.flatMap(({ forms }) => forms.flat()),
  ]);
  return [...answers.flatMap((answer) => pictureLink(unit, answer)), ...unitLinks(unit)];
}

function pictureLink({ text }: Unit, answer: Answer | undefined): readonly PathLink[] {
  if (!answer?.picture) return [];
  const { path, range } = answer.picture;
  const written = /!\[(?:\\.|[^\]\\])*\]\(\s*(?:<([^<>]*)>|([^\s()<>]+))/u.exec(text.slice(range.start, range.end));
  const shown = written?.[1] ?? written?.[2];
  if (!written || shown === undefined) return [];
  const end = range.start + written.index + written[0].length - (written[1] === undefined ? 0 : 1);
  return [{ kind: "picture", range: { start: end - shown.length, end }, path }];
}

function unitLinks({ text, activities }: Unit): readonly PathLink[] {
  return activities.flatMap(({ options }) => {
    const from = options.entries.find(({ key }) => key === "from");
    if (!from) return [];
    const list = Array.isArray(from.value);
    const values: readonly unknown[] = Array.isArray(from.value) ? from.value : [from.value];
    return values.flatMap((value, i): PathLink[] => {
      const other = typeof value === "string" ? foreignName(value) : undefined;
      const place = list ? from.items[i] : from.valueRange;
      const at = other && place ? text.slice(place.start, place.end).indexOf(other.path) : -1;
      if (!other || !place || at < 0) return [];
      const start = place.start + at;
      return [{ kind: "unit", range: { start, end: start + other.path.length }, path: other.path }];
    });
  });
}
