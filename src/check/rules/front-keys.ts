import frontSchema from "../../../schemas/front-matter.schema.json";
import { sift } from "../../activities/options";
import type { Report } from "../../base/finding";
import { validateFrontMatter } from "../../base/generated/validators";
import type { Entry, Mapping } from "../../unit/unit";
import { distance } from "../nearest";

const names = Object.keys(frontSchema.properties);

/** Names of other tools' settings and of people's own that are near to one of ours. */
const others: ReadonlySet<string> = new Set([
  "teacher",
  "teachers",
  "teach",
  "class",
  "page",
  "pages",
  "group-id",
  "need",
]);

/** `titel: x`, `Teaches: de`: front matter may hold the settings of other tools too, so that only what is nearly ours is told. */
export function nearlyKeys(front: Mapping): Report[] {
  return front.entries.flatMap((entry): Report[] => {
    const near = names.includes(entry.key) ? undefined : nearName(front, entry);
    if (near === undefined || front.entries.some(({ key }) => key === near)) return [];
    return [
      {
        range: entry.keyRange,
        message: `There is no option “${entry.key}” here. Did you mean “${near}”?`,
        fixes: [{ title: `Change to “${near}”`, edits: [{ range: entry.keyRange, text: near }], preferred: true }],
      },
    ];
  });
}

/** The one name of ours that is meant: another case, one slip of the pen, or two where the value could be its own. */
function nearName(front: Mapping, entry: Entry): string | undefined {
  const key = entry.key.toLowerCase();
  if (names.includes(key)) return key;
  const fits = (name: string): boolean =>
    sift({ ...front, entries: [{ ...entry, key: name }] }, validateFrontMatter).faults.length === 0;
  const near = names.filter((name) => {
    const far = distance(key, name);
    if (far > 2 || (far === 2 && name.length < 6 && !isSwap(key, name))) return false;
    return (far === 1 && name.length > 6 && !others.has(key)) || fits(name);
  });
  return near.length === 1 && !(others.has(key) && typeof entry.value === "string") ? near[0] : undefined;
}

/** The same letters in another order. */
function isSwap(a: string, b: string): boolean {
  return [...a].sort().join("") === [...b].sort().join("");
}
