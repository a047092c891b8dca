import { foreignName } from "../../activities/foreign";
import type { Range } from "../../base/range";
import type { Picture, Unit } from "../../unit/unit";

/** A path written in a unit, relative to the unit's folder. */
export interface PathLink {
  readonly kind: "picture" | "unit";
  readonly range: Range;
  readonly path: string;
}

/** Pictures wherever items and tables have some, and other units that activities take sections from; in the order of the text. */
export function linksIn(unit: Unit): readonly PathLink[] {
  const pictures = new Map<number, Picture>();
  gather(unit.sections, pictures);
  const links = [...[...pictures.values()].flatMap((picture) => pictureLink(unit, picture)), ...unitLinks(unit)];
  return links.sort((one, other) => one.range.start - other.range.start);
}

/** Whatever a section holds may have a picture in it; the same one is met as an answer's, as its part's and in a pile. */
function gather(value: unknown, found: Map<number, Picture>): void {
  if (typeof value !== "object" || value === null) return;
  if (isPicture(value)) found.set(value.range.start, value);
  else for (const inner of Object.values(value)) gather(inner, found);
}

function isPicture(value: object): value is Picture {
  return "path" in value && "alt" in value && "range" in value;
}

/** The end of a picture: behind its description a path, with or without angle brackets, and perhaps a title. */
const target =
  /\]\([ \t\r\n]*(?:<([^<>]*)>|((?:\\.|\((?:\\.|[^\s()\\])*\)|[^\s()<>\\])+))(?:\s+(?:"[^"]*"|'[^']*'|\([^()]*\)))?\s*\)$/u;

function pictureLink({ text }: Unit, { path, range }: Picture): readonly PathLink[] {
  const whole = text.slice(range.start, range.end);
  // One that takes its path from elsewhere has none here, and what ends the words around it may be a tie.
  const written = whole.startsWith("![") ? target.exec(whole) : null;
  const shown = written?.[1] ?? written?.[2];
  if (!written || shown === undefined || shown.startsWith("#")) return [];
  const from = range.start + written.index + written[0].indexOf(shown, 2);
  return [{ kind: "picture", range: { start: from, end: from + shown.length }, path }];
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
