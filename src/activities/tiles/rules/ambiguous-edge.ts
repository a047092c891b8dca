import type { Fix, Report, Rule } from "../../../base/finding";
import { type Steps, sifted } from "../../../base/steps";
import { answerKey } from "../../../match/relation";
import type { Pair } from "../../../unit/unit";
import {
  changed,
  distinctFixes,
  dropAnswer,
  dropPair,
  dropPairs,
  type Standing,
  type TriedFix,
} from "../../shared-answers";
import { hasEnough } from "../deal";
import type { DealtTiles, Edge, TilesDeal } from "../model";
import { holdingSoon } from "../trial";
import { blanksIn, gridFix, toldFix } from "./causes";
import { type Clash, clashes } from "./clashes";
import { place, type TilesContext } from "./context";
import { anotherSeed } from "./trial";

/** Fixes are tried before they are offered: of so many findings at a time, the first that are met. Ours. */
const mostMended = 16;

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
function crossing(first: Pair, second: Pair): { readonly here: Standing; readonly there: Standing } | undefined {
  for (const [side, other] of [
    ["left", "right"],
    ["right", "left"],
  ] as const) {
    for (const [at, here] of second[side].answers.entries()) {
      const index = first[other].answers.findIndex((answer) => answerKey(answer) === answerKey(here));
      const there = first[other].answers[index];
      if (there)
        return {
          here: { pair: second, side, index: at, answer: here },
          there: { pair: first, side: other, index, answer: there },
        };
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
          reports.set(key, ambiguity(dealt, deal, clash, [p?.pair, q?.pair], reports.size < mostMended));
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

/** Whether two pairs say the same, with the sides exchanged. */
function isTurned(p: Pair, q: Pair): boolean {
  return (
    answerKey(p.left.answers[0]) === answerKey(q.right.answers[0]) &&
    answerKey(p.right.answers[0]) === answerKey(q.left.answers[0])
  );
}

function inOrder(p: Pair, q: Pair): [Pair, Pair] {
  return p.range.start <= q.range.start ? [p, q] : [q, p];
}

function ambiguity(
  dealt: DealtTiles,
  deal: TilesDeal,
  { a, b }: Clash,
  [p, q]: readonly [Pair | undefined, Pair | undefined],
  mendable: boolean,
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
  const tried = cause ? [dropAnswer(cause.here), dropAnswer(cause.there, "there")] : [];
  const [early, late] = a.source.start <= b.source.start ? [a, b] : [b, a];
  const turned = p && q && isTurned(p, q);
  const what = turned
    ? `“${first?.left.answers[0].text} = ${first?.right.answers[0].text}” stands here the other way round, so each of the two words fits two edges.`
    : cause
      ? `“${cause.here.answer.text}” stands in two pairs, on different sides, so “${early.text}” and “${late.text}” fit though they are no pair.`
      : `“${early.text}” and “${late.text}” fit, though they are no pair.`;
  return {
    range: cause?.here.answer.range ?? late.source,
    severity: several ? "error" : one ? "information" : "warning",
    message: `${what}${effect}`,
    related: [
      { range: cause?.there.answer.range ?? early.source, message: "It stands here too" },
      ...(several
        ? [{ range: place(dealt), message: "This activity has a second solution; the preview shows both" }]
        : []),
    ],
    fixes: !mendable
      ? []
      : several
        ? () => mending(dealt, deal, tried, [p, q])
        : () => pruning(dealt, [...tried, second && dropPair(second)], one),
  };
}

/** What takes the clash away where it does no harm; where there is one solution, it stays the only one. */
function* pruning(
  { request }: DealtTiles,
  tried: readonly (TriedFix | undefined)[],
  one: boolean,
): Steps<Fix[], unknown> {
  const sound = yield* sifted(
    tried.flatMap((each) => each ?? []),
    function* ({ change }) {
      const after = changed(request, change);
      return hasEnough(after) && (!one || (yield* holdingSoon(after)));
    },
  );
  return distinctFixes(sound.map(({ fix }) => fix));
}

/** What leaves one solution, shown by dealing and proving anew; the smallest change first. */
function* mending(
  dealt: DealtTiles,
  deal: TilesDeal,
  answers: readonly (TriedFix | undefined)[],
  pairs: readonly (Pair | undefined)[],
): Steps<Fix[], unknown> {
  const { request } = dealt;
  const mends = function* (all: readonly (TriedFix | undefined)[]): Steps<Fix[], unknown> {
    const tried = all.flatMap((each) => each ?? []);
    return (yield* sifted(tried, ({ change }) => holdingSoon(changed(request, change)))).map(({ fix }) => fix);
  };
  const later = [...new Set(pairs.flatMap((pair) => pair ?? []))].sort((a, b) => b.range.start - a.range.start);
  const small = [...(yield* mends(answers)), ...(yield* toldFix(dealt, deal)), ...(yield* anotherSeed(dealt))];
  const alone = yield* mends(later.map(dropPair));
  const together = small.length + alone.length > 0 ? [] : yield* mends([dropLater(dealt)]);
  return distinctFixes([...small, ...alone, ...together, ...(yield* gridFix(dealt, deal))]);
}

/** Takes out the later pair of each clash, where there are several. */
function dropLater(dealt: DealtTiles): TriedFix | undefined {
  const out = dealt.deals.flatMap((deal) =>
    clashes(deal, dealt.request.relation).flatMap(({ a, b }) => {
      const [p, q] = [standing(a, dealt), standing(b, dealt)];
      return p && q && p.pair !== q.pair ? [inOrder(p.pair, q.pair)[1]] : [];
    }),
  );
  const pairs = [...new Set(out)];
  return pairs.length < 2 ? undefined : dropPairs(pairs, `Take out ${pairs.length} pairs whose words fit others`);
}
