import type { Fix, Rule } from "../../../base/finding";
import { sizeFor, xHeightOf } from "../../../page/legibility";
import { setOption } from "../../edits";
import { cardFace, looksLike, type Printed } from "../../printed";
import { optionPlace } from "../../report";
import { layoutLoop, limitsFor, sizeOn } from "../layout";
import type { DealtLoop } from "../model";
import type { LoopContext } from "./context";

export const loopTooSmall: Rule<LoopContext> = {
  code: "loop-too-small",
  severity: "warning",
  title: "Words that are too small to read on a card",
  why: "All words of the cards have one size, so the longest decides. On the table (400 mm) small letters should be 2.33 mm high (20 minutes of arc) and must be 1.86 mm; on the wall, read from a metre, 5.8 and 4.7 mm. Put fewer cards on a sheet, or use fewer words.",
  example: {
    wrong:
      "## Times\n\n- ontem = the day that came before the day on which all of this is being said and read\n- hoje = today\n- logo = soon\n- já = now\n\n```activity\nmake: loop\nsize: mini\ncards: 16\n```",
    right:
      "## Times\n\n- ontem = yesterday\n- hoje = today\n- logo = soon\n- já = now\n\n```activity\nmake: loop\nsize: mini\ncards: 16\n```",
  },
  check: ({ dealt: given, press }) => {
    const dealt = asOneCircle(given);
    const { options, deals, request } = dealt;
    if (deals.length === 0) return [];
    const { size, grid, signSize } = layoutLoop(dealt, press);
    const { typeface } = press;
    const limits = limitsFor(options);
    const comfort = sizeFor(limits.comfortable, typeface);
    if (size !== undefined && size >= comfort) return [];
    const small = shownOn(dealt)
      .map((shown) => ({ shown, own: sizeOn([cardFace(shown, press)], grid, options.size, signSize, press) }))
      .filter(({ own }) => own === undefined || own < comfort)
      .sort((a, b) => (a.own ?? 0) - (b.own ?? 0) || a.shown.source.start - b.shown.source.start);
    const [worst, ...others] = small;
    if (!worst) return [];
    const height = worst.own === undefined ? 0 : xHeightOf(worst.own, typeface);
    const state = worst.own === undefined ? "does not fit" : `has letters only ${height.toFixed(1)} mm high`;
    const fixes = fewerCards(dealt, comfort, press);
    const per = grid.columns * grid.rows;
    return [
      {
        range: worst.shown.source,
        severity: height < limits.least ? "error" : "warning",
        message: `“${worst.shown.text}” ${state} on cards of ${Math.floor(grid.w)} × ${Math.floor(grid.h)} mm, ${per} a sheet, and sets the size of all. ${fixes.length > 0 ? "Larger cards would do." : "No card is large enough: shorten it."}`,
        related: [
          ...others.slice(0, 4).map(({ shown }) => ({ range: shown.source, message: "Too small as well" })),
          ...(options.cards === undefined
            ? []
            : [{ range: optionPlace(request.block, "cards"), message: "The number that was asked for" }]),
        ],
        fixes,
      },
    ];
  },
};

function shownOn({ deals }: DealtLoop): Printed[] {
  const shown = new Map<string, Printed>();
  for (const { answer, prompt } of deals.flatMap(({ cards }) => cards))
    for (const each of [answer, prompt]) if (!shown.has(looksLike(each))) shown.set(looksLike(each), each);
  return [...shown.values()];
}

/** The most cards a sheet with which all words are comfortable, where that is fewer than now. */
function fewerCards(dealt: DealtLoop, comfort: number, press: LoopContext["press"]): Fix[] {
  const { options, request } = dealt;
  const choices = options.size === "mini" ? [15, 14, 12, 10, 9, 8, 6, 5, 4, 3, 2] : [1];
  for (const cards of choices) {
    if (cards >= (options.cards ?? 17)) continue;
    const trial = { ...dealt, options: { ...options, cards } };
    if ((layoutLoop(trial, press).size ?? 0) < comfort) continue;
    const edits = [setOption(request.block, request.unit.text, "cards", String(cards))];
    return [{ title: `Put ${cards} ${cards === 1 ? "card" : "cards"} on a sheet`, edits, preferred: true }];
  }
  return [];
}

/** The same cards, none of them a decoy: all words have one size. */
function asOneCircle(dealt: DealtLoop): DealtLoop {
  const deals = dealt.deals.map((deal) => ({ ...deal, cards: [...deal.cards, ...deal.decoys], decoys: [] }));
  return { ...dealt, deals };
}
