import type { Report, Rule } from "../../../base/finding";
import { answerKey, type MatchKey, type Relation } from "../../../match/relation";
import type { Answer, Pair } from "../../../unit/unit";
import { innerEdges } from "../frame";
import type { DealtTiles, Edge, TilesDeal } from "../model";
import { blanksIn, causeFixes, otherFrame } from "./causes";
import { place, type TilesContext } from "./context";
import { anotherSeed } from "./trial";

interface Clash {
  readonly a: Edge;
  readonly b: Edge;
}

/** Edges of one deal that fit although they do not stand against each other, once for each two texts. */
export function clashes(deal: TilesDeal, relation: Relation): Clash[] {
  const edges = deal.solved.flatMap((face) => face.filter((edge) => edge !== undefined));
  const mates = new Set(
    innerEdges(deal.frame).map(([p, q]) => {
      const [a, b] = [deal.solved[p.cell]?.[p.side], deal.solved[q.cell]?.[q.side]];
      return a && b ? couple(a, b) : "";
    }),
  );
  const places = new Map<MatchKey, number[]>();
  edges.forEach(({ key }, i) => {
    const known = places.get(key);
    if (known) known.push(i);
    else places.set(key, [i]);
  });
  const found: Clash[] = [];
  edges.forEach((a, i) => {
    const fitting: number[] = [];
    for (const key of relation.partners(a.key)) {
      for (const place of places.get(key) ?? []) if (place >= i) fitting.push(place);
    }
    for (const place of fitting.sort((p, q) => p - q)) {
      const b = edges[place];
      if (b && !mates.has(couple(a, b))) found.push({ a, b });
    }
  });
  return found;
}

function couple(a: Edge, b: Edge): string {
  const [p, q] = [a.source.start, b.source.start];
  return p < q ? `${p} ${q}` : `${q} ${p}`;
}

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
    ? " So the tiles can be laid in more than one way."
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
    fixes: second
      ? [
          {
            title: `Take out “${second.left.answers[0].text} = ${second.right.answers[0].text}”`,
            edits: [{ range: second.block, text: "" }],
          },
        ]
      : [],
  };
}

export const severalSolutions: Rule<TilesContext> = {
  code: "several-solutions",
  severity: "error",
  title: "Tiles that can be laid in more than one way",
  why: "No two words are to blame, but the tiles as a whole allow a second layout, because many inner edges are blank, or because the same tiles also fill a rectangle with other rows and columns and `frame: untold` does not say which is meant. The preview shows both. Another seed, a smaller grid, or more pairs may help.",
  example: {
    wrong: "## Drinks\n\n- chá = tea\n- leite = milk\n\n```activity\nmake: tiles\ngrid: 3 x 3\nfill: blank\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ngrid: 2 x 2\n```",
  },
  check: ({ dealt }) => {
    const { request } = dealt;
    const hit = dealt.deals.find(
      (deal) => deal.proof.status === "several" && clashes(deal, request.relation).length === 0,
    );
    if (!hit) return [];
    const other = otherFrame(dealt, hit);
    const message = other
      ? `These tiles can also be laid as ${other}, since learners are not told rows and columns; the preview shows both.`
      : `These tiles can be laid in ${hit.proof.capped ? "more than one way" : `${hit.proof.count} ways`}; the preview shows two of them side by side.`;
    return [
      {
        range: place(dealt),
        message: `${message}${blanksIn(dealt, hit)}`,
        fixes: [...anotherSeed(dealt), ...causeFixes(dealt, hit)],
      },
    ];
  },
};

export const noSolution: Rule<TilesContext> = {
  code: "no-solution",
  severity: "error",
  title: "Tiles that cannot be laid",
  why: "The prover found that no layout makes all touching edges fit, not even the one that was meant. This points to a fault in the program: please report it with the unit.",
  example: { wrong: "No unit is known that gives this.", right: "Every unit." },
  check: ({ dealt }) =>
    dealt.deals.some(({ proof }) => proof.status === "none")
      ? [{ range: place(dealt), message: "No layout of these tiles makes all touching edges fit." }]
      : [],
};

export const unsettledProof: Rule<TilesContext> = {
  code: "unsettled-proof",
  severity: "warning",
  title: "Not settled whether there is one solution",
  why: "The search stopped at its budget without a second solution and without a proof that there is none. This happens where a few words return very often, or where many inner edges are blank. Another seed, fewer repeated answers, a smaller grid or more pairs help.",
  example: {
    wrong: "A section in which the same two answers stand for twenty words.",
    right: "Words with answers of their own.",
  },
  check: ({ dealt }) => {
    const open = dealt.deals.find(({ proof }) => proof.status === "unsettled");
    if (!open) return [];
    return [
      {
        range: place(dealt),
        message: `It could not be settled whether these tiles have one solution (${open.proof.nodes} steps were tried).${blanksIn(dealt, open)}`,
        fixes: [...anotherSeed(dealt), ...causeFixes(dealt, open)],
      },
    ];
  },
};
