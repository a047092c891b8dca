/*
 * How long proofs take, and how that compares with general solvers. Run with `npx tsx test/bench/prove.bench.ts`; prints,
 * asserts nothing. Times are of this process's own work (user time), so that a busy machine disturbs them little; building
 * of the model is included everywhere.
 */
import { spawnSync } from "node:child_process";
import { proveTiles, type TilePuzzle } from "../../src/prove/tiles";
import { dealt } from "../prove/instances";
import { byLogicSolver, exactCover } from "../prove/solvers";

function milliseconds(work: () => void): number {
  const before = process.cpuUsage().user;
  work();
  return (process.cpuUsage().user - before) / 1000;
}

function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(part * (sorted.length - 1))] ?? 0;
}

function rows(): void {
  console.log("60 seeds a row; status counts, nodes p50/p95, ms p50/p95");
  for (const [side, repeat, hits] of [
    [4, 2, 0],
    [4, 4, 4],
    [6, 4, 4],
    [8, 4, 4],
    [8, 8, 4],
    [12, 4, 4],
    [12, 8, 4],
    [12, 12, 4],
    [6, 4, 24],
    [8, 4, 32],
    [8, 36, 0],
  ] as const) {
    const times: number[] = [];
    const nodes: number[] = [];
    const verdicts = new Map<string, number>();
    for (let seed = 1; seed <= 60; seed++) {
      const { puzzle, intended } = dealt({ rows: side, columns: side, seed, repeat, hits });
      times.push(
        milliseconds(() => {
          const proof = proveTiles(puzzle, { intended, budget: 20_000 });
          nodes.push(proof.nodes);
          verdicts.set(proof.status, (verdicts.get(proof.status) ?? 0) + 1);
        }),
      );
    }
    const told = [...verdicts].map(([status, count]) => `${status} ${count}`).join(", ");
    const spread = (values: number[], digits: number) =>
      `${quantile(values, 0.5).toFixed(digits)}/${quantile(values, 0.95).toFixed(digits)}`;
    console.log(
      `${side} × ${side}, pairs ×${repeat}, ${hits} decoy hits: ${told}; ${spread(nodes, 0)}; ${spread(times, 1)}`,
    );
  }
}

/** Other solvers may take hours for one instance: each is stopped after so many milliseconds, and then it is at least these. */
const patience = 20_000;

/** A tile with a decoy that is there once has no twin and no symmetry. */
function anchorOf({ tiles, partners }: TilePuzzle): number {
  return tiles.findIndex((tile) => tile.some((text) => (partners[text] ?? []).length === 0));
}

function instance(side: number, seed: number): ReturnType<typeof dealt> {
  return dealt({ rows: side, columns: side, seed, repeat: 4, hits: 2 });
}

/** What dancing-links takes for an instance, in a process of its own; stopped when it takes too long. */
function byCoverApart(side: number, seed: number): { readonly time: number; readonly stopped: boolean } {
  const args = [...process.execArgv, process.argv[1] ?? "", "cover", String(side), String(seed)];
  const { stdout, status } = spawnSync(process.execPath, args, { timeout: patience + 3000, encoding: "utf8" });
  return status === 0 ? { time: Number(stdout), stopped: false } : { time: patience, stopped: true };
}

async function coverAlone(side: number, seed: number): Promise<void> {
  const byExactCover = await exactCover();
  const { puzzle } = instance(side, seed);
  console.log(milliseconds(() => byExactCover(puzzle, 2, anchorOf(puzzle))));
}

async function ratios(): Promise<void> {
  const byExactCover = await exactCover();
  console.log(
    "\nother solvers' time by ours, median of 5 seeds (asked for two assemblies, one unique tile held to one turn)",
  );
  const sizes: { readonly byCover: number; readonly byClauses: number }[] = [];
  for (const side of [4, 5, 6, 7, 8]) {
    const cover: number[] = [];
    const satisfiability: number[] = [];
    let stopped = 0;
    for (let seed = 1; seed <= 5; seed++) {
      const { puzzle, intended } = instance(side, seed);
      const ours = Math.max(
        0.05,
        quantile(
          [1, 2, 3].map(() => milliseconds(() => proveTiles(puzzle, { intended }))),
          0.5,
        ),
      );
      const apart =
        side < 8
          ? { time: milliseconds(() => byExactCover(puzzle, 2, anchorOf(puzzle))), stopped: false }
          : byCoverApart(side, seed);
      if (apart.stopped) stopped++;
      cover.push(apart.time / ours);
      satisfiability.push(milliseconds(() => byLogicSolver(puzzle, 2, anchorOf(puzzle))) / ours);
    }
    const [byCover, byClauses] = [quantile(cover, 0.5), quantile(satisfiability, 0.5)];
    sizes.push({ byCover, byClauses });
    const least = stopped > 0 ? ` at the least (${stopped} of 5 stopped after ${patience / 1000} s)` : "";
    console.log(
      `${side} × ${side}: dancing-links ${byCover.toFixed(0)} ×${least}, logic-solver ${byClauses.toFixed(0)} ×`,
    );
  }
  for (const [name, values] of [
    ["dancing-links", sizes.map(({ byCover }) => byCover)],
    ["logic-solver", sizes.map(({ byClauses }) => byClauses)],
  ] as const)
    console.log(
      `${name} over all sizes: median ${quantile(values, 0.5).toFixed(0)} ×, least ${Math.min(...values).toFixed(0)} ×`,
    );
}

const [, , what, side, seed] = process.argv;
if (what === "cover") void coverAlone(Number(side), Number(seed));
else {
  rows();
  void ratios();
}
