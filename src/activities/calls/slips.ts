import { upTo } from "../../base/seed";
import { type Block, heightOfBlocks, setInBox, setSlips } from "../../page/document";
import { bodyBox } from "../../page/furniture";
import { type Box, papers } from "../../page/paper";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { setsFor } from "../copies";
import { activityPage } from "../sheet-page";
import { truthWordsIn } from "../statements";
import type { DealtCalls } from "./model";

/** Clearance round a slip and the height of a row to tally in, for pairs and for teams, mm. */
const padding = 5;
const pairRow = 10;
const teamRow = 22;
const pairSize = 9;
const teamSize = 12;

/** Tally slips for the groups of all classes, a tally sheet for the teams of each, and blank slips for statements. */
export function callsPapers(dealt: DealtCalls, press: Press): Sheet[] {
  const { options, deals, hands } = dealt;
  if (deals.length === 0) return [];
  const names = upTo(playersOf(dealt)).map((i) => "ABCDEFGHI".charAt(i));
  const pairs =
    options.slip === "none"
      ? []
      : slips(dealt, press, {
          name: "Tally slips",
          head: options.group === 2 ? "Pair:" : "Group:",
          rows: names,
          count: slipCount(dealt),
          columns: 2,
          rowHeight: pairRow,
          size: pairSize,
        });
  const teams =
    options.teams === undefined
      ? []
      : slips(dealt, press, {
          name: "Team tally",
          head: `${hands[0]?.length ?? 0} statements. Class:`,
          rows: upTo(options.teams).map((i) => `Team ${i + 1}`),
          count: options.reuse === "once" ? Math.max(1, dealt.request.classes.length) : 1,
          columns: 1,
          rowHeight: teamRow,
          size: teamSize,
        });
  return [...pairs, ...teams, ...statementSlips(dealt, press)];
}

/** A slip for each group: of every class where slips are used once, of the largest where they are wiped. */
export function slipCount({ options, request }: DealtCalls): number {
  const groups = request.classes.map((learners) => setsFor(learners, options.group));
  if (groups.length === 0) return typeof options.copies === "number" ? options.copies : 1;
  return options.reuse === "once" ? groups.reduce((sum, each) => sum + each, 0) : Math.max(...groups);
}

/** Rows for the learners of a group; one more where some groups of a class are larger. */
function playersOf({ options, request }: DealtCalls): number {
  const odd = request.classes.length === 0 || request.classes.some((learners) => learners % options.group !== 0);
  return options.group + (odd ? 1 : 0);
}

interface Tally {
  readonly name: string;
  readonly head: string;
  readonly rows: readonly string[];
  readonly count: number;
  /** Slips side by side. */
  readonly columns: number;
  /** mm */
  readonly rowHeight: number;
  /** pt */
  readonly size: number;
}

function slips(dealt: DealtCalls, press: Press, tally: Tally): Sheet[] {
  const { request, options } = dealt;
  const blocks: Block[] = [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    { type: "paragraph", text: tally.head, size: tally.size * 0.85 },
    {
      type: "table",
      rules: "grid",
      rowHeight: tally.rowHeight,
      columns: [{ width: "fit" }, { head: "Points" }, { head: "Total", width: tally.rowHeight * 1.6 }],
      rows: tally.rows.map((row) => [[{ text: row, bold: true }]]),
    },
  ];
  const body = bodyBox(papers[options.paper], options.margin);
  const w = body.w / tally.columns;
  const natural = heightOfBlocks(blocks, w - 2 * padding, press.typeface, tally.size);
  const h = Math.min(body.h, natural + 2 * padding);
  const draw = (box: Box) => setInBox(blocks, box, press.typeface, { size: tally.size, least: 5 }).items;
  return setSlips({ w, h, padding, draw }, tally.count, activityPage(request, press, tally.name, []));
}

/** Slips on which learners write statements for the caller, with their answer and their code: so many for each group. */
function statementSlips(dealt: DealtCalls, press: Press): Sheet[] {
  const { request, options } = dealt;
  if (options.blanks === 0) return [];
  const { yes, no } = truthWordsIn(request.explains);
  const blocks: Block[] = [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    {
      type: "table",
      rules: "rows",
      rowHeight: pairRow,
      size: pairSize,
      columns: [{ width: "fit" }, {}],
      rows: [
        ["Statement", ""],
        ["", ""],
        ["Right is", ""],
      ],
    },
    {
      type: "table",
      rules: "rows",
      rowHeight: pairRow,
      size: pairSize,
      columns: [
        { width: "fit" },
        { width: pairRow, align: "middle" },
        { width: "fit" },
        { width: pairRow, align: "middle" },
        { width: "fit" },
        {},
      ],
      rows: [[yes, { boxes: 1 }, no, { boxes: 1 }, "By", ""]],
    },
  ];
  const body = bodyBox(papers[options.paper], options.margin);
  const w = body.w / 2;
  const h = Math.min(body.h, heightOfBlocks(blocks, w - 2 * padding, press.typeface, pairSize) + 2 * padding);
  const draw = (box: Box) => setInBox(blocks, box, press.typeface, { size: pairSize, least: 5 }).items;
  const page = activityPage(request, press, "Statement slips", []);
  return setSlips({ w, h, padding, draw }, options.blanks * slipCount(dealt), page);
}
