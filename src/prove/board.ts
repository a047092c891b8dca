import type { Balance } from "./balance";
import { Domains } from "./domains";
import type { Stock } from "./stock";

/**
 * A frame with the domains of its cells, and what follows from narrowing one. What follows at once is drawn here; which choice to
 * try is the search's.
 *
 * A cell with one state left is *laid*, which tells the cells around it what lies there; tells all others when the last
 * tile of a type is used; and tells the border how many more sides of each half may face out (see `Balance`). A type that
 * has no more cells to go to than it has tiles takes them all.
 */
export class Board extends Domains {
  /** Tiles laid since the start, also those taken up again: the unit in which work is counted. */
  laid = 0;
  /** The cell at each side of each cell, at 4 × cell + side; -1 outside. */
  private readonly beside: Int32Array;
  /** Sets of states by the half that they show at a side. */
  private readonly facing: Int32Array;
  /** For each set of the balance what must still face out; 1 for each half that may no more. */
  private readonly surplus: number;
  private readonly barred: number;
  /** Outer sides not yet bound to be taken. */
  private readonly slack: number;
  /** Where the sets of what fits begin, for the texts at a side of a cell that is looked at. */
  private readonly starts: Int32Array;
  /** For each text the last look that met it. */
  private readonly seen: Int32Array;
  private looks = 0;

  constructor(
    stock: Stock,
    private readonly balance: Balance,
    readonly rows: number,
    readonly columns: number,
  ) {
    super(stock, rows * columns, balance.surplus.length + balance.halves + 1);
    this.surplus = this.further;
    this.barred = this.surplus + balance.surplus.length;
    this.slack = this.barred + balance.halves;
    this.starts = new Int32Array(stock.texts.length);
    this.seen = new Int32Array(stock.texts.length);
    this.beside = Int32Array.from({ length: 4 * this.cells }, (_, i) => this.neighbour(i >> 2, i & 3));
    this.facing = stock.showing(balance.halves, (text) => at(balance.half, text));
  }

  /** Fills all domains with what can lie there at all. `outer`: the sets of states, by side, that may have it outside. */
  open(outer: Int32Array): boolean {
    const { stock, balance, values, cells } = this;
    values[this.slack] = 2 * (this.rows + this.columns) - balance.bound;
    if (at(values, this.slack) < 0) return false;
    values.set(balance.surplus, this.surplus);
    this.fill();
    const inner = stock.showing(1, (text) => (stock.partners[text]?.length ? 0 : -1));
    for (let cell = 0; cell < cells; cell++) {
      for (let side = 0; side < 4; side++) {
        if (!this.keep(cell, this.isOuter(cell, side) ? outer : inner, side * stock.words)) return false;
      }
    }
    return this.barHalves() && this.settle();
  }

  /** Leaves the cell only `state`, and draws what follows. */
  lay(cell: number, state: number): boolean {
    return this.restrict(cell, state >> 2, 1 << (state & 3)) && this.settle();
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
    const { stock, starts, values } = this;
    const { words, fitting } = stock;
    const states = this.states(cell);
    for (let side = 0; side < 4; side++) {
      const other = at(this.beside, 4 * cell + side);
      if (other < 0 || this.isLaid(other)) continue;
      const count = this.findStarts(states, side);
      for (let word = 0; word < words; word++) {
        // Most states soon have one that they can lie against.
        let alone = at(values, other * words + word);
        for (let i = 0; alone !== 0 && i < count; i++) alone &= ~at(fitting, at(starts, i) + word);
        if (alone !== 0 && !this.cut(other, word, alone)) return false;
      }
    }
    return true;
  }

  /** Where the sets begin of what fits the texts that states show at a side, each once; how many there are. */
  private findStarts(states: readonly number[], side: number): number {
    const { stock, starts, seen } = this;
    const look = ++this.looks;
    let count = 0;
    for (const state of states) {
      const text = at(stock.textAt, 4 * state + side);
      if (at(seen, text) === look) continue;
      seen[text] = look;
      starts[count++] = stock.against(side ^ 2, text);
    }
    return count;
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
