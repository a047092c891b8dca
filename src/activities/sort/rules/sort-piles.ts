import type { Fix, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { bulletsAsPiles } from "../../plain-bullets";
import { optionPlace, quotedList } from "../../report";
import { fewestPiles, mostPiles } from "../deal";
import { dealtWith, type SortContext } from "./context";
import { activity, articles } from "./example";

export const sortPiles: Rule<SortContext> = {
  code: "sort-piles",
  severity: "error",
  title: "Fewer than two piles, more than six, or one that no heading names",
  why: "Piles are what the headings below the section's own name (`###`): two to six of them, which fit on a table. Without such headings statements are sorted into true and false. `piles` may name some of the headings.",
  example: {
    wrong: `## Articles\n\n### o\n\n- disco\n- café\n- pão\n- mel${activity("piles: headings\n")}`,
    right: `${articles}${activity("piles: headings\n")}`,
  },
  check: ({ dealt }) => {
    const { piles, unknown, headings, deals, request } = dealt;
    const { block, unit } = request;
    if (deals.length > 0) return [];
    const range = optionPlace(block, "piles", "from");
    const fixes: Fix[] = [];
    const list = (names: readonly string[]): string => `[${names.map((name) => JSON.stringify(name)).join(", ")}]`;
    const offer = (title: string, value: "truth" | "headings" | readonly string[]): void => {
      const { deals: better } = dealtWith(dealt, { piles: value });
      const text = typeof value === "string" ? value : list(value);
      if (better.length > 0) fixes.push({ title, edits: [setOption(block, unit.text, "piles", text)] });
    };
    if (unknown.length > 0) {
      offer("Take all headings", "headings");
      const known = headings.length > 0 ? `there are ${quotedList(headings)}` : "there are none";
      return [
        { range, message: `No heading below the section's own is called ${quotedList(unknown)}; ${known}.`, fixes },
      ];
    }
    if (piles.length > mostPiles) {
      offer(`Take the first ${mostPiles}`, headings.slice(0, mostPiles));
      return [{ range, message: `${piles.length} piles are too many for a table: ${mostPiles} at most.`, fixes }];
    }
    if (piles.length < fewestPiles) {
      offer("Sort into true and false", "truth");
      const meant = headings.length === 0 ? bulletsAsPiles(unit, request.sections, fewestPiles) : undefined;
      if (meant) fixes.unshift(meant.fix);
      const none = meant ? `none, but ${meant.told}` : "none";
      const found = headings.length === 0 ? none : `only ${quotedList(headings)}`;
      return [
        {
          range,
          message: `Sorting needs at least two piles, headings below the section's own; there is ${found}.`,
          fixes,
        },
      ];
    }
    return [];
  },
};
