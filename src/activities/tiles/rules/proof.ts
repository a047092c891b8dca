import type { Rule } from "../../../base/finding";
import type { Relation } from "../../../match/relation";
import { setOption } from "../../edits";
import { innerEdges } from "../frame";
import type { DealtTiles, Edge, TilesDeal } from "../model";
import { place, type TilesContext } from "./context";

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
  const found: Clash[] = [];
  edges.forEach((a, i) => {
    for (const b of edges.slice(i)) {
      if ((a !== b || relation.fits(a.key, a.key)) && relation.fits(a.key, b.key) && !mates.has(couple(a, b)))
        found.push({ a, b });
    }
  });
  return found;
}

function couple(a: Edge, b: Edge): string {
  return [a.source.start, b.source.start].sort((x, y) => x - y).join(" ");
}

/** Two pairs that share an answer on one side are reported by `duplicate-answer`. */
function sharedOnOneSide({ a, b }: Clash, { used }: DealtTiles): boolean {
  const at = (edge: Edge): { pair: number; side: "left" | "right" } | undefined => {
    for (const [pair, { left, right }] of used.entries()) {
      if (left.answers[0].range === edge.source) return { pair, side: "left" };
      if (right.answers[0].range === edge.source) return { pair, side: "right" };
    }
    return undefined;
  };
  const [p, q] = [at(a), at(b)];
  return p !== undefined && q !== undefined && p.side !== q.side;
}

export const ambiguousEdge: Rule<TilesContext> = {
  code: "ambiguous-edge",
  severity: "warning",
  title: "Two edges that fit although they are no pair",
  why: "A word of one pair answers a word of another, for instance because one pair's gloss is another pair's word. A learner may lay the two together. Where that leads to a second solution it is an error; the preview shows both. Give one of them another first answer, or take a pair out.",
  example: {
    wrong:
      "## Chains\n\n- lento = slow\n- slow = langsam\n- alto = tall\n- bajo = short\n\n```activity\nmake: tiles\n```",
    right: "## Chains\n\n- lento = slow\n- gordo = fat\n- alto = tall\n- bajo = short\n\n```activity\nmake: tiles\n```",
  },
  check: ({ dealt }) => {
    const { request, used, deals } = dealt;
    const seen = new Set<string>();
    return deals.flatMap((deal) =>
      clashes(deal, request.relation)
        .filter((clash) => !sharedOnOneSide(clash, dealt))
        .flatMap(({ a, b }) => {
          const [first, second] = a.source.start <= b.source.start ? [a, b] : [b, a];
          const key = couple(a, b);
          if (seen.has(key)) return [];
          seen.add(key);
          const several = deal.proof.status === "several";
          const pair = used.find(({ left, right }) =>
            [left, right].some(({ answers }) => answers[0].range === second.source),
          );
          return [
            {
              range: second.source,
              severity: several
                ? ("error" as const)
                : deal.proof.status === "one"
                  ? ("information" as const)
                  : ("warning" as const),
              message: `“${first.text}” and “${second.text}” fit, though they are no pair.${several ? " So the tiles can be laid in more than one way." : ""}${deal.proof.status === "one" ? " Other edges keep them apart: the solution is still the only one." : ""}`,
              related: [
                { range: first.source, message: "The other edge" },
                ...(several
                  ? [{ range: place(dealt), message: "This activity has a second solution; the preview shows both" }]
                  : []),
              ],
              fixes: pair
                ? [
                    {
                      title: `Take out “${pair.left.answers[0].text} = ${pair.right.answers[0].text}”`,
                      edits: [{ range: pair.block, text: "" }],
                    },
                  ]
                : [],
            },
          ];
        }),
    );
  },
};

export const severalSolutions: Rule<TilesContext> = {
  code: "several-solutions",
  severity: "error",
  title: "Tiles that can be laid in more than one way",
  why: "No two words are to blame, but the tiles as a whole allow a second layout, as with many blank inner edges. The preview shows both. Another seed, a smaller grid, or more pairs may help.",
  example: {
    wrong: "## Drinks\n\n- chá = tea\n- leite = milk\n\n```activity\nmake: tiles\ngrid: 3 x 3\nfill: blank\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ngrid: 2 x 2\n```",
  },
  check: ({ dealt }) => {
    const { request, options } = dealt;
    const hit = dealt.deals.find(
      (deal) => deal.proof.status === "several" && clashes(deal, request.relation).length === 0,
    );
    if (!hit) return [];
    const { block, unit } = request;
    const used = dealt.used.length;
    return [
      {
        range: place(dealt),
        message: `These tiles can be laid in ${hit.proof.capped ? "more than one way" : `${hit.proof.count} ways`}; the preview shows two of them side by side.`,
        fixes: [
          {
            title: `Use seed ${options.seed + 1}`,
            edits: [setOption(block, unit.text, "seed", String(options.seed + 1))],
          },
          ...(options.fill === "blank" && used >= 4
            ? [
                {
                  title: "Take the largest grid that the pairs fill",
                  edits: [setOption(block, unit.text, "grid", "auto")],
                  preferred: true,
                },
              ]
            : []),
        ],
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
  why: "The search stopped at its budget without a second solution and without a proof that there is none. This happens where a few words return very often. Another seed or fewer repeated answers help.",
  example: {
    wrong: "A section in which the same two answers stand for twenty words.",
    right: "Words with answers of their own.",
  },
  check: ({ dealt }) => {
    const open = dealt.deals.find(({ proof }) => proof.status === "unsettled");
    if (!open) return [];
    const { block, unit } = dealt.request;
    const next = dealt.options.seed + 1;
    return [
      {
        range: place(dealt),
        message: `It could not be settled whether these tiles have one solution (${open.proof.nodes} steps were tried).`,
        fixes: [{ title: `Use seed ${next}`, edits: [setOption(block, unit.text, "seed", String(next))] }],
      },
    ];
  },
};
