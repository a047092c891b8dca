import type { Steps } from "../base/steps";
import { alignedTo, framesOf, isAssembly, lookOf } from "./assembly";
import { balanceOf } from "./balance";
import { certificate } from "./certificate";
import { FrameSearch } from "./frame-search";
import { Stock } from "./stock";
import type { Assembly, TileProof, TileProofOptions, TilePuzzle } from "./tiles";
import { witness } from "./witness";

/**
 * How many visible assemblies a puzzle of edge tiles has, proven. The cheap arguments come first (a certificate, a second
 * assembly near the intended one), then the exact search.
 *
 * @throws RangeError where there are not rows × columns tiles.
 */
export function proveTiles(puzzle: TilePuzzle, options: TileProofOptions = {}): TileProof {
  const search = new TileSearch(puzzle, options);
  while (!search.advance(Number.POSITIVE_INFINITY));
  return search.proof;
}

/** The same in slices, for those who have other things to do meanwhile. However it is sliced, the proof is the same. */
export class TileSearch {
  private readonly cap: number;
  private readonly budget: number;
  /** How the intended assembly looks, where it is one. It is a solution that need not be searched for. */
  private intended: string | undefined;
  /** Arguments that are still to be tried. */
  private opening: Steps<void, undefined> | undefined;
  private readonly looks = new Set<string>();
  private frames: readonly FrameSearch[] = [];
  private nodes = 0;
  private count = 0;
  private second: Assembly | undefined;
  private settled: TileProof | undefined;

  constructor(
    private readonly puzzle: TilePuzzle,
    private readonly options: TileProofOptions = {},
  ) {
    const { rows, columns, tiles } = puzzle;
    if (rows * columns !== tiles.length || rows < 1) throw new RangeError("a puzzle needs rows × columns tiles");
    this.cap = Math.max(2, options.cap ?? 2);
    this.budget = options.budget ?? 200_000;
    this.opening = this.arguing();
  }

  /** What needs no search, an argument at each step; then the frames to be searched. */
  private *arguing(): Steps<void, undefined> {
    const { puzzle } = this;
    const { intended } = this.options;
    if (intended && isAssembly(puzzle, intended)) {
      this.intended = lookOf(puzzle, intended);
      this.count = 1;
    }
    const sole = certificate(puzzle);
    if (sole) {
      if (sole !== "none") this.meet(sole, true);
      this.settle("certificate", false);
      return;
    }
    yield;
    const stock = new Stock(puzzle);
    const mayFaceOut = puzzle.outer && new Set(puzzle.outer);
    const outer = stock.showing(1, (text) => (mayFaceOut?.has(stock.texts[text] ?? -1) === false ? -1 : 0));
    yield;
    if (intended && this.intended !== undefined && this.cap === 2) {
      const near = witness(puzzle, stock, outer, intended);
      if (near) {
        this.meet(near, true);
        this.settle("witness", true);
        return;
      }
    }
    yield;
    const balance = balanceOf(stock);
    const free = puzzle.turn === "free";
    const sides = stock.sides();
    const outside = sides.reduce(
      (sum, count, text) => (mayFaceOut?.has(stock.texts[text] ?? -1) === false ? sum : sum + count),
      0,
    );
    // A frame with a longer rim than there are edges for has no assembly; searching it could take long to see that.
    const frames = framesOf(puzzle).filter(([r, c]) => 2 * (r + c) <= outside);
    this.frames = frames.map(([r, c]) => new FrameSearch(stock, balance, outer, { rows: r, columns: c, free }));
  }

  /** What is known; `unsettled` as long as it is not done. */
  get proof(): TileProof {
    return this.settled ?? this.verdict("search", true);
  }

  /** Tries one more argument that needs no search, or searches on for about so many nodes (a step once begun is ended). True when done. */
  advance(nodes: number): boolean {
    if (this.opening) {
      if (this.opening.next().done) this.opening = undefined;
      return this.settled !== undefined;
    }
    const until = this.nodes + nodes;
    while (!this.settled && this.nodes < until) this.step();
    return this.settled !== undefined;
  }

  private step(): void {
    const [search] = this.frames;
    if (!search) this.settle("search", false);
    else if (this.nodes >= this.budget) this.settle("search", true);
    else this.take(search);
  }

  private take(search: FrameSearch): void {
    const before = search.nodes;
    const result = search.step();
    this.nodes += search.nodes - before;
    if (result === "end") this.frames = this.frames.slice(1);
    else if (result && this.meet(result, !search.repeats) && this.count >= this.cap) this.settle("search", true);
  }

  /** Counts an assembly unless it was counted before. */
  private meet(assembly: Assembly, isNew: boolean): boolean {
    if (!isNew || this.intended !== undefined) {
      const look = lookOf(this.puzzle, assembly);
      if (look === this.intended || (!isNew && this.looks.has(look))) return false;
      if (!isNew) this.looks.add(look);
    }
    this.count++;
    this.options.found?.(assembly);
    // Where nothing is intended, the first one found stands for it.
    if (this.options.intended || this.count === 2) this.second ??= assembly;
    return true;
  }

  private settle(by: TileProof["by"], early: boolean): void {
    this.settled = this.verdict(by, early);
  }

  private verdict(by: TileProof["by"], early: boolean): TileProof {
    const { count, nodes, second, puzzle } = this;
    const { intended } = this.options;
    const few = early ? "unsettled" : count === 1 ? "one" : "none";
    const proof = { status: count >= 2 ? "several" : few, count, capped: early && count >= 2, nodes, by } as const;
    if (!second) return proof;
    return { ...proof, second: intended ? alignedTo(puzzle, intended, second) : second };
  }
}
