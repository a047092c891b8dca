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

interface Laid {
  readonly x: number;
  readonly y: number;
  /** As the stock numbers states: 4 × type + turn. */
  readonly state: number;
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
  private choices(): readonly Laid[] {
    const seen = new Set<number>();
    const open: Laid[] = [];
    let fewest: readonly Laid[] | undefined;
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
  private choicesAt(x: number, y: number, side: number, text: number): Laid[] {
    const found: Laid[] = [];
    for (const partner of this.stock.partners[text] ?? []) {
      for (const state of this.showing[4 * partner + side] ?? []) {
        if (at(this.left, state >> 2) > 0 && this.mayLie(x, y, state)) found.push({ x, y, state });
      }
    }
    return found;
  }

  private put(x: number, y: number, state: number): boolean {
    if (at(this.left, state >> 2) === 0 || !this.mayLie(x, y, state)) return false;
    this.places[y * this.width + x] = state + 1;
    this.left[state >> 2] = at(this.left, state >> 2) - 1;
    this.laid.push({ x, y, state });
    return true;
  }

  private takeUp(): void {
    const last = this.laid.pop();
    if (!last) return;
    this.places[last.y * this.width + last.x] = 0;
    this.left[last.state >> 2] = at(this.left, last.state >> 2) + 1;
  }

  /** Whether all edges that a tile would touch fit, and the whole still has room in a frame. */
  private mayLie(x: number, y: number, state: number): boolean {
    for (let side = 0; side < 4; side++) {
      const there = at(this.places, (y + (dy[side] ?? 0)) * this.width + x + (dx[side] ?? 0)) - 1;
      if (there >= 0 && !this.fits[this.text(state, side)]?.has(this.text(there, side ^ 2))) return false;
    }
    return this.hasRoom({ x, y, state });
  }

  /**
   * Whether some frame has room for the laid tiles and one more. An edge without a partner must lie on the rim: no tile lies
   * beyond it, and two opposite ones are a frame's width apart.
   */
  private hasRoom(more: Laid): boolean {
    const far = this.width;
    let [west, east, north, south] = [far, 0, far, 0];
    // The lines on which rims lie, where that is known: the nearest and the farthest on which an edge asks for one.
    const rims = [far, 0, far, 0, far, 0, far, 0];
    for (const tile of [...this.laid, more]) {
      const { x, y } = tile;
      west = Math.min(west, x);
      east = Math.max(east, x);
      north = Math.min(north, y);
      south = Math.max(south, y);
      for (let side = 0; side < 4; side++) {
        if (this.fits[this.text(tile.state, side)]?.size !== 0) continue;
        const line = side & 1 ? x : y;
        rims[2 * side] = Math.min(rims[2 * side] ?? far, line);
        rims[2 * side + 1] = Math.max(rims[2 * side + 1] ?? 0, line);
      }
    }
    const [n0 = far, n1 = 0, e0 = far, e1 = 0, s0 = far, s1 = 0, w0 = far, w1 = 0] = rims;
    if (n1 > north || w1 > west || e0 < east || s0 < south) return false;
    const [high, wide] = [south - north + 1, east - west + 1];
    const [closedHigh, closedWide] = [n0 !== far && s1 !== 0, w0 !== far && e1 !== 0];
    return this.frames.some(
      ([rows, columns]) =>
        (closedHigh ? high === rows : high <= rows) && (closedWide ? wide === columns : wide <= columns),
    );
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

function distinct(choices: readonly Laid[]): readonly Laid[] {
  return [...new Map(choices.map((each) => [`${each.x} ${each.y} ${each.state}`, each])).values()];
}
