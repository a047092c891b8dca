import { framesOf } from "./assembly";
import { at, type Stock } from "./stock";
import type { TilePuzzle } from "./tiles";

/** What became of a wrong start. */
interface Outcome {
  /** The most tiles that lay on it at one time. */
  readonly survives: number;
  /** Tiles laid on it, also those taken up again. */
  readonly nodes: number;
  readonly capped: boolean;
}

interface Choice {
  readonly x: number;
  readonly y: number;
  /** As the stock numbers states: 4 × type + turn. */
  readonly state: number;
}

/** The rectangle that laid tiles take up. */
interface Extent {
  readonly north: number;
  readonly east: number;
  readonly south: number;
  readonly west: number;
  /** Sides of it that are the frame's rim, since edges without a partner lie there; a bit each, clockwise from the north. */
  readonly closed: number;
}

interface Laid extends Choice {
  /** With the tiles laid before. */
  readonly extent: Extent;
}

/** Steps to the place at each side. */
const dx = [0, 1, 0, -1];
const dy = [-1, 0, 1, 0];

/**
 * A table on which tiles are laid one against another, without knowing where in the frame they are. See `difficultyOf` for
 * what a learner does here.
 */
export class Table {
  /** Room for a layout that grows in any direction from the middle. */
  private readonly width: number;
  /** State + 1 for each place; 0 where nothing lies. */
  private readonly places: Int32Array;
  private readonly frames: readonly (readonly [rows: number, columns: number])[];
  /** For each text of the stock whether an edge with it must have a neighbour. */
  private readonly bound: readonly boolean[];
  /** The states that show a text at a side, at 4 × text + side. */
  private readonly showing: readonly (readonly number[])[];
  private readonly fits: readonly ReadonlySet<number>[];
  /** For each state its sides without a partner, a bit each. */
  private readonly lone: Int32Array;
  private readonly left: Int32Array;
  private readonly laid: Laid[] = [];
  private nodes = 0;
  private cap = 0;
  private deepest = 0;

  constructor(
    private readonly puzzle: TilePuzzle,
    private readonly stock: Stock,
  ) {
    const told = framesOf(puzzle);
    this.frames =
      puzzle.turn === "free"
        ? told.flatMap(([r, c]) =>
            r === c
              ? [[r, c]]
              : [
                  [r, c],
                  [c, r],
                ],
          )
        : told;
    // A start is two tiles wide, and what grows from it never leaves the largest frame.
    this.width = 2 * Math.max(...this.frames.flat()) + 3;
    this.places = new Int32Array(this.width * this.width);
    this.bound = boundTexts(puzzle, stock, told);
    const showing = Array.from({ length: 4 * stock.texts.length }, (): number[] => []);
    stock.types.forEach(({ turns }, type) => {
      for (let state = 4 * type; state < 4 * type + turns; state++) {
        for (let side = 0; side < 4; side++) showing[4 * this.text(state, side) + side]?.push(state);
      }
    });
    this.showing = showing;
    this.fits = stock.partners.map((partners) => new Set(partners));
    this.lone = Int32Array.from({ length: 4 * stock.types.length }, (_, state) =>
      [0, 1, 2, 3].reduce((set, side) => set | (this.fits[this.text(state, side)]?.size === 0 ? 1 << side : 0), 0),
    );
    this.left = Int32Array.from(stock.types, ({ tiles }) => tiles.length);
  }

  /** Lays two sides (4 × type + side) against each other and goes on from there, with at most `cap` further tiles. */
  tryStart(a: number, b: number, cap: number): Outcome {
    // The first faces east where tiles may be turned, so that the second lies to its right.
    const facing = this.puzzle.turn === "free" ? 1 : a & 3;
    const middle = this.width >> 1;
    this.cap = cap;
    this.nodes = 0;
    this.deepest = 0;
    let capped = false;
    if (this.put(middle, middle, this.turned(a, facing))) {
      const [x, y] = [middle + (dx[facing] ?? 0), middle + (dy[facing] ?? 0)];
      if (this.put(x, y, this.turned(b, facing ^ 2))) capped = !this.goOn(0);
    }
    while (this.laid.length > 0) this.takeUp();
    return { survives: this.deepest, nodes: this.nodes, capped };
  }

  /** The state of a side's type in which the side faces `facing`; types that look alike when turned have fewer states. */
  private turned(side: number, facing: number): number {
    const type = side >> 2;
    return 4 * type + (((facing - side) & 3) % (this.stock.types[type]?.turns ?? 4));
  }

  /** Searches all ways to go on with `depth` tiles on the start. False when the cap was reached. */
  private goOn(depth: number): boolean {
    this.deepest = Math.max(this.deepest, depth);
    for (const { x, y, state } of this.choices()) {
      if (this.nodes >= this.cap) return false;
      this.nodes++;
      this.put(x, y, state);
      const searched = this.goOn(depth + 1);
      this.takeUp();
      if (!searched) return false;
    }
    return true;
  }

