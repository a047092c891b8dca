import { dealCode } from "../../base/mark";
import { Recent } from "../../base/recent";
import { Random, upTo } from "../../base/seed";
import { answerKey, type MatchKey } from "../../match/relation";
import type { TileProof } from "../../prove/tiles";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { copiesOf } from "../copies";
import type { Level } from "../options";
import { toPrinted } from "../printed";
import { pairsOf, takeSpread } from "../supply";
import { chooseDecoys } from "./decoys";
import { type Frame, innerCount, innerEdges, largestFrame, outerCount, outerEdges } from "./frame";
import {
  type DealtTile,
  type DealtTiles,
  type Decoys,
  type Edge,
  quarter,
  type TileFace,
  type TilesDeal,
} from "./model";
import { levelsOf, type TilesOptions, tilesOptions, writtenFrame } from "./options";
import { proveDeal } from "./puzzle";
import { structureKey } from "./structure";

/** Arrangements tried before the best so far is taken. */
const attempts = 40;

export function dealTiles(request: DealRequest): DealtTiles {
  const options = tilesOptions(request.options);
  const pairs = takeSpread(request.sections.map(pairsOf), options.take, String(options.seed));
  const frame = writtenFrame(options.grid) ?? largestFrame(pairs.length);
  const needed = frame ? innerCount(frame) : 4;
  const base = { request, options, pairs };
  if (!frame || pairs.length === 0 || (pairs.length < needed && options.fill === "words")) {
    return { ...base, summary: "tiles", deals: [], used: [], ...(frame ? { frame } : {}) };
  }
  const used = choosePairs(pairs, needed, request, options);
  const plans = levelsOf(options).flatMap((level) => upTo(options.versions).map((i) => ({ level, version: i + 1 })));
  const copies = copiesOf(options, request.classes, plans);
  const deals = plans.map((plan, i) => ({ ...dealOne(base, frame, used, plan), copies: copies[i] ?? 1 }));
  return { ...base, frame, used, deals, summary: `${frame.rows} × ${frame.columns} tiles` };
}

/**
 * Takes `needed` pairs by the seed, passing over pairs that fit one already taken as long as others are left. In the order
 * of the unit.
 */
function choosePairs(
  pairs: readonly Pair[],
  needed: number,
  request: DealRequest,
  options: TilesOptions,
): readonly Pair[] {
  if (pairs.length <= needed) return pairs;
  const order = new Random(`tiles/choice/${options.seed}`).shuffle(upTo(pairs.length));
  const taken = new Set<number>();
  const keys = new Set<MatchKey>();
  const spare = pairs.length - needed;
  let passed = 0;
  for (const i of order) {
    if (taken.size === needed) break;
    const pair = pairs[i] as Pair;
    const own = [answerKey(pair.left.answers[0]), answerKey(pair.right.answers[0])];
    const clash = own.some(
      (key) => keys.has(key) || [...request.relation.partners(key)].some((other) => keys.has(other)),
    );
    if (clash && passed < spare) {
      passed++;
      continue;
    }
    taken.add(i);
    for (const key of own) keys.add(key);
  }
  return pairs.filter((_, i) => taken.has(i));
}

interface Plan {
  readonly level: Level;
  readonly version: number;
}

type Arranged = Omit<TilesDeal, "copies">;

/** Which attempt was taken, and its proof, by the structure that it hangs on. */
const settled = new Recent<{ readonly attempt: number; readonly proof: TileProof }>(1000);

/** Deals until one solution is proven; else keeps the first arrangement, with what the proof found. */
function dealOne(
  base: { readonly request: DealRequest; readonly options: TilesOptions },
  frame: Frame,
  used: readonly Pair[],
  plan: Plan,
): Arranged {
  const structure = structureKey(base.request, base.options);
  if (structure === undefined) return search(base, frame, used, plan);
  let found: Arranged | undefined;
  const { attempt, proof } = settled.get(`${plan.level} ${plan.version} ${structure}`, () => {
    found = search(base, frame, used, plan);
    return { attempt: found.attempt, proof: found.proof };
  });
  return found ?? arrange(base, frame, used, plan, attempt, proof);
}

function search(
  base: { readonly request: DealRequest; readonly options: TilesOptions },
  frame: Frame,
  used: readonly Pair[],
  plan: Plan,
): Arranged {
  let first: Arranged | undefined;
  for (let attempt = 0; attempt < attempts; attempt++) {
    const deal = arrange(base, frame, used, plan, attempt);
    if (deal.proof.status === "one") return deal;
    first ??= deal;
  }
  return first ?? arrange(base, frame, used, plan, 0);
}

function arrange(
  { request, options }: { readonly request: DealRequest; readonly options: TilesOptions },
  frame: Frame,
  used: readonly Pair[],
  { level, version }: Plan,
  attempt: number,
  known?: TileProof,
): Arranged {
  // The levels of a version share their inside, so that one look at either key serves both; their order of dealing differs.
  const stream = `tiles/${options.seed}/${version}/${attempt}`;
  const inside = new Random(`${stream}/inside`);
  const cells: (Edge | undefined)[][] = upTo(frame.rows * frame.columns).map(() => [
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
  const edges = inside.shuffle(innerEdges(frame));
  used.forEach((pair, i) => {
    const edge = edges[i];
    if (!edge) return;
    const [a, b] = inside.coin() ? edge : [edge[1], edge[0]];
    put(cells, a, toPrinted(pair.left.answers[0], request.teaches));
    put(cells, b, toPrinted(pair.right.answers[0], request.explains));
  });
  const decoys =
    level === "hard" ? chooseDecoys(request, options, used, outerCount(frame), `${stream}/outside`) : noDecoys;
  const spots = new Random(`${stream}/outside/places`).shuffle(outerEdges(frame));
  decoys.edges.forEach((edge, i) => {
    const spot = spots[i];
    if (spot) put(cells, spot, edge);
  });
  const order = new Random(`${stream}/order/${level}`);
  const solved = cells.map(([n, e, s, w]): TileFace => [n, e, s, w]);
  const tiles = order
    .shuffle(upTo(solved.length))
    .map((cell): DealtTile => ({ cell, turn: options.turn === "free" ? quarter(order.below(4)) : 0 }));
  const proof = known ?? proveDeal(frame, solved, request.relation, options);
  const faces = solved.map((face) => face.map((edge) => (edge ? [edge.picture?.path ?? "", edge.runs] : 0)));
  const code = dealCode(JSON.stringify(["tiles", level, version, options.turn, frame, tiles, faces]));
  return { code, level, version, attempt, frame, solved, tiles, decoys, proof };
}

const noDecoys: Decoys = { edges: [], wanted: 0, misfits: [] };

function put(cells: (Edge | undefined)[][], spot: { readonly cell: number; readonly side: number }, edge: Edge): void {
  const cell = cells[spot.cell];
  if (cell) cell[spot.side] = edge;
}
