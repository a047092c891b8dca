import type { Balance } from "./balance";
import type { Stock } from "./stock";
import { Trail } from "./trail";

/** Domains of at most so many states are carried over to their neighbours as a whole; larger ones seldom exclude anything. */
const SMALL = 16;

/**
 * A frame with, for each cell, the set of states that it may still hold (its *domain*), and what follows from narrowing
 * one. What follows at once is drawn here; which choice to try is the search's.
 *
 * A cell with one state left is *laid*, which tells the cells around it what lies there; tells all others when the last
 * tile of a type is used; and tells the border how many more sides of each half may face out (see `Balance`). A type that
 * has no more cells to go to than it has tiles takes them all.
 *
 * Methods that narrow return false when something has become impossible; then go back to a mark.
 */
export class Board {
  readonly cells: number;
  /** Tiles laid since the start, also those taken up again: the unit in which work is counted. */
  laid = 0;
  /** The cell at each side of each cell, at 4 × cell + side; -1 outside. */
  private readonly beside: Int32Array;
  /** Sets of states by the half that they show at a side. */
  private readonly facing: Int32Array;
  /** How many tiles there are of each type. */
  private readonly counts: Int32Array;
  /** All that changes and can be undone; a cell's domain starts at cell × words, the rest where these fields say. */
  private readonly trail: Trail;
  private readonly values: Int32Array;
  /** States in each domain. */
  private readonly sizes: number;
  /** 1 for each cell whose tile is laid. */
  private readonly done: number;
  /** For each type the cells whose domain holds it. */
  private readonly rooms: number;
  /** For each type the tiles laid. */
  private readonly used: number;
  /** For each set of the balance what must still face out; 1 for each half that may no more. */
  private readonly surplus: number;
  private readonly barred: number;
  /** Outer sides not yet bound to be taken. */
  private readonly slack: number;
  private readonly changed: number[] = [];
  private readonly waiting: Uint8Array;
  private readonly tight: number[] = [];
  private readonly union: Int32Array;

  constructor(
    readonly stock: Stock,
    private readonly balance: Balance,
    readonly rows: number,
    readonly columns: number,
  ) {
    this.cells = rows * columns;
    this.sizes = this.cells * stock.words;
    this.done = this.sizes + this.cells;
    this.rooms = this.done + this.cells;
    this.used = this.rooms + stock.types.length;
    this.surplus = this.used + stock.types.length;
    this.barred = this.surplus + balance.surplus.length;
    this.slack = this.barred + balance.halves;
    this.trail = new Trail(this.slack + 1);
    this.values = this.trail.values;
    this.waiting = new Uint8Array(this.cells);
    this.union = new Int32Array(stock.words);
    this.counts = Int32Array.from(stock.types, (type) => type.tiles.length);
    this.beside = Int32Array.from({ length: 4 * this.cells }, (_, i) => this.neighbour(i >> 2, i & 3));
    this.facing = stock.showing(balance.halves, (text) => at(balance.half, text));
  }

  /** Fills all domains with what can lie there at all. `outer`: the sets of states, by side, that may have it outside. */
  open(outer: Int32Array): boolean {
    const { stock, balance, values, cells } = this;
    values[this.slack] = 2 * (this.rows + this.columns) - balance.bound;
    if (at(values, this.slack) < 0) return false;
    values.set(balance.surplus, this.surplus);
    values.fill(cells, this.rooms, this.used);
    const states = stock.types.reduce((sum, type) => sum + type.turns, 0);
    values.fill(states, this.sizes, this.done);
    const inner = stock.showing(1, (text) => (stock.partners[text]?.length ? 0 : -1));
    for (let cell = 0; cell < cells; cell++) {
      values.set(stock.all, cell * stock.words);
      this.awaken(cell);
    }
    for (let cell = 0; cell < cells; cell++) {
      for (let side = 0; side < 4; side++) {
        if (!this.keep(cell, this.isOuter(cell, side) ? outer : inner, side * stock.words)) return false;
      }
    }
    return this.barHalves() && this.settle();
  }

  mark(): number {
    return this.trail.mark();
  }

  undo(mark: number): void {
    this.trail.undo(mark);
    for (const cell of this.changed) this.waiting[cell] = 0;
    this.changed.length = 0;
    this.tight.length = 0;
  }

  isLaid(cell: number): boolean {
    return at(this.values, this.done + cell) === 1;
  }

