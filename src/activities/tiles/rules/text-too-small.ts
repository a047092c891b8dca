import type { Fix, Report, Rule } from "../../../base/finding";
import { sizeFor, xHeightOf, xHeights } from "../../../page/legibility";
import { setOption } from "../../edits";
import { commonSize, layoutTiles, sideFor } from "../layout";
import type { Edge } from "../model";
import type { TilesContext } from "./context";

export const textTooSmall: Rule<TilesContext> = {
  code: "text-too-small",
  severity: "warning",
  title: "Words that are too small to read at a desk",
  why: "All words of an activity have one size, so the longest decides. At arm's length (400 mm) small letters should be 2.33 mm high (20 minutes of arc) and must be 1.86 mm (16 minutes; after ISO 9241-3, taken for the x-height, which is stricter). Make the tiles larger, shorten the word, or take another.",
  example: {
    wrong:
      "## Times\n\n- ontem = the day before this day\n- hoje = today\n- logo = soon\n- já = now\n\n```activity\nmake: tiles\nsize: 25\n```",
    right:
      "## Times\n\n- ontem = yesterday\n- hoje = today\n- logo = soon\n- já = now\n\n```activity\nmake: tiles\nsize: 60\n```",
  },
  check: ({ dealt, press }) => {
    if (dealt.deals.length === 0) return [];
    const { packing, size } = layoutTiles(dealt, press);
    const { typeface } = press;
    const comfort = sizeFor(xHeights.desk.comfortable, typeface);
    if (size !== undefined && size >= comfort) return [];
    const edges = new Map<number, Edge>();
    for (const edge of dealt.deals.flatMap(({ solved }) => solved.flat())) if (edge) edges.set(edge.source.start, edge);
    const reports: Report[] = [];
    const small: { edge: Edge; own: number | undefined }[] = [];
    for (const edge of edges.values()) {
      const own = commonSize([edge], packing.side, press);
      if (own === undefined || own < comfort) small.push({ edge, own });
    }
    small.sort((a, b) => (a.own ?? 0) - (b.own ?? 0) || a.edge.source.start - b.edge.source.start);
    const [worst, ...others] = small;
    if (!worst) return [];
    const needed = Math.max(0, ...small.map(({ edge }) => sideFor(edge, comfort, press) ?? 0));
    const possible = small.every(({ edge }) => sideFor(edge, comfort, press) !== undefined);
    const { block, unit } = dealt.request;
    const fixes: Fix[] = possible
      ? [
          {
            title: `Make the tiles ${needed} mm`,
            edits: [setOption(block, unit.text, "size", String(needed))],
            preferred: true,
          },
        ]
      : [];
    const height = worst.own === undefined ? 0 : xHeightOf(worst.own, typeface);
    const state = worst.own === undefined ? "does not fit" : `has letters only ${height.toFixed(1)} mm high`;
    reports.push({
      range: worst.edge.source,
      severity: height < xHeights.desk.least ? "error" : "warning",
      message: `“${worst.edge.text}” ${state} on tiles of ${packing.side} mm, and sets the size of all words. ${possible ? `Tiles of ${needed} mm would do.` : "No tile is large enough: shorten it."}`,
      related: others.slice(0, 4).map(({ edge }) => ({ range: edge.source, message: "Too small as well" })),
      fixes,
    });
    return reports;
  },
};
