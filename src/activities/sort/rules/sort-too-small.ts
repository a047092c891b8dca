import type { Fix, Rule } from "../../../base/finding";
import { sizeFor, xHeightOf, xHeights } from "../../../page/legibility";
import { setOption } from "../../edits";
import { optionPlace } from "../../report";
import { gridsOf, layoutSort, pieceCount, sizeOn } from "../layout";
import type { SortContext } from "./context";

export const sortTooSmall: Rule<SortContext> = {
  code: "sort-too-small",
  severity: "warning",
  title: "Words that are too small to read on a card",
  why: "All cards of a set have words of one size, so the longest text decides. At arm's length (400 mm) small letters should be 2.33 mm high (20 minutes of arc) and must be 1.86 mm. Put fewer cards on a sheet, or shorten the text.",
  example: {
    wrong:
      "## Articles\n\n### o\n\n- disco com muito leite e pouco café, como o pai gosta de manhã, quando a mãe ainda dorme e o gato já mede o seu leite\n- café\n- pão\n\n### a\n\n- mochila\n- conta\n\n```activity\nmake: sort\ncards: 40\n```",
    right:
      "## Articles\n\n### o\n\n- disco\n- café\n- pão\n\n### a\n\n- mochila\n- conta\n\n```activity\nmake: sort\ncards: 8\n```",
  },
  check: ({ dealt, press }) => {
    const { cards, deals, request, options } = dealt;
    if (deals.length === 0) return [];
    const { size, grid, box } = layoutSort(dealt, press);
    const { typeface } = press;
    const comfort = sizeFor(xHeights.desk.comfortable, typeface);
    if (size !== undefined && size >= comfort) return [];
    const small = cards
      .map((card) => ({ card, own: sizeOn({ cards: [card] }, grid, press) }))
      .filter(({ own }) => own === undefined || own < comfort)
      .sort((a, b) => (a.own ?? 0) - (b.own ?? 0) || a.card.source.start - b.card.source.start);
    const [worst, ...others] = small;
    if (!worst) return [];
    const height = worst.own === undefined ? 0 : xHeightOf(worst.own, typeface);
    const fixes: Fix[] = [];
    const count = pieceCount(dealt) + options.blanks;
    for (let asked = grid.columns * grid.rows; asked >= 1; asked--) {
      const sizes = gridsOf(box, count, asked).map((each) => sizeOn(dealt, each, press) ?? 0);
      if (Math.max(0, ...sizes) < comfort) continue;
      const edits = [setOption(request.block, request.unit.text, "cards", String(asked))];
      fixes.push({ title: `Put ${asked} on a sheet`, edits, preferred: true });
      break;
    }
    const state = worst.own === undefined ? "does not fit" : `has letters only ${height.toFixed(1)} mm high`;
    return [
      {
        range: worst.card.source,
        severity: height < xHeights.desk.least ? "error" : "warning",
        message: `“${shortened(worst.card.text)}” ${state} on cards of ${grid.w} × ${grid.h} mm, and sets the size of all. ${fixes.length > 0 ? "Larger cards would do." : "No card is large enough: shorten it."}`,
        related: [
          ...others.slice(0, 4).map(({ card }) => ({ range: card.source, message: "Too small as well" })),
          ...(options.cards === undefined
            ? []
            : [{ range: optionPlace(request.block, "cards"), message: "The number of cards that was asked for" }]),
        ],
        fixes,
      },
    ];
  },
};

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57).trimEnd()}…` : text;
}
