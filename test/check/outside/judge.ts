import assert from "node:assert/strict";
import type { LoopDeal } from "../../../src/activities/loop/model";
import type { TilesDeal } from "../../../src/activities/tiles/model";
import type { TileEdges, TilePuzzle } from "../../../src/prove/tiles";
import { circles, readingOf } from "../../prove/against/circles";
import { type Covers, openCovers } from "../../prove/against/cover";
import { standIn } from "../../prove/naive";
import { exactCover } from "../../prove/solvers";
import type { Section } from "./draws";
import { fittingBy, type Written } from "./written";

/*
 * Verdicts on deals by others: who answers whom by the strings of the pairs, and an exact cover to look for solutions. Each
 * says how many different ones it found, two at most.
 */

export interface Judge {
  readonly tiles: (section: Section, deal: TilesDeal) => number;
  readonly loop: (pairs: readonly Written[], deal: LoopDeal) => { readonly full: number; readonly early: boolean };
}

export async function openJudge(): Promise<Judge> {
  const byExactCover = await exactCover();
  const covers = await openCovers();
  return {
    tiles: (section, deal) => {
      const { turn, frame } = section;
      const puzzle = asPuzzle(section, deal);
      const area = puzzle.tiles.length;
      const heights = frame === "told" ? [puzzle.rows] : divisorsOf(area);
      const held = frame === "told" && puzzle.rows === puzzle.columns ? anchorOf(puzzle) : undefined;
      return enough((most) =>
        heights.flatMap((rows) =>
          byExactCover({ ...puzzle, rows, columns: area / rows }, most, held).map((grid) =>
            standIn(grid, turn === "free"),
          ),
        ),
      );
    },
    loop: (pairs, deal) => loopVerdict(covers, pairs, deal),
  };
}

const divisorsOf = (area: number): number[] =>
  Array.from({ length: area }, (_, i) => i + 1).filter((rows) => area % rows === 0);

/** How many different solutions there are, two at most, from a search that may give each many times. */
function enough(search: (most: number) => readonly string[]): number {
  for (let most = 8; ; most *= 8) {
    const found = search(most);
    const different = new Set(found).size;
    if (different > 1 || found.length < most) return Math.min(2, different);
  }
}

/** A tile that looks different in each turn and like no other: in one turn it stands for the four turns of a square grid. */
function anchorOf({ tiles }: TilePuzzle): number | undefined {
  const looks = tiles.map((tile) => standIn([[tile]], true));
  const found = tiles.findIndex(
    ([n, e, s, w], i) => looks.filter((look) => look === looks[i]).length === 1 && !(n === s && e === w),
  );
  return found < 0 ? undefined : found;
}

/**
 * The tiles as they look, and what fits by the pairs' strings; checks on the way that the layout that is meant is one. With
 * blank inner edges blank lies against blank; no word that has an answer on the tiles faces out, which elsewhere follows.
 */
function asPuzzle({ pairs, turn, fill, frame: told }: Section, { frame, solved }: TilesDeal): TilePuzzle {
  const { rows, columns } = frame;
  const texts: string[] = [""];
  const numberOf = (text: string): number => (texts.includes(text) ? texts.indexOf(text) : texts.push(text) - 1);
  const tiles = solved.map((face) => face.map((edge) => numberOf(edge?.text ?? "")) as unknown as TileEdges);
  const answers = fittingBy(pairs);
  const fits = (a = "", b = ""): boolean => (a && b ? answers(a, b) : a === b && fill === "blank");
  const partners = texts.map((a) => texts.flatMap((b, i) => (fits(a, b) ? [i] : [])));
  const edges = solved.flat().filter((edge) => edge !== undefined);
  // One word in both languages answers itself, but where it stands on one edge only there is none to lie against.
  const answered = (text: string): boolean =>
    edges.filter((edge) => fits(edge.text, text)).length > (fits(text, text) ? 1 : 0);
  solved.forEach((face, cell) => {
    const beside = [cell - columns, cell + 1, cell + columns, cell - 1];
    const inside = [cell >= columns, (cell + 1) % columns !== 0, cell < (rows - 1) * columns, cell % columns !== 0];
    face.forEach((edge, side) => {
      const other = solved[beside[side] ?? -1]?.[(side + 2) % 4];
      if (inside[side]) assert.ok(fits(edge?.text, other?.text), `${edge?.text} against ${other?.text}`);
      else if (edge) assert.ok(!answered(edge.text), `${edge.text} faces out`);
    });
  });
  const outer = texts.flatMap((text, i) => (text === "" || !answered(text) ? [i] : []));
  return { rows, columns, tiles, partners, turn, ...(fill === "blank" || told === "untold" ? { outer } : {}) };
}

function loopVerdict(
  covers: Covers,
  pairs: readonly Written[],
  { cards }: LoopDeal,
): { readonly full: number; readonly early: boolean } {
  const fits = fittingBy(pairs);
  const follows = cards.map(({ prompt }) =>
    cards.flatMap(({ answer }, i) => (fits(prompt.text, answer.text) ? [i] : [])),
  );
  cards.forEach((_, i) => {
    assert.ok(follows[i]?.includes((i + 1) % cards.length), `card ${i} has its answer on the next`);
  });
  const prints = cards.map(({ answer, prompt }) => JSON.stringify([answer.text, prompt.text]));
  const look = prints.map((print) => prints.indexOf(print));
  const full = enough((most) =>
    circles(covers, { follows }, cards.length, most).map((circle) => readingOf(look, circle)),
  );
  const early = cards.some((_, length) => length > 0 && circles(covers, { follows }, length, 1).length > 0);
  return { full, early };
}
