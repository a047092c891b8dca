import { pieceMark } from "../../base/mark";
import type { Range } from "../../base/range";
import type { Run } from "../../base/run";
import { columnsHeight, flowColumns } from "../../page/flow";
import { furniture } from "../../page/furniture";
import type { Box } from "../../page/paper";
import { papers } from "../../page/paper";
import type { Sheet, SheetItem } from "../../page/sheet";
import { squareCuts } from "../../page/squares";
import { type Assembly, type Difficulty, differences } from "../../prove/tiles";
import type { Press } from "../contract";
import { difficultySentence } from "../difficulty";
import { told } from "../printed";
import { titleOf } from "../sheet-page";
import { drawCentre, drawFace } from "./draw";
import { isFrameOf } from "./frame";
import { commonSize, layoutTiles } from "./layout";
import { type DealtTiles, intended, type TilesDeal } from "./model";
import { toPuzzle } from "./puzzle";
import { barLabel, folio, proofText, stateOf, texts } from "./words";

/** Words on the key smaller than this are left to the list below, pt. */
const readable = 5;
const listSize = 9;
/** Heading and up to two lines of facts above the grid, mm; a third line has as much as it needs. */
const headHeight = 17;
const factHeight = 4;
const listGap = 6;

/** The layout with its pairs as a list; or a second layout, its differing tiles marked. */
export function solutionSheets(dealt: DealtTiles, deal: TilesDeal, view: "solved" | "second", press: Press): Sheet[] {
  const second = view === "second" ? deal.proof.second : undefined;
  if (view === "second" && !second) return [];
  const { request, options } = dealt;
  const { box, paper, margin } = layoutTiles(dealt, press);
  const state = [...stateOf(deal, options.levels?.length ?? 1, options.versions), deal.code].join(" · ");
  const lines = view === "second" ? [] : listLines(dealt, deal);
  const columns = { gap: 6, count: 2, size: listSize };
  const listHeight = columnsHeight(lines, box.w, columns, press.typeface);
  const shown = second ?? intended(deal.frame);
  const grid = drawGrid(dealt, deal, shown, view, box, listHeight, press);
  const head = heading(
    `${view === "second" ? texts.second : texts.key}: ${request.title}`,
    facts(dealt, deal, shown, grid.worded),
    box,
  );
  const rest = { ...box, y: grid.bottom + listGap, h: box.y + box.h - grid.bottom - listGap };
  const list = flowColumns(lines, [rest, box], columns, press.typeface);
  const pages = Math.max(1, list.length);
  const title = titleOf(request, press, [{ text: state }]);
  return Array.from({ length: pages }, (_, page): Sheet => {
    const line = { title, state: [{ text: state }], folio: folio(page, pages) };
    return {
      width: papers[paper.name].width,
      height: papers[paper.name].height,
      stock: "paper",
      label: `${view === "second" ? texts.second : texts.key}: ${request.title}, ${state}`,
      lang: request.explains,
      items: [
        ...furniture(paper, margin, line, barLabel),
        ...(page === 0 ? [...head, ...grid.items] : []),
        ...(list[page] ?? []),
      ],
    };
  });
}

function heading(title: string, lines: readonly string[], box: Box): SheetItem[] {
  const head: SheetItem = {
    type: "text",
    runs: [{ text: title, bold: true }],
    x: box.x,
    y: box.y + 6,
    size: 14,
    turn: 0,
    anchor: "start",
  };
  return [
    head,
    ...lines.map(
      (text, i): SheetItem => ({
        type: "text",
        runs: [{ text }],
        x: box.x,
        y: box.y + 11 + factHeight * i,
        size: 9,
        turn: 0,
        anchor: "start",
      }),
    ),
  ];
}

function facts({ options }: DealtTiles, deal: TilesDeal, shown: Assembly, worded: boolean): string[] {
  const { rows, columns } = deal.frame;
  const other = isFrameOf(shown, deal.frame, options.turn)
    ? ""
    : ` Here they are laid as ${shown.rows} × ${shown.columns}.`;
  return [
    `${rows} × ${columns} tiles, deal code ${deal.code}. ${proofText(deal, options.turn)}${other}`,
    ...(misleads(deal) ? [difficultySentence(deal.difficulty)] : []),
    ...(worded ? [] : [texts.unworded]),
  ];
}

function misleads(deal: TilesDeal): deal is TilesDeal & { readonly difficulty: Difficulty } {
  return deal.difficulty !== undefined && deal.difficulty.wrongNeighbours > 0;
}

