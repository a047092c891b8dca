import { foreignName } from "../../activities/foreign";
import type { TextEdit } from "../../base/finding";
import type { Unit } from "../../unit/unit";
import { insidePath, pathFrom } from "../files/paths";
import { linksIn } from "./links";
import { listedIn } from "./names/listed";
import { pictureTarget } from "./names/writing";

/** Where the unit that names others lay and will lie, and where everything will; all paths are absolute. */
export interface Move {
  /** The folder that nothing leads out of. */
  readonly root: string;
  readonly from: string;
  readonly to: string;
  moved(path: string): string;
}

/** Writes the paths of pictures and of other units anew after files were moved, so that each leads to what it led to. */
export function editsAfter(unit: Unit, { root, from, to, moved }: Move): readonly TextEdit[] {
  const anew = (path: string): string | undefined => {
    const target = insidePath(root, folderOf(from), path);
    if (target === undefined) return undefined;
    const [before, after] = [pathFrom(folderOf(from), target), pathFrom(folderOf(to), moved(target))];
    return before === after ? undefined : after;
  };
  return [...unitEdits(unit, anew), ...pictureEdits(unit, anew)];
}

type Anew = (path: string) => string | undefined;

function unitEdits(unit: Unit, anew: Anew): readonly TextEdit[] {
  const entries = unit.activities.flatMap(({ options }) => options.entries.filter(({ key }) => key === "from"));
  return entries.flatMap((entry) =>
    listedIn(unit, entry).flatMap(({ name, place, write }): TextEdit[] => {
      const other = foreignName(name);
      const path = other && anew(other.path);
      return other && path !== undefined ? [{ range: place, text: write(`${path}#${other.section}`) }] : [];
    }),
  );
}

function pictureEdits(unit: Unit, anew: Anew): readonly TextEdit[] {
  return linksIn(unit).flatMap(({ kind, range, path }): TextEdit[] => {
    const target = kind === "picture" ? anew(path) : undefined;
    const written = target === undefined ? undefined : pictureTarget(target);
    if (written === undefined) return [];
    const angled = unit.text.charAt(range.start - 1) === "<" && unit.text.charAt(range.end) === ">";
    return [{ range: angled ? { start: range.start - 1, end: range.end + 1 } : range, text: written }];
  });
}

function folderOf(path: string): string {
  return path.slice(0, path.lastIndexOf("/")) || "/";
}