  /** What can be laid at the place that must be filled and leaves the least choice; where there is none, at any place. */
  private choices(): readonly Choice[] {
    const seen = new Set<number>();
    const open: Choice[] = [];
    let fewest: readonly Choice[] | undefined;
    for (const { x, y, state } of this.laid) {
      for (let side = 0; side < 4; side++) {
        const text = this.text(state, side);
        if (this.fits[text]?.size === 0) continue;
        const [px, py] = [x + (dx[side] ?? 0), y + (dy[side] ?? 0)];
        const place = py * this.width + px;
        if (at(this.places, place) !== 0) continue;
        if (!this.bound[text]) {
          if (!fewest) open.push(...this.choicesAt(px, py, side ^ 2, text));
          continue;
        }
        if (seen.has(place)) continue;
        seen.add(place);
        const choices = this.choicesAt(px, py, side ^ 2, text);
        if (choices.length === 0) return [];
        if (!fewest || choices.length < fewest.length) fewest = choices;
      }
    }
    return fewest ?? distinct(open);
  }

  /** The tiles that fit a place whose `side` lies against a text. */
  private choicesAt(x: number, y: number, side: number, text: number): Choice[] {
    const found: Choice[] = [];
    for (const partner of this.stock.partners[text] ?? []) {
      for (const state of this.showing[4 * partner + side] ?? []) {
        if (at(this.left, state >> 2) > 0 && this.with(x, y, state)) found.push({ x, y, state });
      }
    }
    return found;
  }

  private put(x: number, y: number, state: number): boolean {
    const extent = at(this.left, state >> 2) === 0 ? undefined : this.with(x, y, state);
    if (!extent) return false;
    this.places[y * this.width + x] = state + 1;
    this.left[state >> 2] = at(this.left, state >> 2) - 1;
    this.laid.push({ x, y, state, extent });
    return true;
  }

  private takeUp(): void {
    const last = this.laid.pop();
    if (!last) return;
    this.places[last.y * this.width + last.x] = 0;
    this.left[last.state >> 2] = at(this.left, last.state >> 2) + 1;
  }

  /** What the laid tiles and one more take up; undefined where an edge that it touches does not fit, or where there is no room. */
  private with(x: number, y: number, state: number): Extent | undefined {
    for (let side = 0; side < 4; side++) {
      const there = at(this.places, (y + (dy[side] ?? 0)) * this.width + x + (dx[side] ?? 0)) - 1;
      if (there >= 0 && !this.fits[this.text(state, side)]?.has(this.text(there, side ^ 2))) return undefined;
    }
    const extent = this.grown(x, y, state);
    if (!extent) return undefined;
    const [high, wide] = [extent.south - extent.north + 1, extent.east - extent.west + 1];
    const [fullHigh, fullWide] = [(extent.closed & 5) === 5, (extent.closed & 10) === 10];
    const hasRoom = this.frames.some(
      ([rows, columns]) => (fullHigh ? high === rows : high <= rows) && (fullWide ? wide === columns : wide <= columns),
    );
    return hasRoom ? extent : undefined;
  }

  /** Undefined where a tile would lie beyond a rim, or have its own rim where tiles lie beyond. */
  private grown(x: number, y: number, state: number): Extent | undefined {
    const now = this.laid.at(-1)?.extent ?? { north: y, east: x, south: y, west: x, closed: 0 };
    const north = Math.min(now.north, y);
    const east = Math.max(now.east, x);
    const south = Math.max(now.south, y);
    const west = Math.min(now.west, x);
    const moved =
      (north < now.north ? 1 : 0) | (east > now.east ? 2 : 0) | (south > now.south ? 4 : 0) | (west < now.west ? 8 : 0);
    const outermost = (y === north ? 1 : 0) | (x === east ? 2 : 0) | (y === south ? 4 : 0) | (x === west ? 8 : 0);
    const lone = at(this.lone, state);
    if (now.closed & moved || lone & ~outermost) return undefined;
    return { north, east, south, west, closed: now.closed | lone };
  }

  private text(state: number, side: number): number {
    return at(this.stock.textAt, 4 * state + side);
  }
}

/** Texts that may not face out: those that the puzzle does not allow there, or all with a partner where the others fill the rim. */
function boundTexts(
  puzzle: TilePuzzle,
  stock: Stock,
  frames: readonly (readonly [rows: number, columns: number])[],
): boolean[] {
  const counts = stock.sides();
  const lone = stock.partners.reduce((sum, { length }, text) => sum + (length === 0 ? at(counts, text) : 0), 0);
  const full = frames.every(([rows, columns]) => 2 * (rows + columns) === lone);
  const allowed = puzzle.outer && new Set(puzzle.outer);
  return stock.texts.map((text, i) => stock.partners[i]?.length !== 0 && (full || allowed?.has(text) === false));
}

function distinct(choices: readonly Choice[]): readonly Choice[] {
  return [...new Map(choices.map((each) => [`${each.x} ${each.y} ${each.state}`, each])).values()];
}
