import { isAssembly, lookOf, turnOf } from "./assembly";
import { at, type Stock } from "./stock";
import type { Assembly, TilePuzzle } from "./tiles";

/**
 * A second assembly near an intended one: one tile turned, or two exchanged, everything else left where it is. Finding none
 * proves nothing (three may go round in a ring).
 */
export function witness(puzzle: TilePuzzle, stock: Stock, outer: Int32Array, intended: Assembly): Assembly | undefined {
  const near = new Neighbourhood(stock, outer, intended);
  const look = lookOf(puzzle, intended);
  const other = (replaced: Assembly) => isAssembly(puzzle, replaced) && lookOf(puzzle, replaced) !== look;
  const cells = intended.cells.length;
  for (let cell = 0; cell < cells; cell++) {
    for (const state of near.states(near.fitting(cell), near.typeIn(cell))) {
      if (state === near.stateIn(cell)) continue;
      const replaced = near.withStates([[cell, state, cell]]);
      if (other(replaced)) return replaced;
    }
  }
  const fitting = Array.from({ length: cells }, (_, cell) => near.fitting(cell));
  for (let b = 1; b < cells; b++) {
    for (let a = 0; a < b; a++) {
      const side = near.sideTowards(a, b);
      const intoA = near.states(side < 0 ? fitting[a] : near.fitting(a, side), near.typeIn(b));
      if (intoA.length === 0) continue;
      const intoB = near.states(side < 0 ? fitting[b] : near.fitting(b, side ^ 2), near.typeIn(a));
      for (const stateA of intoA) {
        for (const stateB of intoB) {
          // Tiles that print alike have changed places: there is nothing to see, and there may be thousands of these.
          if (stateA === near.stateIn(a) && stateB === near.stateIn(b)) continue;
          const replaced = near.withStates([
            [a, stateA, b],
            [b, stateB, a],
          ]);
          if (other(replaced)) return replaced;
        }
      }
    }
  }
  return undefined;
}

/** An assembly as states of the stock, and what would fit into a cell among its neighbours. */
class Neighbourhood {
  constructor(
    private readonly stock: Stock,
    private readonly outer: Int32Array,
    private readonly assembly: Assembly,
  ) {}

  typeIn(cell: number): number {
    return at(this.stock.typeOf, this.assembly.cells[cell]?.tile ?? 0);
  }

  stateIn(cell: number): number {
    const placed = this.assembly.cells[cell] ?? { tile: 0, turn: 0 };
    return 4 * this.typeIn(cell) + turnOf(placed.turn - at(this.stock.turnOf, placed.tile));
  }

  /** The side of `a` (above or left of `b`) at which `b` lies; -1 where they are apart. */
  sideTowards(a: number, b: number): number {
    if (b === a + this.assembly.columns) return 2;
    return b === a + 1 && b % this.assembly.columns !== 0 ? 1 : -1;
  }

  /** The set of states that fit among the cell's neighbours, leaving out the one at side `but`. */
  fitting(cell: number, but = -1): Int32Array {
    const { rows, columns } = this.assembly;
    const { stock } = this;
    const set = stock.all.slice();
    const row = Math.floor(cell / columns);
    const column = cell % columns;
    const outside = [row === 0, column === columns - 1, row === rows - 1, column === 0];
    const beside = [cell - columns, cell + 1, cell + columns, cell - 1];
    for (let side = 0; side < 4; side++) {
      if (side === but) continue;
      const other = beside[side] ?? 0;
      const [sets, from] = outside[side]
        ? [this.outer, side * stock.words]
        : [stock.fitting, stock.against(side, this.textOf(other, side ^ 2))];
      for (let word = 0; word < stock.words; word++) set[word] = at(set, word) & at(sets, from + word);
    }
    return set;
  }

  /** The states of one type in a set. */
  states(set: Int32Array | undefined, type: number): number[] {
    const turns = set ? at(set, type >> 3) >>> ((type & 7) << 2) : 0;
    return [0, 1, 2, 3].filter((turn) => turns & (1 << turn)).map((turn) => 4 * type + turn);
  }

  /** The assembly with some cells [cell, state, cell that the tile comes from] laid afresh. */
  withStates(changes: readonly (readonly [cell: number, state: number, from: number])[]): Assembly {
    const cells = [...this.assembly.cells];
    for (const [cell, state, from] of changes) {
      const tile = this.assembly.cells[from]?.tile ?? 0;
      cells[cell] = { tile, turn: turnOf(at(this.stock.turnOf, tile) + state) };
    }
    return { ...this.assembly, cells };
  }

  private textOf(cell: number, side: number): number {
    return at(this.stock.textAt, 4 * this.stateIn(cell) + side);
  }
}
