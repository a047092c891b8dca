import type { Fix, Rule } from "../../../base/finding";
import { sizeFor, xHeightOf, xHeights } from "../../../page/legibility";
import { setOption } from "../../edits";
import { heightAt, layoutRebuild, sizeOn } from "../layout";
import { type RebuildContext, shortened } from "./context";

export const rebuildTooSmall: Rule<RebuildContext> = {
  code: "rebuild-too-small",
  severity: "warning",
  title: "Words that are too small to read on a card",
  why: "All cards of a set have one height and one size of text, so the longest part decides. At arm's length (400 mm) small letters should be 2.33 mm high (20 minutes of arc) and must be 1.86 mm. Make the cards higher, or cut the long part in two.",
  example: {
    wrong: "## Ordering\n\n- Queria um disco. = I'd like a record.\n\n```activity\nmake: rebuild\nheight: 12\n```",
    right: "## Ordering\n\n- Queria um disco. = I'd like a record.\n\n```activity\nmake: rebuild\nheight: 20\n```",
  },
  check: ({ dealt, press }) => {
    const { deals, request } = dealt;
    if (deals.length === 0) return [];
    const { typeface } = press;
    const { size, height, box } = layoutRebuild(dealt, press);
    const comfort = sizeFor(xHeights.desk.comfortable, typeface);
    if (size !== undefined && size >= comfort) return [];
    const cards = deals.flatMap((deal) => deal.dealt);
    const small = cards
      .map((card) => ({ card, own: sizeOn([card], box.w, height, press) }))
      .filter(({ own }) => own === undefined || own < comfort)
      .sort((a, b) => (a.own ?? 0) - (b.own ?? 0) || a.card.source.start - b.card.source.start);
    const [worst, ...others] = small;
    if (!worst) return [];
    const letters = worst.own === undefined ? 0 : xHeightOf(worst.own, typeface);
    const enough = Math.ceil(heightAt(cards, box.w, comfort, press));
    const possible = enough <= 80 && (sizeOn(cards, box.w, enough, press) ?? 0) >= comfort;
    const fixes: Fix[] = possible
      ? [
          {
            title: `Make the cards ${enough} mm high`,
            edits: [setOption(request.block, request.unit.text, "height", String(enough))],
            preferred: true,
          },
        ]
      : [];
    const state = worst.own === undefined ? "does not fit" : `has letters only ${letters.toFixed(1)} mm high`;
    const related = new Map(others.map(({ card }) => [card.source.start, card.source]));
    related.delete(worst.card.source.start);
    return [
      {
        range: worst.card.source,
        severity: letters < xHeights.desk.least ? "error" : "warning",
        message: `“${shortened(worst.card.text)}” ${state} on cards of ${height} mm, and sets the size of all. ${possible ? `Cards of ${enough} mm would do.` : "No card is large enough: cut it in two."}`,
        related: [...related.values()].slice(0, 4).map((range) => ({ range, message: "Too small as well" })),
        fixes,
      },
    ];
  },
};
