import type { Fix, Report, Rule } from "../../../base/finding";
import { type Steps, sifted } from "../../../base/steps";
import { answerKey } from "../../../match/relation";
import type { Pair, Section } from "../../../unit/unit";
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
  why: "A word of one pair answers a word of another, for instance because one pair's gloss is another pair's word, or because a further pair of the unit, which need not be on a tile, says so. A learner may lay the two together. Where that leads to a second solution it is an error; the preview shows both. Give one of them another answer, or take a pair out.",
  example: {
    wrong:
      "## Chains\n\n- lento = slow\n- slow = langsam\n- alto = tall\n- bajo = short\n\n```activity\nmake: tiles\n```",
    right: "## Chains\n\n- lento = slow\n- gordo = fat\n- alto = tall\n- bajo = short\n\n```activity\nmake: tiles\n```",
  },
  check: ({ dealt }) => {
    const reports = new Map<string, Report>();
    for (const deal of dealt.deals) {
      const found = clashes(deal, dealt.request.relation).map((clash) => {
        const [p, q] = [standing(clash.a, dealt), standing(clash.b, dealt)];
        return { clash, p, q, third: thirdPair(dealt, clash, p?.pair, q?.pair) };
      });
      // What the two pairs themselves say is the plainer cause.
      for (const { clash, p, q } of [...found.filter(({ third }) => !third), ...found.filter(({ third }) => third)]) {
        // Both sides of one pair belong together, also where they are the same word.
        if (p && q && (p.pair === q.pair || sameWords(p.pair, q.pair))) continue;
        // Pairs on the tiles that share an answer on one side are the matter of `duplicate-answer`; what a pair that is on none
        // says of these words is told here alone.
        const says = dealt.request.relation.because(clash.a.key, clash.b.key);
        const isTold = says.some((pair) => dealt.used.includes(pair));
        if (p && q && p.side !== q.side && isTold && !crossing(...inOrder(p.pair, q.pair))) continue;
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

/** What says that words of two pairs fit where neither of these does: a third one, which need not be on a tile. */
function thirdPair(
  { request }: DealtTiles,
  { a, b }: Clash,
  p: Pair | undefined,
  q: Pair | undefined,
): Pair | undefined {
  const says = request.relation.because(a.key, b.key);
  return p && q && !says.includes(p) && !says.includes(q) ? says[0] : undefined;
}

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
  const says = dealt.request.relation.because(a.key, b.key);
  const third = thirdPair(dealt, { a, b }, p, q);
  const tried = third
    ? [...alternativesIn(third, [a, b]).map((each) => dropAnswer(each, "there")), dropPair(third)]
    : cause
      ? [dropAnswer(cause.here), dropAnswer(cause.there, "there")]
      : [];
  const [early, late] = a.source.start <= b.source.start ? [a, b] : [b, a];
  const turned = p && q && isTurned(p, q);
  const what = turned
    ? `${named(first)} stands here the other way round, so each of the two words fits two edges.`
    : third
      ? `${named(third)} is a pair as well, so “${late.text}” fits the “${early.text}” of ${named(first)} too.`
      : cause && p && q
        ? `“${cause.here.answer.text}” stands in two pairs, on different sides, so ${says.includes(p) ? fitsToo(a, b, q) : fitsToo(b, a, p)}.`
        : `“${early.text}” and “${late.text}” fit, though they are no pair.`;
  return {
    range: (third ? undefined : cause?.here.answer.range) ?? late.source,
    severity: several ? "error" : one ? "information" : "warning",
    message: `${what}${effect}`,
    related: [
      ...(third ? [{ range: third.range, message: "This says that the two fit" }] : []),
      third
        ? { range: early.source, message: "The other word" }
        : { range: cause?.there.answer.range ?? early.source, message: "It stands here too" },
      ...(several
        ? [{ range: place(dealt), message: "This activity has a second solution; the preview shows both" }]
        : []),
    ],
    fixes: !mendable
      ? []
      : several
        ? () => mending(dealt, deal, tried, [p, q])
        : () => pruning(dealt, { a, b }, [...tried, third ? undefined : second && dropPair(second)], one),
  };
}

/** A pair by what it prints. */
function named(pair: Pair | undefined): string {
  return `“${pair?.left.answers[0].text} = ${pair?.right.answers[0].text}”`;
}

/** One word fits another, which a pair may have in common with its own: named with its pair. */
function fitsToo(word: Edge, other: Edge, pair: Pair): string {
  return `“${word.text}” fits the “${other.text}” of ${named(pair)} too`;
}

/** Of the answers of a pair that are not printed those that read like one of some edges. */
function alternativesIn(pair: Pair, edges: readonly Edge[]): Standing[] {
  return (["left", "right"] as const).flatMap((side) =>
    pair[side].answers.flatMap((answer, index) =>
      index > 0 && edges.some(({ key }) => key === answerKey(answer)) ? [{ pair, side, index, answer }] : [],
    ),
  );
}

/** Whether a pair of a section stands at an offset. */
function hasAt({ pairs }: Section, offset: number): boolean {
  return pairs.some(({ range }) => range.start <= offset && offset < range.end);
}

/** What takes the clash away where it does no harm; where there is one solution, it stays the only one. */
function* pruning(
  { request }: DealtTiles,
  { a, b }: Clash,
  tried: readonly (TriedFix | undefined)[],
  one: boolean,
): Steps<Fix[], unknown> {
  const sound = yield* sifted(
    tried.flatMap((each) => each ?? []),
    function* ({ change }) {
      const after = changed(request, change);
      // Where more pairs say the same, the words go on fitting as long as both are there.
      const both = [a, b].every(({ source }) => after.sections.some((section) => hasAt(section, source.start)));
      return !(both && after.relation.fits(a.key, b.key)) && hasEnough(after) && (!one || (yield* holdingSoon(after)));
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
