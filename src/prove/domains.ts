import type { Stock } from "./stock";
import { Trail } from "./trail";

/** Domains of at most so many states are carried over to their neighbours as a whole; larger ones seldom exclude anything. */
const SMALL = 16;

/**
 * For each cell of a frame the set of states that it may still hold (its *domain*), and for each type how many cells it may still
 * go to; can be put back to how it was. What follows from narrowing one is noted here and drawn by the board.
 *
 * Methods that narrow return false when something has become impossible; then go back to a mark.
 */
export class Domains {
  /** How many tiles there are of each type. */
  protected readonly counts: Int32Array;
  /** All that changes and can be undone; a cell's domain starts at cell × words, the rest where these fields say. */
  protected readonly trail: Trail;
  protected readonly values: Int32Array;
  /** States in each domain. */
  protected readonly sizes: number;
  /** 1 for each cell whose tile is laid. */
  protected readonly done: number;
  /** For each type the cells whose domain holds it. */
  protected readonly rooms: number;
  /** For each type the tiles laid. */
  protected readonly used: number;
  /** Where further numbers stand. */
  protected readonly further: number;
  /** Cells that were narrowed to few states, each once; types that have no more cells to go to than tiles. */
  protected readonly changed: number[] = [];
  protected readonly waiting: Uint8Array;
  protected readonly tight: number[] = [];

  /** `more`: how many further numbers can be undone. */
  constructor(
    readonly stock: Stock,
    readonly cells: number,
    more: number,
  ) {
    this.sizes = cells * stock.words;
    this.done = this.sizes + cells;
    this.rooms = this.done + cells;
    this.used = this.rooms + stock.types.length;
    this.further = this.used + stock.types.length;
    this.trail = new Trail(this.further + more);
    this.values = this.trail.values;
    this.waiting = new Uint8Array(cells);
    this.counts = Int32Array.from(stock.types, (type) => type.tiles.length);
  }

  /** Every cell may hold every state. */
  protected fill(): void {
    const { stock, values } = this;
    values.fill(this.cells, this.rooms, this.used);
    const states = stock.types.reduce((sum, type) => sum + type.turns, 0);
    values.fill(states, this.sizes, this.done);
    for (let cell = 0; cell < this.cells; cell++) {
      values.set(stock.all, cell * stock.words);
      this.awaken(cell);
    }
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

  protected awaken(cell: number): void {
    if (this.waiting[cell] === 1) return;
    this.waiting[cell] = 1;
    this.changed.push(cell);
  }

  /** Takes from one word of the cell's domain the bits of `gone`. Everything that narrows a domain ends here. */
  protected cut(cell: number, word: number, gone: number): boolean {
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

  protected keep(cell: number, sets: Int32Array, from: number): boolean {
    const { words } = this.stock;
    for (let word = 0; word < words; word++) if (!this.cut(cell, word, ~at(sets, from + word))) return false;
    return true;
  }

  protected drop(cell: number, sets: Int32Array, from: number): boolean {
    const { words } = this.stock;
    for (let word = 0; word < words; word++) if (!this.cut(cell, word, at(sets, from + word))) return false;
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
