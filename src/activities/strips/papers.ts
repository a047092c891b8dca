import { upTo } from "../../base/seed";
import { type Block, type Column, setWritingSlips } from "../../page/document";
import { bodyBox } from "../../page/furniture";
import { papers } from "../../page/paper";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { setsFor } from "../copies";
import { slipWords } from "../paper-words";
import { activityPage } from "../sheet-page";
import { deskKey } from "./key";
import type { DealtStrips, StripsDeal } from "./model";

/** Height of a row to write in, a column for one desk, and the clearance round a slip, mm. */
const rowHeight = { usual: 7.5, least: 6.5 };
const deskWidth = 14;
const padding = 5;
const slipSize = 9;

/** Recording slips: the strips' letters in the order that the learners find; before them the key of all desks. */
export function stripPapers(dealt: DealtStrips, press: Press): Sheet[] {
  return [...deskKey(dealt, press), ...slips(dealt, press)];
}

function slips(dealt: DealtStrips, press: Press): Sheet[] {
  const { options, deals, request } = dealt;
  if (options.slip === "none" || deals.length === 0) return [];
  // Visitors of desks take one slip along to all sets.
  if (options.desks !== undefined) return slipsFor(dealt, undefined, slipCount(dealt), press);
  const sets = deals.map(({ copies }) => (copies === "by copier" ? 1 : copies));
  const all = sets.reduce((sum, each) => sum + each, 0);
  return deals.flatMap((deal, i) => {
    const own = Math.ceil((slipCount(dealt) * (sets[i] ?? 1)) / all);
    const master = deal.copies === "by copier" && request.classes.length === 0;
    return slipsFor(dealt, deal, master ? 1 : own, press);
  });
}

/** A slip for each group: of every class where slips are used once, of the largest where they are wiped. */
export function slipCount({ options, request, deals }: DealtStrips): number {
  const groups = request.classes.map((learners) => setsFor(learners, options.group));
  if (groups.length === 0) {
    const sets = deals.reduce((sum, { copies }) => sum + (copies === "by copier" ? 1 : copies), 0);
    return Math.max(1, sets);
  }
  return options.reuse === "once" ? groups.reduce((sum, each) => sum + each, 0) : Math.max(...groups);
}

function slipsFor(dealt: DealtStrips, deal: StripsDeal | undefined, count: number, press: Press): Sheet[] {
  const { request, options } = dealt;
  const { paper, margin, desks } = options;
  const body = bodyBox(papers[paper], margin);
  const wanted = desks === undefined ? body.w / 3 : 24 + desks * deskWidth + 2 * padding;
  const across = Math.max(1, Math.floor(body.w / wanted));
  const page = activityPage(request, press, "Recording slips", [deal?.code ?? ""].filter(Boolean));
  const blocks = (row: number): Block[] => slipBlocks(dealt, deal, row);
  return setWritingSlips({ blocks, row: rowHeight, across, padding, size: slipSize }, count, page, press.typeface);
}

function slipBlocks(dealt: DealtStrips, deal: StripsDeal | undefined, height: number): Block[] {
  const { deals, options, request } = dealt;
  const { desks, blanks } = options;
  const words = slipWords(request.explains);
  const rows = Math.max(0, ...deals.map(({ events }) => events.length)) + blanks;
  const columns: Column[] =
    desks === undefined
      ? [
          { head: words.place, width: "fit", align: "middle" },
          { head: words.strip },
          { head: words.right, width: "fit", align: "middle" },
        ]
      : [
          { head: words.place, width: "fit", align: "middle" },
          ...upTo(desks).map((i): Column => ({ head: `${i + 1}`, align: "middle" })),
        ];
  return [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    {
      type: "paragraph",
      size: 7.5,
      text:
        desks === undefined
          ? [deal ? words.deal(deal.code) : "", words.set].filter(Boolean).join(" · ")
          : `${words.desks} ${words.group}`,
    },
    {
      type: "table",
      rules: "grid",
      rowHeight: height,
      columns,
      rows: upTo(rows).map((i) =>
        desks === undefined
          ? [`${i + 1}`, "", { boxes: 1 }]
          : [`${i + 1}`, ...deals.map(({ events }) => (i < events.length + blanks ? "" : "–"))],
      ),
    },
  ];
}