  /** How many states the cell may still hold. */
  size(cell: number): number {
    return at(this.values, this.sizes + cell);
  }

  /** How many cells the last tile of a type may still go to; 0 where it is laid, or where more than one is left. */
  placesOfLast(type: number): number {
    const used = at(this.values, this.used + type);
    return at(this.counts, type) - used === 1 ? at(this.values, this.rooms + type) - used : 0;
  }

  /** The turns of `type` that the cell may still hold, a bit for each. */
  turns(cell: number, type: number): number {
    return (at(this.values, cell * this.stock.words + (type >> 3)) >>> ((type & 7) << 2)) & 15;
  }

  /** The states that the cell may still hold, in ascending order. */
  states(cell: number): number[] {
    const list: number[] = [];
    for (let word = 0; word < this.stock.words; word++) {
      for (let rest = at(this.values, cell * this.stock.words + word); rest !== 0; rest &= rest - 1) {
        list.push(32 * word + lowest(rest));
      }
    }
    return list;
  }

  /** Leaves the cell only `state`, and draws what follows. */
  lay(cell: number, state: number): boolean {
    return this.restrict(cell, state >> 2, 1 << (state & 3)) && this.settle();
  }

  /** Leaves the cell only the given turns (a bit for each) of one type. What follows is not drawn yet. */
  restrict(cell: number, type: number, turns: number): boolean {
    const { words } = this.stock;
    for (let word = 0; word < words; word++) {
      const stays = word === type >> 3 ? turns << ((type & 7) << 2) : 0;
      if (!this.cut(cell, word, ~stays)) return false;
    }
    return true;
  }

  /** Leaves `type` only the given turns, in all cells. What follows is not drawn yet. */
  restrictTurns(type: number, turns: number): boolean {
    for (let cell = 0; cell < this.cells; cell++) {
      if (!this.cut(cell, type >> 3, (15 & ~turns) << ((type & 7) << 2))) return false;
    }
    return true;
  }

  /** Draws what follows from all that was narrowed. */
  settle(): boolean {
    for (;;) {
      const type = this.tight.pop();
      if (type !== undefined) {
        if (!this.fillUp(type)) return false;
        continue;
      }
      const cell = this.changed.pop();
      if (cell === undefined) return true;
      this.waiting[cell] = 0;
      if (!(this.size(cell) === 1 ? this.layDown(cell) : this.carryOver(cell))) return false;
    }
  }

  private neighbour(cell: number, side: number): number {
    if (this.isOuter(cell, side)) return -1;
    return cell + (side === 0 ? -this.columns : side === 1 ? 1 : side === 2 ? this.columns : -1);
  }

  private isOuter(cell: number, side: number): boolean {
    const column = cell % this.columns;
    if (side === 0) return cell < this.columns;
    if (side === 1) return column === this.columns - 1;
    return side === 2 ? cell >= this.cells - this.columns : column === 0;
  }

  private awaken(cell: number): void {
    if (this.waiting[cell] === 1) return;
    this.waiting[cell] = 1;
    this.changed.push(cell);
  }

  /** Takes from one word of the cell's domain the bits of `gone`. Everything that narrows a domain ends here. */
  private cut(cell: number, word: number, gone: number): boolean {
    const { values } = this;
    const index = cell * this.stock.words + word;
    const old = at(values, index);
    const lost = old & gone;
    if (lost === 0) return true;
    const now = old ^ lost;
    const size = at(values, this.sizes + cell) - bits(lost);
    if (size === 0) return false;
    this.trail.set(index, now);
    this.trail.set(this.sizes + cell, size);
    for (let types = nibbles(old) & ~nibbles(now); types !== 0; types &= types - 1) {
      const type = 8 * word + (lowest(types) >> 2);
      const room = at(values, this.rooms + type) - 1;
      this.trail.set(this.rooms + type, room);
      if (room < at(this.counts, type)) return false;
      if (room === at(this.counts, type)) this.tight.push(type);
    }
    if (size <= SMALL) this.awaken(cell);
    return true;
  }

  private keep(cell: number, sets: Int32Array, from: number): boolean {
    const { words } = this.stock;
    for (let word = 0; word < words; word++) if (!this.cut(cell, word, ~at(sets, from + word))) return false;
    return true;
  }

