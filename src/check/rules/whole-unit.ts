import type { UnknownSection } from "../../activities/plan";
import type { Fix, Report } from "../../base/finding";
import { quoted } from "./quoted-name";

/** A whole unit that `from` names: only its sections can be taken, each written `other.unit.md#Section`. */
export function wholeUnit(
  { range, among = [] }: UnknownSection,
  { path, section }: NonNullable<UnknownSection["whole"]>,
  text: string,
): Report {
  const names = [...new Set(among)];
  // What YAML reads as a comment may well be the section.
  const comment = /^[ \t]+#[ \t]*(\S.*?)[ \t]*(?=\r?$)/mu.exec(text.slice(range.end, range.end + 300));
  const commented = comment?.index === 0 && names.includes(`${path}#${comment[1]}`) ? comment : undefined;
  const meant = `${path}#${commented?.[1] ?? section}`;
  const end = range.end + (commented?.[0].length ?? 0);
  const fixes = [...names].sort((a, b) => Number(b === meant) - Number(a === meant)).slice(0, 5);
  const [first] = fixes;
  if (first === undefined) return { range, message: `The unit “${path}” has no section that could be used.` };
  return {
    range: { start: range.start, end },
    message: `This names no section of the unit “${path}”: a section of another unit is written “${first}”.`,
    fixes: fixes.map(
      (name): Fix => ({
        title: `Write “${name}”`,
        edits: [{ range: { start: range.start, end }, text: quoted(name) }],
        ...(names.length === 1 || name === meant ? { preferred: true } : {}),
      }),
    ),
  };
}
