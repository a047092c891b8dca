import type { Fix } from "../../base/finding";
import type { Range } from "../../base/range";
import type { Unit } from "../../unit/unit";

/** In a unit without sections: makes one of what is nearly its heading, the last one above an activity's fence at `before`. */
export function otherHeading({ headingsAbove, problems, text, lines }: Unit, before: number): Fix[] {
  // Right below settings that never end its signs would make a comment of it.
  const parted = ({ start }: Range): string => {
    const line = lines.lineAt(start);
    const above = lines.line(line - 1);
    return line === 0 || text.slice(above.start, above.end).trim() === "" ? "" : lines.newline;
  };
  const others = headingsAbove
    .filter(({ name }) => name !== "")
    .map(({ name, range }) => ({
      start: range.start,
      fix: { title: `Make a section of “${name}”`, edits: [{ range, text: `${parted(range)}## ${name}` }] },
    }));
  // Two number signs or more without a space.
  const nearly = problems
    .filter(({ code }) => code === "not-a-heading")
    .flatMap(({ range, fixes: [fix] }) =>
      fix?.edits.every(({ text }) => text === "## ") ? [{ start: range.start, fix }] : [],
    );
  const found = [...others, ...nearly].filter(({ start }) => start < before).sort((a, b) => b.start - a.start)[0];
  return found ? [{ ...found.fix, preferred: true }] : [];
}
