import { type Block, type Cell, setDocument } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import { longestAscending } from "../../prove/orders/orders";
import type { Press } from "../contract";
import { told } from "../printed";
import { activityPage, stateOf } from "../sheet-page";
import { summaryOf } from "./deal";
import { type DealtStrips, type StoryOrder, type StripsDeal, signOf } from "./model";
import { placesOf, writePlaces } from "./story";

/** The story in order with each strip's letter; or a second order that is right as well, what has moved in bold. */
export function solutionSheets(dealt: DealtStrips, deal: StripsDeal, view: "solved" | "second", press: Press): Sheet[] {
  const { request } = dealt;
  const { events } = deal;
  const meant = events.map((_, i) => i);
  const order = view === "second" ? deal.proof.second : meant;
  if (!order) return [];
  const name = view === "second" ? "Another right order" : "Key";
  const page = activityPage(request, press, name, stateOf(request, deal));
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `${name}: ${request.title}` },
    {
      type: "facts",
      rows: [
        ...(deal.desk === undefined ? [] : [{ label: "Desk", value: String(deal.desk) }]),
        { label: "Strips", value: `${summaryOf(events.length, dealt)}, deal code ${deal.code}` },
        ...(events.length > 0 ? [{ label: "Order", value: [{ text: signs(deal, order), bold: true }] }] : []),
        { label: "Right orders", value: proofText(deal) },
      ],
    },
    ...(events.length > 0 ? [orderTable(dealt, deal, order, view)] : []),
    ...notes(dealt, deal),
  ];
  return setDocument(blocks, page, press.typeface);
}

/** One sheet for all desks: a line for each, with its letters in order. Empty where no desk has printed events. */
export function deskKey({ deals, events, request }: DealtStrips, press: Press): Sheet[] {
  if (events.length === 0 || !deals.some(({ desk }) => desk !== undefined)) return [];
  const page = activityPage(request, press, "Key of the desks", []);
  const rows = deals.map((deal): Cell[] => {
    const [first] = deal.events;
    return [
      [{ text: String(deal.desk), bold: true }],
      deal.code,
      [{ text: signs(deal), bold: true }],
      first ? { runs: told(first), source: first.source, lang: request.teaches } : "",
    ];
  });
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `Key of the desks: ${request.title}` },
    {
      type: "paragraph",
      text: "Each desk has its own letters. Those in brackets may stand in any order among themselves.",
    },
    {
      type: "table",
      size: 11,
      columns: [
        { head: "Desk", width: "fit", align: "middle" },
        { head: "Deal code", width: "fit" },
        { head: "Right order" },
        { head: "The story begins" },
      ],
      rows,
    },
  ];
  return setDocument(blocks, page, press.typeface);
}

/** Letters in order; those that may stand in any order among themselves in brackets. */
export function signs(deal: StripsDeal, order: StoryOrder = [...deal.events.keys()]): string {
  const { events } = deal;
  const groups: { rank: number; signs: string[] }[] = [];
  order.forEach((event, place) => {
    const rank = events[place]?.rank ?? 0;
    const sign = signOf(deal.dealt.indexOf(event));
    const last = groups.at(-1);
    if (last?.rank === rank) last.signs.push(sign);
    else groups.push({ rank, signs: [sign] });
  });
  return groups.map(({ signs: own }) => (own.length > 1 ? `(${own.join(" ")})` : own.join(""))).join(" ");
}

function orderTable({ request }: DealtStrips, deal: StripsDeal, order: StoryOrder, view: "solved" | "second"): Block {
  const { events } = deal;
  return {
    type: "table",
    size: 11,
    columns: [{ head: "Place", width: "fit" }, { head: "Strip", width: "fit", align: "middle" }, { head: "Event" }],
    rows: order.map((index, place): Cell[] => {
      const event = events[index];
      if (!event) return [];
      const moved = view === "second" && index !== place;
      const places = view === "second" ? `${place + 1}` : writePlaces(placesOf(events, event));
      const runs = moved ? told(event).map((run) => ({ ...run, bold: true })) : told(event);
      return [
        places,
        [{ text: signOf(deal.dealt.indexOf(index)), bold: true }],
        { runs, source: event.source, lang: request.teaches },
      ];
    }),
  };
}

function proofText({ events, proof }: StripsDeal): string {
  if (events.length === 0) return "The learners write the events; the writers know the order.";
  if (proof.status === "one") return "One order is right, proven.";
  if (proof.status !== "several") return "How many orders are right is not settled.";
  const many = proof.capped ? `At least ${proof.count}` : `${proof.count}`;
  return `${many} orders are right, proven: letters in brackets may change places among themselves.`;
}

function notes({ options }: DealtStrips, deal: StripsDeal): Block[] {
  const { events } = deal;
  const lines: string[] = [];
  if (deal.told.length > 0) {
    const shown = deal.told.map((event) => signOf(deal.dealt.indexOf(event))).sort();
    lines.push(
      `${shown.join(" and ")} ${shown.length > 1 ? "show" : "shows"} ${shown.length > 1 ? "their places" : "its place"}.`,
    );
  }
  const alike = new Map<string, number[]>();
  events.forEach(({ key }, index) => {
    alike.set(key, [...(alike.get(key) ?? []), deal.dealt.indexOf(index)]);
  });
  for (const strips of alike.values()) {
    if (strips.length > 1)
      lines.push(`${strips.map(signOf).sort().join(" and ")} have the same text: either may stand for the other.`);
  }
  if (events.length > 0)
    lines.push(
      `For points: count the strips that remain when as few as possible are taken out so that the rest are in order${examplePoints(deal)}.`,
    );
  if (options.blanks > 0)
    lines.push(
      options.blanks === 1
        ? "The number 1 on the blank strip is a name, not a place: whoever writes on it notes its place on the slip."
        : `The numbers 1 to ${options.blanks} on blank strips are names, not places: whoever writes on them notes their order on the slip.`,
    );
  return lines.length > 0 ? [{ type: "bullets", items: lines }] : [];
}

/** How many points an order gets in which the last strip lies first; nothing where that makes no difference. */
function examplePoints({ events, dealt }: StripsDeal): string {
  const laid = [events.length - 1, ...events.keys()].slice(0, events.length);
  const places = laid.map((index) => events[index]?.rank ?? 0);
  const points = longestAscending(places);
  const alike = new Set(events.map(({ key }) => key)).size < events.length;
  if (alike || points === events.length) return "";
  return `; ${laid.map((index) => signOf(dealt.indexOf(index))).join("")} gets ${points} of ${events.length}`;
}
