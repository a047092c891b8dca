import { upTo } from "../../base/seed";
import { type Block, type Cell, setDocument, setWritingSlips } from "../../page/document";
import { bodyBox } from "../../page/furniture";
import { papers } from "../../page/paper";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { setsFor } from "../copies";
import { slipWords } from "../paper-words";
import { counted } from "../report";
import { activityPage, stateOf } from "../sheet-page";
import { type DealtLoop, type LoopDeal, signAt, signOfPiece } from "./model";
import { hasSlip } from "./options";

/** Rows of a slip's column, height of a row to write in, width of a column, and the clearance round a slip, mm. */
const rowsInColumn = 18;
const rowHeight = { usual: 7.5, least: 6.5 };
const columnWidth = 32;
const padding = 5;
const slipSize = 9;

/** For the room where to post the cards and who starts where; then the recording slips. */
export function loopPapers(dealt: DealtLoop, press: Press): Sheet[] {
  const { deals, options } = dealt;
  const plans = options.size === "room" ? deals.flatMap((deal) => postingPlan(dealt, deal, press)) : [];
  return [...plans, ...(hasSlip(options) ? deals.flatMap((deal) => slipsFor(dealt, deal, press)) : [])];
}

/** The card at which each of so many groups starts, as signs: spread evenly round the circle. */
export function startsFor(deal: LoopDeal, groups: number): string[] {
  const { length } = deal.cards;
  return upTo(groups).map((group) => {
    const place = groups <= length ? Math.floor((group * length) / groups) : group % length;
    return signAt(deal, place);
  });
}

/** Groups of each class, in their order; undefined where the unit does not say. */
function groupsOf({ request, options }: DealtLoop): number[] {
  return request.classes.map((learners) => setsFor(learners, options.group));
}

/** The start of each slip: those of every class where slips are used once, of the largest where they are wiped. */
export function slipStarts(dealt: DealtLoop, deal: LoopDeal): string[] {
  const { options, deals } = dealt;
  const groups = groupsOf(dealt);
  const largest = Math.max(0, ...groups);
  const hours = options.reuse === "once" ? groups : [largest];
  if (options.size === "mini") {
    const sets = deals.map(({ copies }) => (copies === "by copier" ? 1 : copies));
    const own = sets[deals.indexOf(deal)] ?? 1;
    const all = sets.reduce((sum, each) => sum + each, 0);
    const wanted = hours.reduce((sum, each) => sum + each, 0);
    return upTo(groups.length === 0 ? own : Math.ceil((wanted * own) / all)).map(() => "");
  }
  if (groups.length === 0) return startsFor(deal, deal.cards.length);
  return hours.flatMap((count) => startsFor(deal, groupsAt(dealt, deal, count)));
}

/**
 * How many of the groups of a class go round a circle: all of them, or the levels share them. Further circles are for those who
 * finish first: half of the groups at most.
 */
function groupsAt({ deals }: DealtLoop, deal: LoopDeal, groups: number): number {
  const levels = [...new Set(deals.map(({ level }) => level))];
  const own = Math.floor(groups / levels.length) + (levels.indexOf(deal.level) < groups % levels.length ? 1 : 0);
  return deal.version === 1 ? own : Math.ceil(own / 2);
}

function postingPlan(dealt: DealtLoop, deal: LoopDeal, press: Press): Sheet[] {
  const { request, options } = dealt;
  const [count, decoys] = [deal.cards.length, deal.decoys.length];
  const groups = [...new Set(groupsOf(dealt))].sort((a, b) => b - a);
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `Round the room: ${request.title}` },
    {
      type: "facts",
      rows: [
        {
          label: "Cards",
          value: `${count + decoys}${decoys > 0 ? `, ${decoys} of which ${decoys === 1 ? "belongs" : "belong"} nowhere` : ""}, deal code ${deal.code}${deal.version > 1 ? ", for those who finish first" : ""}`,
        },
        { label: "Where", value: "At eye height, well apart, clear of doors and of each other’s readers." },
      ],
    },
    { type: "heading", level: 2, text: "Post in this order" },
    {
      type: "paragraph",
      text: "Go round the room once. So posted, no card hangs beside the one before or after it in the circle.",
    },
    placeTable(
      deal.posting.map((piece) => signOfPiece(deal, piece)),
      "Place",
      "Card",
    ),
    { type: "heading", level: 2, text: deal.version > 1 ? "For those who finish first" : "Where groups start" },
    {
      type: "paragraph",
      text:
        deal.version > 1
          ? `No group starts the hour here. Whoever is done with another circle goes on to one of these cards${hasSlip(options) ? " with a slip of this circle" : ""}.`
          : "The starts are spread evenly round the circle. Each group comes back to its own.",
    },
    ...(groups.length === 0 ? [count] : groups).flatMap((each): Block[] => {
      const own = groups.length === 0 ? count : groupsAt(dealt, deal, each);
      const here = own === each ? "" : deal.version > 1 ? `, ${own} at most` : `, ${own} of them here`;
      return [
        { type: "heading", level: 3, text: `${classesName(dealt, each)}${here}` },
        placeTable(startsFor(deal, own), deal.version > 1 ? "Slip" : "Group", "Start"),
      ];
    }),
  ];
  return setDocument(blocks, activityPage(request, press, "Round the room", stateOf(request, deal)), press.typeface);
}

