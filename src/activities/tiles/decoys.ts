import type { Range } from "../../base/range";
import { Recent } from "../../base/recent";
import { Random, upTo } from "../../base/seed";
import { fold } from "../../match/fold";
import { answerKey, type MatchKey } from "../../match/relation";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { toPrinted, wordCount } from "../printed";
import { pairsOf } from "../supply";
import type { Decoys, Edge } from "./model";
import type { TilesOptions } from "./options";
import { indexOf, structureKey } from "./structure";

/**
 * Words for outer edges that have no partner on any tile: those that the options name, or one side of pairs that the tiles
 * do not use, first of the activity's own sections, then of the rest of the unit. None has over a word more than
 * the longest text on the tiles, and those that have one more are taken last.
 */
export function chooseDecoys(
  request: DealRequest,
  options: TilesOptions,
  used: readonly Pair[],
  outer: number,
  stream: string,
): Decoys {
  const printed = new Set<MatchKey>();
  for (const pair of used) {
    printed.add(answerKey(pair.left.answers[0]));
    printed.add(answerKey(pair.right.answers[0]));
  }
  const { relation } = request;
  const partnersOf = (key: MatchKey): MatchKey[] => [...relation.partners(key)].filter((other) => printed.has(other));
  if (typeof options.decoys === "object") {
    const place = request.options.place("decoys");
    const entry = request.block.options.entries.find(({ key }) => key === "decoys");
    const misfits: { text: string; place: Range; answers: readonly Pair[] }[] = [];
    const edges: Edge[] = [];
    options.decoys.forEach((text, i) => {
      const source = entry?.items[i] ?? place ?? request.block.fence;
      const key = fold(text);
      // A decoy must not answer another decoy either, through a pair that no tile shows.
      const among = edges.map((edge) => edge.key).filter((other) => relation.fits(key, other));
      const partners = [...partnersOf(key), ...among];
      if (partners.length > 0 || printed.has(key)) {
        misfits.push({ text, place: source, answers: partners.flatMap((other) => relation.because(key, other)) });
      } else edges.push({ runs: [{ text }], text, key, source, lang: request.teaches });
    });
    return { edges: edges.slice(0, outer), wanted: options.decoys.length, misfits };
  }
  const wanted = Math.min(options.decoys ?? outer, outer);
  const picks = keptPicks(request, options, `${stream} ${wanted}`, () => drawn(request, used, wanted, stream, printed));
  const edges = picks.flatMap(({ pair, side }): Edge[] => {
    const answer = relation.pairs[pair]?.[side].answers[0];
    return answer ? [toPrinted(answer, side === "left" ? request.teaches : request.explains)] : [];
  });
  return { edges, wanted, misfits: [] };
}

/** One side of a pair of the unit, by its index. */
interface Pick {
  readonly pair: number;
  readonly side: "left" | "right";
}

const kept = new Recent<readonly Pick[]>(400);

/** What was drawn of late for requests of one structure. */
function keptPicks(request: DealRequest, options: TilesOptions, asked: string, draw: () => readonly Pick[]) {
  const structure = structureKey(request, options);
  return structure === undefined ? draw() : kept.get(`${asked} ${structure}`, draw);
}

function drawn(
  { sections, relation }: DealRequest,
  used: readonly Pair[],
  wanted: number,
  stream: string,
  printed: ReadonlySet<MatchKey>,
): readonly Pick[] {
  const shown = new Set(used);
  const own = sections.flatMap(pairsOf).filter((pair) => !shown.has(pair));
  const near = new Set(own);
  const others = relation.pairs.filter((pair) => !near.has(pair) && !shown.has(pair));
  const random = new Random(stream);
  const candidates = [own, others].flatMap((pool) =>
    random.shuffle(upTo(pool.length)).flatMap((i) => {
      const side = random.coin() ? ("left" as const) : ("right" as const);
      const pair = pool[i];
      return pair ? { pair, side, answer: pair[side].answers[0] } : [];
    }),
  );
  // A text of more words says by its length alone that it has no partner, and makes the words of all tiles smaller.
  const most = Math.max(
    ...used.flatMap(({ left, right }) => [left, right].map(({ answers }) => wordCount(answers[0]))),
  );
  const picks: Pick[] = [];
  const taken = new Set<MatchKey>();
  for (const more of [0, 1]) {
    for (const { pair, side, answer } of candidates) {
      if (picks.length === wanted) break;
      if (Math.max(0, wordCount(answer) - most) !== more) continue;
      const key = answerKey(answer);
      const partners = [...relation.partners(key)];
      if (printed.has(key) || taken.has(key) || partners.some((other) => printed.has(other) || taken.has(other))) {
        continue;
      }
      const index = indexOf(relation, pair);
      if (index === undefined) continue;
      taken.add(key);
      picks.push({ pair: index, side });
    }
  }
  return picks;
}
