import { plain, type Run } from "../../base/run";
import { type Block, type Cell, setDocument } from "../../page/document";
import type { Sheet } from "../../page/sheet";
import type { Press } from "../contract";
import { blanksText } from "../copies";
import { told } from "../printed";
import { counted } from "../report";
import { activityPage, stateOf } from "../sheet-page";
import {
  type DealtRebuild,
  type PartOrder,
  packetOf,
  type RebuildDeal,
  type Sentence,
  type SentenceCard,
  signIn,
} from "./model";
import { visibleOrders } from "./proof";

/** All sentences by packet, with their other accepted orders and translations; or a second way to lay them. */
export function solutionSheets(
  dealt: DealtRebuild,
  deal: RebuildDeal,
  view: "solved" | "second",
  press: Press,
): Sheet[] {
  const { request, sentences, options } = dealt;
  const { packets } = deal;
  const second = view === "second" ? deal.proof.second : undefined;
  if (view === "second" && !second) return [];
  const name = second ? "Another right way" : "Key";
  const page = activityPage(request, press, name, stateOf(request, deal));
  const rows = deal.sentences.flatMap((index, place): Cell[][] => {
    const sentence = sentences[index];
    if (!sentence) return [];
    const packet = packetOf(packets, index);
    const own = deal.cards[index] ?? [];
    const head = packet ? [String(packet.number), signIn(packet, index)].filter(Boolean).join(" ") : "";
    const [answer] = sentence.pair.left.answers;
    const translation = translationOf(dealt, index);
    const [written, ...others] = visibleOrders(sentence, own);
    const lang = request.teaches;
    const shown = second?.[place];
    const moved = shown !== undefined && shown !== written;
    const first: Cell[] = [
      [{ text: head, bold: true }],
      moved
        ? { runs: inOrder(own, shown).map((run) => ({ ...run, bold: true })), lang }
        : { runs: sentenceRuns(sentence), source: answer.range, lang },
      translation,
      `${own.length}`,
    ];
    if (second) return [first];
    return [
      first,
      ...others.map((order): Cell[] => ["", { runs: [{ text: "or: ", italic: true }, ...inOrder(own, order)], lang }]),
    ];
  });
  const blank = blanksText(options, request.classes);
  const blocks: Block[] = [
    { type: "heading", level: 1, text: `${name}: ${request.title}` },
    {
      type: "facts",
      rows: [
        {
          label: "Packets",
          value: `${counted(packets.length, "packet")}, ${counted(deal.dealt.length, "card")}${blank ? ` and ${blank}` : ""}; deal code ${deal.code}`,
        },
        { label: "Right orders", value: proofText(deal) },
      ],
    },
    {
      type: "table",
      size: 10.5,
      // Further accepted orders stand under their sentence, without a number of their own.
      goesOn: rows.flatMap(([number], i) => (number === "" ? [i] : [])),
      columns: [
        { head: "Packet", width: "fit" },
        { head: "Sentence", share: 3 },
        { head: "Translation", share: 2 },
        { head: "Cards", width: "fit", align: "end" },
      ],
      rows,
    },
  ];
  return setDocument(blocks, page, press.typeface);
}

/** The translation of a sentence; a picture by its description. */
export function translationOf({ sentences }: Pick<DealtRebuild, "sentences">, index: number): Run[] {
  const answer = sentences[index]?.pair.right.answers[0];
  if (!answer) return [];
  return plain(answer.runs).trim() === "" ? [{ text: answer.text, italic: true }] : [...answer.runs];
}

/** A sentence as it is written; what stands in it as a picture by its description, in its place. */
export function sentenceRuns({ pair, parts }: Sentence): readonly Run[] {
  if (parts.every(({ picture }) => !picture)) return pair.left.answers[0].runs;
  return parts.flatMap((part, i) => [...(i > 0 ? [{ text: " " }] : []), ...told(part)]);
}

/** Cards in an order, as they lie on the table. */
function inOrder(cards: readonly SentenceCard[], order: PartOrder): Run[] {
  return order.flatMap((part, i) => {
    const card = cards[part];
    return [...(i > 0 ? [{ text: " · " }] : []), ...(card ? told(card) : [])];
  });
}

function proofText({ proof, cards, sentences }: RebuildDeal): string {
  const equal = sentences.some((sentence) => {
    const own = cards[sentence] ?? [];
    return new Set(own.map(({ text }) => text)).size < own.length;
  });
  const exchange = equal ? " Equal cards of a sentence may be exchanged." : "";
  if (proof.status === "one")
    return `One accepted order for ${sentences.length === 1 ? "the sentence" : "each sentence"}.${exchange}`;
  return `Some sentences have further accepted orders, all told in the key.${exchange}`;
}
