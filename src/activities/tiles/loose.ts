import { finished } from "../../base/steps";
import type { Matching } from "../../match/look-alikes";
import { innerEdges } from "./frame";
import type { DealtTiles, Edge, TileFace, TilesDeal } from "./model";
import { judging } from "./puzzle";

/** Search nodes that are spent: where tiles are loose, a second way is found at once. */
const budget = 500;

const known = new WeakMap<TilesDeal, boolean>();

/**
 * Whether the blank edges alone let the tiles be laid in several ways: they would, though each word fitted nothing but its own
 * partner. False also where that cannot soon be said.
 */
export function isLooseByBlanks({ options }: Pick<DealtTiles, "options">, deal: TilesDeal): boolean {
  const found = known.get(deal) ?? judgeApart(options, deal) === "several";
  known.set(deal, found);
  return found;
}

/** The proof of the same tiles with words that fit nothing but their own partners. */
function judgeApart(options: DealtTiles["options"], { frame, solved }: TilesDeal): string {
  const names = solved.map((face, cell) => face.map((_, side) => `${cell} ${side}`));
  const partners = new Map<string, ReadonlySet<string>>();
  for (const [a, b] of innerEdges(frame)) {
    const [one, other] = [`${a.cell} ${a.side}`, `${b.cell} ${b.side}`];
    partners.set(one, new Set([other])).set(other, new Set([one]));
  }
  const named = (edge: Edge | undefined, name: string): Edge | undefined =>
    edge && { runs: [{ text: name }], text: name, key: name, source: edge.source, lang: edge.lang };
  const apart = solved.map(([n, e, s, w], cell): TileFace => {
    const [a = "", b = "", c = "", d = ""] = names[cell] ?? [];
    return [named(n, a), named(e, b), named(s, c), named(w, d)];
  });
  const matching: Matching = {
    fits: (a, b) => partners.get(a)?.has(b) === true,
    partners: (key) => partners.get(key) ?? new Set(),
  };
  return finished(judging(frame, apart, matching, options, budget)).proof.status;
}
