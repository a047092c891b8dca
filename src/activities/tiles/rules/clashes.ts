import type { MatchKey, Relation } from "../../../match/relation";
import { innerEdges } from "../frame";
import type { Edge, TilesDeal } from "../model";

export interface Clash {
  readonly a: Edge;
  readonly b: Edge;
}

/** Edges of one deal that fit although they do not stand against each other, once for each two texts. */
export function clashes(deal: TilesDeal, relation: Relation): Clash[] {
  const edges = deal.solved.flatMap((face) => face.filter((edge) => edge !== undefined));
  if (onlyMatesFit(deal, edges, relation)) return [];
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
      for (const place of places.get(key) ?? []) if (place > i) fitting.push(place);
    }
    for (const place of fitting.sort((p, q) => p - q)) {
      const b = edges[place];
      if (b && !mates.has(couple(a, b))) found.push({ a, b });
    }
  });
  return found;
}

/** Whether no more couples of edges fit than are laid against each other: all that are laid so do. */
function onlyMatesFit({ frame, solved }: TilesDeal, edges: readonly Edge[], relation: Relation): boolean {
  const standing = new Map<MatchKey, number>();
  for (const { key } of edges) standing.set(key, (standing.get(key) ?? 0) + 1);
  let fitting = 0;
  for (const { key } of edges) for (const other of relation.partners(key)) fitting += standing.get(other) ?? 0;
  const laid = innerEdges(frame).filter(([p]) => solved[p.cell]?.[p.side]).length;
  return fitting === 2 * laid;
}

function couple(a: Edge, b: Edge): string {
  const [p, q] = [a.source.start, b.source.start];
  return p < q ? `${p} ${q}` : `${q} ${p}`;
}
