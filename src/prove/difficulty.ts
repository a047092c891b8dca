import { relationOf } from "./relation";
import { at, Stock } from "./stock";
import type { Assembly, TileEdges, TilePuzzle } from "./tiles";
import { Table } from "./wrong-start";

/** How hard a puzzle of tiles is to lay, as far as that can be counted. Whole numbers, the same on every machine. */
export interface Difficulty {
  /** Pairs of edges with words that fit each other and do not lie together in the solution. */
  readonly wrongNeighbours: number;
  /** The most tiles that go on a wrong start before it must fail. */
  readonly survives: number;
  /** Tiles laid in vain when each wrong neighbour is tried once: the neighbour itself and what goes on it. */
  readonly detour: number;
  /** The work ran out: `survives` and `detour` are at least so much. */
  readonly capped: boolean;
  /** Tiles laid to find out. */
  readonly nodes: number;
}

export interface DifficultyOptions {
  /** The solution. */
  readonly intended: Assembly;
  /** The text that stands for an empty edge; an empty edge is no word to go by, so that it is no wrong neighbour. */
  readonly blank?: number;
  /** Tiles to lay at the most (default 1500). */
  readonly budget?: number;
}

const usualBudget = 1500;
/** What a start has at least, so that it gets somewhere where they are very many. */
const leastShare = 10;

/**
 * How many wrong neighbours a learner can try, and how far a wrong start survives. Our measure, no published source.
 *
 * - A *match* is two edges of two different tiles that fit each other and can be laid together (where tiles keep their turn,
 *   only a north against a south and a west against an east). It is a *wrong neighbour* unless it looks like one of the
 *   solution's: exchanging tiles that print alike is no mistake.
 * - A *wrong start* is a wrong neighbour laid on an empty table, of its tiles the one with the lower number to the left where
 *   tiles may be turned. From there the learner goes on: at each step at the place beside the laid tiles that must be filled
 *   and that the fewest of the tiles left fit (of several the first, by tiles as they were laid and by sides clockwise from
 *   the top), with each of the tiles that fit in turn. A tile fits when all edges that it touches fit, when the whole still
 *   has room in the frame, and when no edge without a partner comes to lie inside. A place must be filled where an edge lies
 *   that may not face out; only where there is none, the learner goes on at any place. A wrong start *survives* as many
 *   tiles as this search ever has laid on it, before it meets a place that no tile fits.
 *
 * All texts without a partner count as one, so that an arrangement measures the same with blank edges and with decoys
 * outside; but where blank lies against blank inside, blank edges outside fit those, and decoys do not. The budget is shared
 * evenly among the wrong starts; each costs one, and one more for each tile laid on it. Where it does not suffice for all,
 * those that are tried stand evenly spread in their list.
 */
export function difficultyOf(puzzle: TilePuzzle, options: DifficultyOptions): Difficulty {
  const plain = withOneNothing(puzzle);
  const stock = new Stock(plain);
  const starts = wrongMatches(plain, stock, options);
  const wrongNeighbours = starts.reduce((sum, { ways }) => sum + ways, 0);
  const budget = options.budget ?? usualBudget;
  let [left, survives, detour, capped] = [budget, 0, wrongNeighbours, false];
  const table = starts.length > 0 ? new Table(plain, stock) : undefined;
  spread(starts, Math.ceil((starts.length * leastShare) / Math.max(1, budget))).forEach(({ a, b, ways }, i) => {
    const share = Math.min(left, Math.max(leastShare, Math.ceil(left / (starts.length - i))));
    if (!table || share < 1) {
      capped = true;
      return;
    }
    const outcome = table.tryStart(a, b, share - 1);
    left -= 1 + outcome.nodes;
    survives = Math.max(survives, outcome.survives);
    detour += ways * outcome.survives;
    capped ||= outcome.capped;
  });
  return { wrongNeighbours, survives, detour, capped, nodes: budget - left };
}

