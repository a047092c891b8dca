import { type Block, heightOfBlocks, setInBox, setSlips } from "../../page/document";
import { bodyBox } from "../../page/furniture";
import { papers } from "../../page/paper";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { setsFor } from "../copies";
import { slipWords } from "../paper-words";
import { activityPage } from "../sheet-page";
import { type DealtRebuild, signIn } from "./model";

const padding = 5;
const slipSize = 10;
/** Room to write a sentence, mm. */
const rowHeight = 9;

/** Slips on which learners write the sentences beside the packets' numbers. They serve all levels and versions. */
export function rebuildPapers(dealt: DealtRebuild, press: Press): Sheet[] {
  const { options, deals, request } = dealt;
  if (options.slip === "none" || deals.length === 0) return [];
  const blocks = slipBlocks(dealt);
  const body = bodyBox(papers[options.paper], options.margin);
  const wanted = heightOfBlocks(blocks, body.w - 2 * padding, press.typeface, slipSize) + 2 * padding;
  const h = body.h / Math.max(1, Math.floor(body.h / wanted));
  const codes = deals.map(({ code }) => code);
  const page = activityPage(request, press, "Slips", codes.length <= 4 ? codes : []);
  const draw = (box: Parameters<typeof setInBox>[1]) =>
    setInBox(blocks, box, press.typeface, { size: slipSize, least: 5 }).items;
  return setSlips({ w: body.w, h, padding, draw }, slipCount(dealt), page);
}

/** A slip for each group: of every class where slips are used once, of the largest where they are wiped. */
export function slipCount({ options, request }: DealtRebuild): number {
  const groups = request.classes.map((learners) => setsFor(learners, options.group));
  if (groups.length === 0) return 1;
  return options.reuse === "once" ? groups.reduce((sum, each) => sum + each, 0) : Math.max(...groups);
}

function slipBlocks({ request, packets }: DealtRebuild): Block[] {
  const heads = packets.flatMap((packet) =>
    packet.sentences.map((sentence) => [String(packet.number), signIn(packet, sentence)].filter(Boolean).join(" ")),
  );
  const words = slipWords(request.explains);
  return [
    { type: "paragraph", text: [{ text: request.title, bold: true }] },
    {
      type: "table",
      rules: "rows",
      rowHeight,
      columns: [{ head: words.packet, width: "fit" }, { head: words.sentence }],
      rows: heads.map((head) => [head, ""]),
    },
  ];
}