  private drop(cell: number, sets: Int32Array, from: number): boolean {
    const { words } = this.stock;
    for (let word = 0; word < words; word++) if (!this.cut(cell, word, at(sets, from + word))) return false;
    return true;
  }

  /** The type has just as many cells as tiles: no other type may lie there. */
  private fillUp(type: number): boolean {
    for (let cell = 0; cell < this.cells; cell++) {
      const turns = this.turns(cell, type);
      if (turns !== 0 && !this.isLaid(cell) && !this.restrict(cell, type, turns)) return false;
    }
    return true;
  }

  private layDown(cell: number): boolean {
    const { stock, values } = this;
    const [state = 0] = this.states(cell);
    const type = state >> 2;
    this.laid++;
    this.trail.set(this.done + cell, 1);
    const used = at(values, this.used + type) + 1;
    this.trail.set(this.used + type, used);
    if (used === at(this.counts, type)) {
      for (let other = 0; other < this.cells; other++) {
        if (!this.isLaid(other) && !this.cut(other, type >> 3, 15 << ((type & 7) << 2))) return false;
      }
    }
    for (let side = 0; side < 4; side++) {
      const text = at(stock.textAt, 4 * state + side);
      const other = at(this.beside, 4 * cell + side);
      if (other < 0) {
        if (!this.faceOut(at(this.balance.half, text))) return false;
      } else if (!this.isLaid(other) && !this.keep(other, stock.fitting, stock.against(side ^ 2, text))) return false;
    }
    return true;
  }

  /** Leaves the neighbours only what can lie against one of the cell's states. */
  private carryOver(cell: number): boolean {
    const { stock, union } = this;
    const states = this.states(cell);
    for (let side = 0; side < 4; side++) {
      const other = at(this.beside, 4 * cell + side);
      if (other < 0 || this.isLaid(other)) continue;
      union.fill(0);
      for (const state of states) {
        const from = stock.against(side ^ 2, at(stock.textAt, 4 * state + side));
        for (let word = 0; word < stock.words; word++) {
          union[word] = at(union, word) | at(stock.fitting, from + word);
        }
      }
      if (!this.keep(other, union, 0)) return false;
    }
    return true;
  }

  /** Books a side of a half as facing out. One that no surplus asked for costs its place and needs another to make up. */
  private faceOut(half: number): boolean {
    if (half < 0) return true;
    const index = this.surplus + (half >> 1);
    const surplus = at(this.values, index);
    if (!this.isWanted(half)) this.trail.set(this.slack, at(this.values, this.slack) - 2);
    if (at(this.balance.odd, half >> 1) === 1) this.trail.set(index, surplus ^ 1);
    else this.trail.set(index, surplus - (half & 1 ? -1 : 1));
    return at(this.values, this.slack) >= 0 && this.barHalves();
  }

  private isWanted(half: number): boolean {
    const surplus = at(this.values, this.surplus + (half >> 1));
    return half & 1 ? surplus < 0 : surplus > 0;
  }

  /** Without slack, takes halves that are not wanted outside off the border. Slack never grows, so they stay off. */
  private barHalves(): boolean {
    if (at(this.values, this.slack) >= 2) return true;
    for (let half = 0; half < this.balance.halves; half++) {
      if (at(this.values, this.barred + half) === 1 || this.isWanted(half)) continue;
      this.trail.set(this.barred + half, 1);
      for (let cell = 0; cell < this.cells; cell++) {
        if (this.isLaid(cell)) continue;
        for (let side = 0; side < 4; side++) {
          if (at(this.beside, 4 * cell + side) >= 0) continue;
          if (!this.drop(cell, this.facing, (4 * half + side) * this.stock.words)) return false;
        }
      }
    }
    return true;
  }
}

/** As in the stock; its own copy, since an imported function costs too much here where modules are not bundled. */
function at(values: Int32Array, index: number): number {
  return values[index] as number;
}

/** The place of the lowest bit that is set. */
function lowest(word: number): number {
  return 31 - Math.clz32(word & -word);
}

function bits(word: number): number {
  let n = word - ((word >>> 1) & 0x55555555);
  n = (n & 0x33333333) + ((n >>> 2) & 0x33333333);
  return Math.imul((n + (n >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** The lowest bit of each group of four that has a bit set. */
function nibbles(word: number): number {
  const pairs = word | (word >>> 1);
  return (pairs | (pairs >>> 2)) & 0x11111111;
}
