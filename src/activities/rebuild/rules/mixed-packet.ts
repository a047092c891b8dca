import type { Fix, Report, Rule } from "../../../base/finding";
import { buildable, otherSentences } from "../../../prove/orders/orders";
import { setOption } from "../../edits";
import { quotedList } from "../../report";
import { dropPair } from "../../shared-answers";
import type { DealtRebuild, Packet, Sentence } from "../model";
import { asWords } from "../proof";
import { type RebuildContext, shortened } from "./context";

/** Choices tried for one packet. */
const budget = 20_000;

export const mixedPacket: Rule<RebuildContext> = {
  code: "mixed-packet",
  severity: "information",
  title: "A packet whose cards make other sentences as well",
  why: "Where a packet holds several sentences, all of its cards together can be laid as some of them twice and others not at all: with the cards of `Ela | come` and `Ele | bebe` beside `Ela | bebe` and `Ele | come`, the first two can be laid twice. Only the letters on the cards tell which belong together. Put fewer sentences into a packet, or take one out.",
  example: {
    wrong:
      "## People\n\n- Ela | come = she eats\n- Ele | bebe = he drinks\n- Ela | bebe = she drinks\n- Ele | come = he eats\n\n```activity\nmake: rebuild\npacket: 4\n```",
    right:
      "## People\n\n- Ela | come = she eats\n- Ele | bebe = he drinks\n- Ela | bebe = she drinks\n- Ele | come = he eats\n\n```activity\nmake: rebuild\npacket: 2\n```",
  },
  check: ({ dealt }) =>
    dealt.deals.length === 0 ? [] : dealt.packets.flatMap((packet): Report[] => mixedUp(dealt, packet) ?? []),
};

/** What else a packet's cards make; a sentence with another one's cards is the matter of `same-cards`. */
function mixedUp(dealt: DealtRebuild, packet: Packet): Report[] | undefined {
  const own = packet.sentences.flatMap((index) => dealt.sentences[index] ?? []);
  const puzzles = own.map(asWords);
  if (own.length < 2 || buildable(puzzles).length > 0) return undefined;
  const laid = otherSentences(puzzles, budget);
  if (laid === undefined || laid === "unsettled") return undefined;
  const missing = own.filter((_, i) => laid[i] === 0);
  const again = own.filter((_, i) => (laid[i] ?? 0) > 1);
  const [last] = missing.slice(-1);
  if (!last) return undefined;
  const named = (sentences: readonly Sentence[]): string =>
    quotedList(sentences.map(({ pair }) => shortened(pair.left.answers[0].text)));
  return [
    {
      range: last.pair.left.answers[0].range,
      message: `All cards of packet ${packet.number} also make ${named(again)} more than once, and ${named(missing)} not at all: only the letters on the cards keep them apart.`,
      related: [...again, ...missing.slice(0, -1)].map(({ pair }) => ({
        range: pair.left.answers[0].range,
        message: again.some((each) => each.pair === pair) ? "Laid more than once" : "Not laid",
      })),
      fixes: [...smaller(dealt), ...[dropPair(last.pair)].flatMap((each) => each?.fix ?? [])],
    },
  ];
}

/** The most sentences a packet with which no packet makes others, where they are fewer. */
function smaller({ options, sentences, deals, request }: DealtRebuild): Fix[] {
  const { block, unit } = request;
  const hands = deals.map((deal) => deal.sentences.flatMap((index) => sentences[index] ?? []));
  for (let size = options.packet - 1; size > 0; size--) {
    const packets = hands.flatMap((hand) =>
      hand.flatMap((_, i) => (i % size === 0 ? [hand.slice(i, i + size).map(asWords)] : [])),
    );
    if (packets.some((own) => buildable(own).length > 0 || otherSentences(own, budget) !== undefined)) continue;
    return [{ title: `Put ${size} into a packet`, edits: [setOption(block, unit.text, "packet", String(size))] }];
  }
  return [];
}