function drawGrid(
  dealt: DealtTiles,
  deal: TilesDeal,
  assembly: Assembly,
  view: "solved" | "second",
  box: Box,
  listHeight: number,
  press: Press,
): { readonly items: readonly SheetItem[]; readonly bottom: number; readonly worded: boolean } {
  const { rows, columns } = assembly;
  const above = headHeight + (misleads(deal) ? factHeight : 0);
  const top = box.y + above;
  const whole = Math.min(46, box.w / columns, (box.h - above) / rows);
  // The list goes below the grid where that leaves the grid at least three fifths of its size, else on a page of its own.
  const beside = (box.h - above - listGap - listHeight) / rows;
  const side = beside >= 0.6 * whole ? Math.min(whole, beside) : whole;
  const left = box.x + (box.w - side * columns) / 2;
  const size = commonSize(
    deal.solved.flat().filter((edge) => edge !== undefined),
    side,
    press,
  );
  const puzzle = toPuzzle(deal.frame, deal.solved, dealt.request.relation, dealt.options);
  // In another frame every tile lies elsewhere: there is nothing to point out.
  const compared = view === "second" && isFrameOf(assembly, deal.frame, dealt.options.turn);
  const differs = compared ? differences(puzzle, intended(deal.frame), assembly) : [];
  const squares = assembly.cells.map((_, i) => ({
    page: 0,
    x: left + (i % columns) * side,
    y: top + Math.floor(i / columns) * side,
  }));
  const items: SheetItem[] = squareCuts(squares, side).map((line) => ({ ...line, role: "rule" as const }));
  assembly.cells.forEach(({ tile, turn }, i) => {
    const square = squares[i];
    const face = deal.solved[tile];
    if (!square || !face) return;
    const place = { x: square.x, y: square.y, side, turn };
    const piece = deal.tiles.findIndex(({ cell }) => cell === tile);
    items.push({
      type: "area",
      x: place.x,
      y: place.y,
      w: side,
      h: side,
      piece,
      ...(differs[i] ? { differs: true } : {}),
    });
    if (differs[i]) items.push(...corner(place.x, place.y, side));
    if (size !== undefined && size >= readable) items.push(...drawFace(face, place, Math.min(size, 11), press));
    const code = pieceMark(deal.code, undefined, piece).split("-")[1] ?? "";
    items.push(...drawCentre([code], place, side < 20 ? 6 : 8, true));
  });
  return { items, bottom: top + side * rows, worded: size !== undefined && size >= readable };
}

/** A tile that lies elsewhere than in the key: filled corners, so that no colour is needed. */
function corner(x: number, y: number, side: number): SheetItem[] {
  const arm = Math.min(4, side / 6);
  const corners = [
    [x, y, 1, 1],
    [x + side, y, -1, 1],
    [x + side, y + side, -1, -1],
    [x, y + side, 1, -1],
  ] as const;
  return corners.map(([cx, cy, dx, dy]) => ({
    type: "shape",
    points: [
      [cx, cy],
      [cx + dx * arm, cy],
      [cx, cy + dy * arm],
    ],
  }));
}

function listLines({ used, request }: DealtTiles, deal: TilesDeal): (readonly Run[])[] {
  /** Code of the tile that shows the word from this place. */
  const codeOf = (source: Range): string => {
    const cell = deal.solved.findIndex((face) => face.some((edge) => edge?.source === source));
    const piece = deal.tiles.findIndex((tile) => tile.cell === cell);
    return piece < 0 ? "" : (pieceMark(deal.code, undefined, piece).split("-")[1] ?? "");
  };
  const pairs = used.map(({ left, right }): readonly Run[] => {
    const tiles = [codeOf(left.answers[0].range), codeOf(right.answers[0].range)].filter((code) => code !== "");
    return [
      ...told(left.answers[0]),
      { text: " = " },
      ...told(right.answers[0]),
      { text: `  ${tiles.join(" ")}`, bold: true },
    ];
  });
  const decoys = deal.decoys.edges.map(({ text }) => text);
  const outer = decoys.length > 0 ? [[{ text: `${texts.decoys}: `, bold: true }, { text: decoys.join(", ") }]] : [];
  return [
    [{ text: `${texts.pairs} (${request.sections.map(({ name }) => name).join(", ")})`, bold: true }],
    ...pairs,
    ...outer,
  ];
}
