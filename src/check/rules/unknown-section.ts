import type { UnknownSection } from "../../activities/plan";
import type { Fix, Report, Rule } from "../../base/finding";
import type { Range } from "../../base/range";
import type { Unit } from "../../unit/unit";
import type { CheckContext } from "../context";
import { nearest, surelyMeant } from "../nearest";
import { insideOf, insideOther } from "./inside-section";
import { quoted } from "./quoted-name";
import { wholeUnit } from "./whole-unit";

export const unknownSection: Rule<CheckContext> = {
  code: "unknown-section",
  severity: "error",
  title: "A section that the unit does not have",
  why: "`from` names sections by the text of their level-two headings, without formatting, with capitals as written.",
  example: {
    wrong: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nfrom: Foods\n```",
    right: "## Food\n\n- pão = bread\n\n```activity\nmake: tiles\nfrom: Food\n```",
  },
  check: ({ unit, plan }) =>
    plan.activities.flatMap(({ unknown }) => {
      const joined = commaNames(unknown, unit);
      const single = unknown.filter(
        ({ range }) => !joined.some((whole) => whole.start <= range.start && range.end <= whole.end),
      );
      const commas = joined.map((range) => ({
        range,
        message: "YAML parts this name at its comma. In quotation marks it stays whole.",
        fixes: [
          {
            title: "Put it in quotation marks",
            edits: [{ range, text: JSON.stringify(unit.text.slice(range.start, range.end)) }],
            preferred: true,
          },
        ],
      }));
      const missing = single.map((named): Report => {
        const { name, range, file, among, whole } = named;
        if (file !== undefined) return { range, message: `There is no unit “${file}” beside this one.` };
        if (whole) return wholeUnit(named, whole, unit.text);
        const names = [...new Set(among ?? unit.sections.map((section) => section.name))];
        const listed = listOf(name, names);
        if (listed) {
          const message = `No section is called “${name}”: several names are a list, and a list stands in brackets.`;
          return {
            range,
            message,
            fixes: [{ title: "Put them in brackets", edits: [{ range, text: listed }], preferred: true }],
          };
        }
        const within = among ? insideOther(named) : insideOf(named, unit, plan.activities);
        if (within) return within;
        const { near, sure } = nearestNames(name, names);
        return {
          range,
          message: `No section is called “${name}”.${near[0] ? ` The nearest is “${near[0]}”.` : ""}`,
          fixes: near.map(
            (found): Fix => ({
              title: `Change to “${found}”`,
              edits: [{ range, text: quoted(found) }],
              ...(found === sure ? { preferred: true } : {}),
            }),
          ),
        };
      });
      return [...commas, ...missing];
    }),
};

/** The names that one may be meant as: those that hold it first, as `1. Food` holds `Food`, then by their letters; and the one that surely is. */
function nearestNames(name: string, names: readonly string[]): { near: readonly string[]; sure: string | undefined } {
  const small = name.toLowerCase();
  const holding = names.filter((each) => small.length > 2 && each.toLowerCase().includes(small));
  const near = [...new Set([...nearest(name, holding), ...nearest(name, names)])].slice(0, 3);
  const [only, ...others] = holding;
  return {
    near,
    sure: only !== undefined && others.length === 0 ? only : surelyMeant(name.replace(/^#+\s*/, ""), names),
  };
}

/** What stands between names in a list as people write it. */
const joined = /^(?:\s*[,;+&/|]\s*|\s+(?:and|und|e|y|et|та|і|й|и)\s+)/iu;

/** `At the bench, On the road`, `At the bench and On the road`: names of sections with signs or words between them, as a list. */
function listOf(written: string, names: readonly string[]): string | undefined {
  const parts =
    namesIn(
      written,
      [...names].filter(Boolean).sort((a, b) => b.length - a.length),
    ) ?? [];
  return parts.length > 1 ? `[${parts.map(quoted).join(", ")}]` : undefined;
}

/** The names that a text is made of; undefined where it has anything else. `names`: the longest first. */
function namesIn(written: string, names: readonly string[]): string[] | undefined {
  for (const name of names) {
    if (written === name) return [name];
    const between = written.startsWith(name) ? joined.exec(written.slice(name.length)) : null;
    const rest = between && namesIn(written.slice(name.length + between[0].length), names);
    if (rest) return [name, ...rest];
  }
  return undefined;
}

/** Ranges of neighbours in a list that are together the name of a section with a comma in it. */
function commaNames(unknown: readonly UnknownSection[], unit: Unit): Range[] {
  const found: Range[] = [];
  unknown.forEach((first, i) => {
    for (const last of unknown.slice(i + 1)) {
      const range = { start: first.range.start, end: last.range.end };
      const whole = unit.text.slice(range.start, range.end).replace(/\s+/gu, " ");
      if (unit.sections.some(({ name }) => name === whole)) found.push(range);
    }
  });
  return found;
}