/** Every `step`-th of a list, then those that come after them, and so on. */
function spread<Item>(list: readonly Item[], step: number): Item[] {
  return Array.from({ length: step }, (_, first) => list.filter((_item, i) => i % step === first)).flat();
}

/** The puzzle with one and the same text for all that fits nothing. */
function withOneNothing(puzzle: TilePuzzle): TilePuzzle {
  const relation = relationOf(puzzle);
  const nothing = Math.max(puzzle.partners.length, ...puzzle.tiles.flat()) + 1;
  const plain = (text: number): number => (relation.get(text)?.size ? text : nothing);
  const tiles = puzzle.tiles.map(([n, e, s, w]): TileEdges => [plain(n), plain(e), plain(s), plain(w)]);
  return { ...puzzle, tiles, ...(puzzle.outer ? { outer: puzzle.outer.map(plain) } : {}) };
}

/** One side of a type, numbered 4 × type + side; of sides that a turn of the type brings to look alike, the first. */
export type TypeSide = number;

interface WrongMatch {
  readonly a: TypeSide;
  readonly b: TypeSide;
  /** How many pairs of edges look like this match. */
  readonly ways: number;
}

function wrongMatches(puzzle: TilePuzzle, stock: Stock, { intended, blank }: DifficultyOptions): WrongMatch[] {
  const free = puzzle.turn === "free";
  const standing = new Map<number, TypeSide[]>();
  stock.types.forEach(({ turns }, type) => {
    for (let side = 0; side < (free ? turns : 4); side++) {
      const text = at(stock.textAt, 16 * type + side);
      if (stock.texts[text] !== blank) standing.set(text, [...(standing.get(text) ?? []), 4 * type + side]);
    }
  });
  const right = rightMatches(stock, intended, free);
  const matches: WrongMatch[] = [];
  for (const [text, sides] of standing) {
    for (const partner of stock.partners[text] ?? []) {
      for (const a of sides) {
        for (const b of standing.get(partner) ?? []) {
          if (b < a || right.has(matchKey(a, b))) continue;
          if (!free && ((a ^ b) & 3) !== 2) continue;
          const ways = waysOf(stock, a, b, free);
          if (ways > 0) matches.push({ a, b, ways });
        }
      }
    }
  }
  return matches.sort((p, q) => p.a - q.a || p.b - q.b);
}

function matchKey(a: TypeSide, b: TypeSide): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}

/** How many pairs of edges of two different tiles are sides `a` and `b` of their types. */
function waysOf(stock: Stock, a: TypeSide, b: TypeSide, free: boolean): number {
  const alike = (side: TypeSide): number => (free ? 4 / (stock.types[side >> 2]?.turns ?? 4) : 1);
  const tiles = (side: TypeSide): number => stock.types[side >> 2]?.tiles.length ?? 0;
  if (a >> 2 !== b >> 2) return tiles(a) * alike(a) * tiles(b) * alike(b);
  const ordered = tiles(a) * (tiles(a) - 1) * alike(a) * alike(b);
  return a === b ? ordered / 2 : ordered;
}

/** How the neighbours of the solution match. */
function rightMatches(stock: Stock, { rows, columns, cells }: Assembly, free: boolean): Set<string> {
  const sideAt = (cell: number, side: number): TypeSide => {
    const { tile, turn } = cells[cell] ?? { tile: 0, turn: 0 };
    const type = at(stock.typeOf, tile);
    const own = (side - turn + at(stock.turnOf, tile)) & 3;
    return 4 * type + (free ? own % (stock.types[type]?.turns ?? 4) : own);
  };
  const keys = new Set<string>();
  for (let cell = 0; cell < rows * columns; cell++) {
    if ((cell + 1) % columns !== 0) keys.add(matchKey(sideAt(cell, 1), sideAt(cell + 1, 3)));
    if (cell + columns < rows * columns) keys.add(matchKey(sideAt(cell, 2), sideAt(cell + columns, 0)));
  }
  return keys;
}
