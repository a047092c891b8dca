import { type Block, type Cell, setDocument } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { Circle } from "../../prove/loops/loops";
import type { Press } from "../contract";
import { listed } from "../printed";
import { activityPage, stateOf } from "../sheet-page";
import { summaryOf } from "./deal";
import { type DealtLoop, type LoopDeal, signAt } from "./model";
import { drawRing, ringHeight } from "./ring";

/** The circle as a ring of signs and as a list; or a second circle, what follows otherwise in bold. */
export function solutionSheets(dealt: DealtLoop, deal: LoopDeal, view: "solved" | "second", press: Press): Sheet[] {
  const { request } = dealt;
  const meant = deal.cards.map((_, i) => i);
  const circle = view === "second" ? deal.proof.second : meant;
  if (!circle) return [];
  const name = view === "second" ? "Another full circle" : "Key";
  const signs = circle.map((place) => signAt(deal, place));
  const outside = deal.decoys.map((_, i) => signAt(deal, deal.cards.length + i)).sort();
  const height = ringHeight(signs.length);
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `${name}: ${request.title}` },
    {
      type: "facts",
      rows: [
        { label: "Cards", value: `${summaryOf(dealt, deal)}, deal code ${deal.code}` },
        {
          label: "Order",
          value: [{ text: `${signs.join(" ")} `, bold: true }, { text: "and back to the first: begin anywhere" }],
        },
        ...(outside.length > 0
          ? [{ label: "Nowhere", value: [{ text: outside.join(" "), bold: true }, { text: ": left over" }] }]
          : []),
        { label: "Proof", value: proofText(deal) },
      ],
    },
    { type: "figure", height, draw: (box) => drawRing(signs, deal.code, box) },
    cardTable(deal, circle, view),
    ...(outside.length > 0
      ? [{ type: "heading", level: 2, text: "Cards that belong nowhere" } as const, decoyTable(deal)]
      : []),
  ];
  return setDocument(blocks, activityPage(request, press, name, stateOf(request, deal)), press.typeface);
}

function cardTable(deal: LoopDeal, circle: Circle, view: "solved" | "second"): Block {
  const count = circle.length;
  return {
    type: "table",
    size: 9,
    columns: [
      { head: "Card", width: "fit", align: "middle" },
      { head: "Above the line" },
      { head: "Under the line" },
      { head: "Next", width: "fit", align: "middle" },
    ],
    rows: circle.map((place, i): Cell[] => {
      const card = deal.cards[place];
      const next = circle[(i + 1) % count] ?? place;
      if (!card) return [];
      const otherwise = view === "second" && next !== (place + 1) % count;
      return [
        [{ text: signAt(deal, place), bold: true }],
        listed(card.answer),
        listed(card.prompt),
        [{ text: signAt(deal, next), bold: view === "solved" || otherwise }],
      ];
    }),
  };
}

function decoyTable(deal: LoopDeal): Block {
  return {
    type: "table",
    size: 9,
    columns: [{ head: "Card", width: "fit", align: "middle" }, { head: "Above the line" }, { head: "Under the line" }],
    rows: deal.decoys.map((card, i): Cell[] => [
      [{ text: signAt(deal, deal.cards.length + i), bold: true }],
      listed(card.answer),
      listed(card.prompt),
    ]),
  };
}

export function proofText(deal: LoopDeal): string {
  const { proof, smaller } = deal;
  const early = smaller
    ? `A smaller circle can close: ${smaller.map((place) => signAt(deal, place)).join(" ")}.`
    : "No smaller circle closes, proven.";
  if (proof.status === "one") return `One full circle, proven. ${early}`;
  return `${proof.status === "several" ? "More than one full circle." : "Whether there is one full circle is not settled."} ${early}`;
}
