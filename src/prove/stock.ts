import { shownAt, turnOf } from "./assembly";
import { relationOf } from "./relation";
import type { TileEdges, TilePuzzle, Turn } from "./tiles";

/** An element of a typed array at an index that is known to exist. */
export function at(values: Int32Array, index: number): number {
  return values[index] as number;
}

/** Tiles that print alike. */
export interface TileType {
  /** The tiles of this type, each with the turn in which it looks as the type does in turn 0. */
  readonly tiles: readonly { readonly tile: number; readonly turn: Turn }[];
  /** How many turns of it look different: 1, 2 or 4; 1 where tiles may not be turned. */
  readonly turns: number;
}

/**
 * A puzzle's tiles, ready for bit sets. A *state* is a type in one of its turns, numbered 4 × type + turn, so that the four
 * states of a type share one word of a set; turns that look like an earlier one are never used. A set of states is `words`
 * consecutive words of an Int32Array. Texts are renumbered from 0 in order of appearance.
 */
export class Stock {
  readonly types: readonly TileType[];
  /** For each tile its type, and the turn in which it looks as the type does in turn 0. */
  readonly typeOf: Int32Array;
  readonly turnOf: Int32Array;
  readonly words: number;
  /** Every state that is used. */
  readonly all: Int32Array;
  /** The printed text of each renumbered text. */
  readonly texts: readonly number[];
  /** For each renumbered text the renumbered texts that it fits, each once. */
  readonly partners: readonly (readonly number[])[];
  /** Renumbered text at 4 × state + side. */
  readonly textAt: Int32Array;
  /** Sets of states by what their sides can lie against; `against` says where each starts. */
  readonly fitting: Int32Array;

  constructor(puzzle: TilePuzzle) {
    const free = puzzle.turn === "free";
    const types = new Map<string, { edges: TileEdges; tiles: { tile: number; turn: Turn }[]; turns: number }>();
    puzzle.tiles.forEach((edges, tile) => {
      const looks = free ? [0, 1, 2, 3].map((turn) => lookIn(edges, turn)) : [edges];
      const keys = looks.map((look) => look.join());
      const [key = ""] = [...keys].sort();
      const turn = keys.indexOf(key);
      const type = types.get(key) ?? { edges: looks[turn] ?? edges, tiles: [], turns: new Set(keys).size };
      type.tiles.push({ tile, turn: turnOf(turn) });
      types.set(key, type);
    });
    const list = [...types.values()];
    this.typeOf = new Int32Array(puzzle.tiles.length);
    this.turnOf = new Int32Array(puzzle.tiles.length);
    list.forEach(({ tiles }, type) => {
      for (const { tile, turn } of tiles) {
        this.typeOf[tile] = type;
        this.turnOf[tile] = turn;
      }
    });
    this.types = list;
    this.words = Math.ceil(list.length / 8);

    const numbers = new Map<number, number>();
    this.textAt = new Int32Array(list.length * 16);
    this.all = new Int32Array(this.words);
    list.forEach(({ edges, turns }, type) => {
      for (let turn = 0; turn < 4; turn++) {
        const state = 4 * type + turn;
        if (turn < turns) add(this.all, 0, state);
        for (let side = 0; side < 4; side++) {
          const text = shownAt(edges, turn, side);
          const number = numbers.get(text) ?? numbers.size;
          numbers.set(text, number);
          this.textAt[4 * state + side] = number;
        }
      }
    });
    this.texts = [...numbers.keys()];
    const relation = relationOf(puzzle);
    this.partners = this.texts.map((text) => [...(relation.get(text) ?? [])].map((other) => numbers.get(other) ?? -1));
    this.fitting = new Int32Array(4 * this.texts.length * this.words);
    this.eachShown((state, side, text) => {
      for (const other of this.partners[text] ?? []) add(this.fitting, this.against(side, other), state);
    });
  }

  /** Where in `fitting` the set starts of states whose `side` can lie against `text`. */
  against(side: number, text: number): number {
    return (side * this.texts.length + text) * this.words;
  }

  /**
   * Sets of states by what they show, for texts put into groups 0 to `groups` - 1 (other numbers: none). The set of those
   * that show one of group g at a side starts at (4 × g + side) × words.
   */
  showing(groups: number, groupOf: (text: number) => number): Int32Array {
    const sets = new Int32Array(4 * groups * this.words);
    const group = this.texts.map((_, text) => groupOf(text));
    this.eachShown((state, side, text) => {
      const g = group[text] ?? -1;
      if (g >= 0) add(sets, (4 * g + side) * this.words, state);
    });
    return sets;
  }

  /** For every renumbered text on how many sides of all tiles it stands. */
  sides(): Int32Array {
    const counts = new Int32Array(this.texts.length);
    this.types.forEach(({ tiles }, type) => {
      for (let side = 0; side < 4; side++) {
        const text = at(this.textAt, 16 * type + side);
        counts[text] = at(counts, text) + tiles.length;
      }
    });
    return counts;
  }

  private eachShown(visit: (state: number, side: number, text: number) => void): void {
    this.types.forEach(({ turns }, type) => {
      for (let turn = 0; turn < turns; turn++) {
        const state = 4 * type + turn;
        for (let side = 0; side < 4; side++) visit(state, side, at(this.textAt, 4 * state + side));
      }
    });
  }
}

function lookIn(edges: TileEdges, turn: number): TileEdges {
  return [shownAt(edges, turn, 0), shownAt(edges, turn, 1), shownAt(edges, turn, 2), shownAt(edges, turn, 3)];
}

function add(sets: Int32Array, from: number, state: number): void {
  const word = from + (state >> 5);
  sets[word] = at(sets, word) | (1 << (state & 31));
}
