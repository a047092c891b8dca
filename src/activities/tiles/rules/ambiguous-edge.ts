import type { Fix, Report, Rule } from "../../../base/finding";
import { answerKey } from "../../../match/relation";
import type { Answer, Pair } from "../../../unit/unit";
import { changed, dropPair } from "../../shared-answers";
import { hasEnough } from "../deal";
import type { DealtTiles, Edge, TilesDeal } from "../model";
import { blanksIn, causeFixes } from "./causes";
import { type Clash, clashes } from "./clashes";
import { place, type TilesContext } from "./context";

/** Where an edge's word stands among the pairs in use; undefined for a decoy. */
function standing(
  edge: Edge,
  { used }: DealtTiles,
): { readonly pair: Pair; readonly side: "left" | "right" } | undefined {
  for (const pair of used) {
    for (const side of ["left", "right"] as const)
      if (pair[side].answers[0].range === edge.source) return { pair, side };
  }
  return undefined;
}

/** Why two edges fit: the word of the later pair that stands on the other side of the earlier one. */
function crossing(first: Pair, second: Pair): { readonly here: Answer; readonly there: Answer } | undefined {
  for (const [side, other] of [
    ["left", "right"],
    ["right", "left"],
  ] as const) {
    for (const here of second[side].answers) {
      const there = first[other].answers.find((answer) => answerKey(answer) === answerKey(here));
      if (there) return { here, there };
    }
  }
  return undefined;
}

export const ambiguousEdge: Rule<TilesContext> = {
  code: "ambiguous-edge",
  severity: "warning",
  title: "Two edges that fit although they are no pair",
  why: "A word of one pair answers a word of another, for instance because one pair's gloss is another pair's word. A learner may lay the two together. Where that leads to a second solution it is an error; the preview shows both. Give one of them another answer, or take a pair out.",
  example: {
    wrong:
      "## Chains\n\n- lento = slow\n- slow = langsam\n- alto = tall\n- bajo = short\n\n```activity\nmake: tiles\n```",
    right: "## Chains\n\n- lento = slow\n- gordo = fat\n- alto = tall\n- bajo = short\n\n```activity\nmake: tiles\n```",
  },
  check: ({ dealt }) => {
    const reports = new Map<string, Report>();
    for (const deal of dealt.deals) {
      for (const clash of clashes(deal, dealt.request.relation)) {
        const [p, q] = [standing(clash.a, dealt), standing(clash.b, dealt)];
        // Both sides of one pair belong together, also where they are the same word.
        if (p && q && (p.pair === q.pair || sameWords(p.pair, q.pair))) continue;
        // Two pairs that share an answer on one side are the matter of `duplicate-answer`.
        if (p && q && p.side !== q.side && !crossing(...inOrder(p.pair, q.pair))) continue;
        // One finding for each later item, however many edges its words fit.
        const key = String(
          Math.max(p?.pair.range.start ?? clash.a.source.start, q?.pair.range.start ?? clash.b.source.start),
        );
        const known = reports.get(key);
        if (!known || (known.severity !== "error" && deal.proof.status === "several")) {
          reports.set(key, ambiguity(dealt, deal, clash, p?.pair, q?.pair));
        }
      }
    }
    return [...reports.values()];
  },
};

/** One pair written twice is the matter of `duplicate-answer`. */
function sameWords(p: Pair, q: Pair): boolean {
  return (["left", "right"] as const).every((side) => answerKey(p[side].answers[0]) === answerKey(q[side].answers[0]));
}

function inOrder(p: Pair, q: Pair): [Pair, Pair] {
  return p.range.start <= q.range.start ? [p, q] : [q, p];
}

function ambiguity(
  dealt: DealtTiles,
  deal: TilesDeal,
  { a, b }: Clash,
  p: Pair | undefined,
  q: Pair | undefined,
): Report {
  const several = deal.proof.status === "several";
  const one = deal.proof.status === "one";
  const effect = several
    ? ` So the tiles can be laid in more than one way.${blanksIn(dealt, deal)}`
    : one
      ? " Other edges keep them apart: the solution is still the only one."
      : "";
  const [first, second] = p && q ? inOrder(p, q) : [undefined, q ?? p];
  const cause = first && second && first !== second ? crossing(first, second) : undefined;
  const [early, late] = a.source.start <= b.source.start ? [a, b] : [b, a];
  const what = cause
    ? `“${cause.here.text}” stands in two pairs, on different sides, so “${early.text}” and “${late.text}” fit though they are no pair.`
    : `“${early.text}” and “${late.text}” fit, though they are no pair.`;
  return {
    range: cause?.here.range ?? late.source,
    severity: several ? "error" : one ? "information" : "warning",
    message: `${what}${effect}`,
    related: [
      { range: cause?.there.range ?? early.source, message: "It stands here too" },
      ...(several
        ? [{ range: place(dealt), message: "This activity has a second solution; the preview shows both" }]
        : []),
    ],
    fixes: [...(several ? causeFixes(dealt, deal) : []), ...(second ? without(dealt, second) : [])],
  };
}

/** Takes a pair out, where the tiles have enough without it. */
function without({ request }: DealtTiles, pair: Pair): Fix[] {
  const tried = dropPair(pair);
  return tried && hasEnough(changed(request, tried.change)) ? [tried.fix] : [];
}
