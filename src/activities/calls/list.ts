import { type Block, type Cell, setDocument, type Table } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { setsFor } from "../copies";
import { counted } from "../report";
import { activityPage } from "../sheet-page";
import { type Claim, labelled, truthWordsIn } from "../statements";
import { type CallsDeal, calledIn, type DealtCalls } from "./model";

/** The caller reads it standing, from a hand held lower than a desk is far. pt */
const listSize = 11;
const rowHeight = 8.5;

/** The caller's list of one hour, with its answers: it is the key as well. */
export function callerSheets(dealt: DealtCalls, deal: CallsDeal, press: Press): Sheet[] {
  const { request } = dealt;
  const [claims, reserve] = [calledIn(dealt, deal.order), calledIn(dealt, deal.reserve)];
  const hour = hourName(dealt, deal);
  const whom = [...(hour ? [hour] : []), ...learnersIn(dealt, deal)];
  const page = activityPage(request, press, "Caller’s list", [...(hour ? [hour] : []), deal.code]);
  const right = claims.filter(({ truth }) => truth).length;
  const { yes, no } = truthWordsIn(request.explains);
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `Caller’s list: ${request.title}` },
    {
      type: "facts",
      rows: [
        ...(whom.length > 0 ? [{ label: "For", value: whom.join(", ") }] : []),
        {
          label: "Statements",
          value: `${claims.length}: ${right} × ${yes}, ${claims.length - right} × ${no}. Deal code ${deal.code}.`,
        },
        { label: "How", value: "Read each one twice, count to three, say the answer, then tick it off." },
      ],
    },
    claimTable(dealt, claims, (i) => `${i + 1}`),
    ...(reserve.length > 0
      ? [{ type: "heading", level: 2, text: "For ties" } as const, claimTable(dealt, reserve, (i) => `+${i + 1}`)]
      : []),
  ];
  return setDocument(blocks, page, press.typeface);
}

/** `hour 2 of 3, hard`, as far as there are several lists. */
export function hourName({ deals }: DealtCalls, deal: CallsDeal): string | undefined {
  const hours = new Set(deals.map(({ version }) => version)).size;
  const levels = new Set(deals.map(({ level }) => level)).size;
  const parts = [...(hours > 1 ? [`hour ${deal.version} of ${hours}`] : []), ...(levels > 1 ? [deal.level] : [])];
  return parts.length > 0 ? parts.join(", ") : undefined;
}

/** `23 learners in 11 groups`; empty where no class is known for an hour. */
function learnersIn({ request, options }: DealtCalls, deal: CallsDeal): string[] {
  const learners = request.classes[deal.version - 1];
  if (learners === undefined) return [];
  return [`${counted(learners, "learner")} in ${counted(setsFor(learners, options.group), "group")}`];
}

function claimTable({ request }: DealtCalls, claims: readonly Claim[], number: (i: number) => string): Table {
  const { yes, no } = truthWordsIn(request.explains);
  const lang = request.teaches;
  return {
    type: "table",
    size: listSize,
    rowHeight,
    columns: [
      { width: "fit", align: "end" },
      { head: "Statement", share: 3 },
      { head: "Answer", width: "fit" },
      { head: "Correction", share: 2 },
      { head: "Done", width: "fit", align: "middle" },
    ],
    rows: claims.map((claim, i): Cell[] => [
      number(i),
      { runs: labelled(claim), source: claim.source, lang },
      [{ text: claim.truth ? yes : no, bold: true }],
      claim.correction ? { runs: claim.correction.runs, source: claim.correction.source, lang } : "",
      { boxes: 1 },
    ]),
  };
}
