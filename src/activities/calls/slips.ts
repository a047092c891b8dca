import { upTo } from "../../base/seed";
import { type Block, setWritingSlips } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { setsFor } from "../copies";
import { slipWords } from "../paper-words";
import { activityPage } from "../sheet-page";
import { truthWordsIn } from "../statements";
import type { DealtCalls } from "./model";

/** Clearance round a slip and the height of a row to tally in, for pairs and for teams, mm. */
const padding = 5;
const pairRow = { usual: 10, least: 8.5 };
const teamRow = { usual: 22, least: 18 };
const pairSize = 9;
const teamSize = 12;

/** Tally slips for the groups of all classes, a tally sheet for the teams of each, and blank slips for statements. */
export function callsPapers(dealt: DealtCalls, press: Press): Sheet[] {
  const { options, deals, hands } = dealt;
  if (deals.length === 0) return [];
  const words = slipWords(dealt.request.explains);
  const names = upTo(playersOf(dealt)).map((i) => "ABCDEFGHI".charAt(i));
  const pairs =
    options.slip === "none"
      ? []
      : slips(dealt, press, {
          name: "Tally slips",
          head: options.group === 2 ? words.pair : words.group,
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
          head: `${words.statements(hands[0]?.length ?? 0)} ${words.class}`,
          rows: upTo(options.teams).map((i) => words.team(i + 1)),
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
  readonly rowHeight: { readonly usual: number; readonly least: number };
  /** pt */
  readonly size: number;
}

function slips(dealt: DealtCalls, press: Press, tally: Tally): Sheet[] {
  const { request } = dealt;
  const words = slipWords(request.explains);
  const blocks = (row: number): Block[] => [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    { type: "paragraph", text: tally.head, size: tally.size * 0.85 },
    {
      type: "table",
      rules: "grid",
      rowHeight: row,
      columns: [{ width: "fit" }, { head: words.points }, { head: words.total, width: tally.rowHeight.usual * 1.6 }],
      rows: tally.rows.map((name) => [[{ text: name, bold: true }]]),
    },
  ];
  const page = activityPage(request, press, tally.name, []);
  const slip = { blocks, row: tally.rowHeight, across: tally.columns, padding, size: tally.size };
  return setWritingSlips(slip, tally.count, page, press.typeface);
}

/** Slips on which learners write statements for the caller, with their answer and their code: so many for each group. */
function statementSlips(dealt: DealtCalls, press: Press): Sheet[] {
  const { request, options } = dealt;
  if (options.blanks === 0) return [];
  const words = slipWords(request.explains);
  const { yes, no } = truthWordsIn(request.explains);
  const blocks = (row: number): Block[] => [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    {
      type: "table",
      rules: "rows",
      rowHeight: row,
      size: pairSize,
      columns: [{ width: "fit" }, {}],
      rows: [
        [words.statement, ""],
        ["", ""],
        [words.rightIs, ""],
      ],
    },
    {
      type: "table",
      rules: "rows",
      rowHeight: row,
      size: pairSize,
      columns: [
        { width: "fit" },
        { width: pairRow.usual, align: "middle" },
        { width: "fit" },
        { width: pairRow.usual, align: "middle" },
        { width: "fit" },
        {},
      ],
      rows: [[yes, { boxes: 1 }, no, { boxes: 1 }, words.by, ""]],
    },
  ];
  const page = activityPage(request, press, "Statement slips", []);
  const slip = { blocks, row: pairRow, across: 2, padding, size: pairSize };
  return setWritingSlips(slip, options.blanks * slipCount(dealt), page, press.typeface);
}
