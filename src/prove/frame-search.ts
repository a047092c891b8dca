import { turnOf } from "./assembly";
import type { Balance } from "./balance";
import { Board } from "./board";
import { at, type Stock } from "./stock";
import type { Assembly } from "./tiles";

/** A choice that is being tried: what to lay where, and what was known before. */
interface Choice {
  readonly mark: number;
  /** Cell and state by turns. */
  readonly options: readonly number[];
  next: number;
}

/**
 * All assemblies in one frame, one step at a time. Exchanging tiles of one type makes no other assembly.
 *
 * Where tiles may be turned, an assembly comes with its turned likenesses (four in a square, two in another rectangle).
 * With an *anchor*, a tile whose type is its only one and looks different in all four turns, just one of them is met: every
 * turn of the grid turns the anchor, so that among the likenesses it has each turn once in a square, and exactly one of two
 * neighbouring turns once in another rectangle; it is held to those. Without an anchor `repeats` is true.
 */
export class FrameSearch {
  /** The same assembly may be met again with the whole grid turned. */
  readonly repeats: boolean;
  private readonly board: Board;
  private readonly choices: Choice[] = [];
  private begun = false;

  /** `outer`: the sets of states, by side, that may have that side outside. */
  constructor(
    private readonly stock: Stock,
    balance: Balance,
    private readonly outer: Int32Array,
    private readonly frame: { readonly rows: number; readonly columns: number; readonly free: boolean },
  ) {
    this.board = new Board(stock, balance, frame.rows, frame.columns);
    this.repeats = frame.free && this.anchor() === undefined;
  }

  get nodes(): number {
    return this.board.laid;
  }

  /** Tries one more choice. An assembly when that completed one, `undefined` when not, `"end"` when all is searched. */
  step(): Assembly | "end" | undefined {
    if (!this.begun) {
      this.begun = true;
      return this.begin() ? this.goOn() : undefined;
    }
    const choice = this.choices.at(-1);
    if (!choice) return "end";
    const { mark, options, next } = choice;
    this.board.undo(mark);
    choice.next += 2;
    // The last option needs no way back to this choice.
    if (choice.next >= options.length) this.choices.pop();
    const [cell = 0, state = 0] = options.slice(next, next + 2);
    return this.board.lay(cell, state) ? this.goOn() : undefined;
  }

  private begin(): boolean {
    if (!this.board.open(this.outer)) return false;
    const anchor = this.frame.free ? this.anchor() : undefined;
    if (!anchor) return true;
    const turns = this.frame.rows === this.frame.columns ? [anchor.turn] : [anchor.turn, turnOf(anchor.turn + 1)];
    const allowed = turns.reduce((set, turn) => set | (1 << turn), 0);
    return this.board.restrictTurns(anchor.type, allowed) && this.board.settle();
  }

  /** The anchor most likely to lie in a corner, in the turn that puts it into the first one. */
  private anchor(): { type: number; turn: number } | undefined {
    let best: { type: number; turn: number } | undefined;
    let most = -1;
    this.stock.types.forEach(({ tiles, turns }, type) => {
      if (tiles.length !== 1 || turns !== 4) return;
      for (let turn = 0; turn < 4; turn++) {
        const north = at(this.stock.textAt, 4 * (4 * type + turn));
        const west = at(this.stock.textAt, 4 * (4 * type + turn) + 3);
        const lone = [north, west].filter((text) => this.stock.partners[text]?.length === 0).length;
        if (lone > most) [best, most] = [{ type, turn }, lone];
      }
    });
    return best;
  }

  private goOn(): Assembly | undefined {
    const options = this.options();
    if (!options) return this.assembly();
    this.choices.push({ mark: this.board.mark(), options, next: 0 });
    return undefined;
  }

  /** The narrowest choice: what lies in one cell, or where the last tile of one type goes. Undefined when all is laid. */
  private options(): number[] | undefined {
    const { board, stock } = this;
    let cell = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < board.cells && least > 2; i++) {
      if (board.isLaid(i) || board.size(i) >= least) continue;
      cell = i;
      least = board.size(i);
    }
    if (cell < 0) return undefined;
    let rarest: number[] | undefined;
    for (let type = 0; type < stock.types.length && least > 2; type++) {
      const places = board.placesOfLast(type);
      if (places === 0 || places >= least) continue;
      const options = this.placesOf(type);
      if (options.length >= 2 * least) continue;
      rarest = options;
      least = options.length / 2;
    }
    return rarest ?? board.states(cell).flatMap((state) => [cell, state]);
  }

  private placesOf(type: number): number[] {
    const options: number[] = [];
    for (let cell = 0; cell < this.board.cells; cell++) {
      if (this.board.isLaid(cell)) continue;
      const turns = this.board.turns(cell, type);
      for (let turn = 0; turn < 4; turn++) if (turns & (1 << turn)) options.push(cell, 4 * type + turn);
    }
    return options;
  }

  /** What is laid, with the tiles of each type dealt out in their order. */
  private assembly(): Assembly {
    const dealt = new Int32Array(this.stock.types.length);
    const cells = Array.from({ length: this.board.cells }, (_, cell) => {
      const [state = 0] = this.board.states(cell);
      const copy = at(dealt, state >> 2);
      dealt[state >> 2] = copy + 1;
      const tile = this.stock.types[state >> 2]?.tiles[copy];
      if (!tile) throw new RangeError("more tiles of a type laid than there are");
      return { tile: tile.tile, turn: turnOf(tile.turn + state) };
    });
    return { rows: this.board.rows, columns: this.board.columns, cells };
  }
}