function classesName(dealt: DealtLoop, groups: number): string {
  const { request } = dealt;
  const learners = request.classes.filter((each) => setsFor(each, dealt.options.group) === groups);
  const what = counted(groups, "group");
  return learners.length === 0 ? what : `${what}: class of ${learners.join(", of ")}`;
}

/** Numbers above, signs below, twelve side by side. */
function placeTable(signs: readonly string[], number: string, sign: string): Block {
  const across = 12;
  const rows = upTo(Math.ceil(signs.length / across)).flatMap((row): Cell[][] => {
    const part = signs.slice(row * across, (row + 1) * across);
    const filled = upTo(across).map((i) => part[i] ?? "");
    return [
      [number, ...filled.map((each, i) => (each ? `${row * across + i + 1}` : ""))],
      [[{ text: sign, bold: true }], ...filled.map((each): Cell => [{ text: each, bold: true }])],
    ];
  });
  return {
    type: "table",
    size: 11,
    columns: [{ width: "fit" }, ...upTo(across).map(() => ({ align: "middle" as const }))],
    rows,
  };
}

function slipsFor(dealt: DealtLoop, deal: LoopDeal, press: Press): Sheet[] {
  const { request, options } = dealt;
  const starts = slipStarts(dealt, deal);
  const count = deal.cards.length;
  const columns = Math.ceil((count + 1) / rowsInColumn);
  const body = bodyBox(papers[options.paper], options.margin);
  const across = Math.max(1, Math.floor(body.w / (columns * columnWidth + 2 * padding + 18)));
  const blocks = (row: number, index: number): Block[] => slipBlocks(dealt, deal, starts[index] ?? "", columns, row);
  const page = activityPage(request, press, "Recording slips", [deal.code]);
  const slip = { blocks, row: rowHeight, across, padding, size: slipSize };
  return setWritingSlips(slip, starts.length, page, press.typeface);
}

/** Numbered rows for signs; the last one must be the first again. */
function slipBlocks(
  { request, options }: DealtLoop,
  deal: LoopDeal,
  start: string,
  columns: number,
  rowHeight: number,
): Block[] {
  const count = deal.cards.length;
  const rows = Math.ceil((count + 1) / columns);
  const words = slipWords(request.explains);
  const cell = (i: number): Cell[] => {
    if (i > count) return ["", ""];
    return [i === count ? "= 1" : `${i + 1}`, i === 0 ? [{ text: start, bold: true }] : ""];
  };
  return [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    {
      type: "paragraph",
      size: 7.5,
      text: [
        words.deal(deal.code),
        ...(deal.number === undefined ? [] : [words.circle(deal.number)]),
        ...(deal.version > 1 ? [words.finishers] : []),
        words.group,
      ].join(" · "),
    },
    ...(options.size === "room" && deal.number !== undefined
      ? [{ type: "paragraph", text: words.ownCircle(deal.number) } as const]
      : []),
    {
      type: "table",
      rules: "grid",
      rowHeight,
      columns: upTo(columns).flatMap(() => [
        { width: "fit" as const, align: "end" as const },
        { head: words.card, align: "middle" as const },
      ]),
      rows: upTo(rows).map((row) => upTo(columns).flatMap((column) => cell(column * rows + row))),
    },
  ];
}
