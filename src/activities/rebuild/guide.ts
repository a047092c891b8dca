import type { Run } from "../../base/run";
import type { Caution, GuideEntry, LabelEntry } from "../contract";
import { blanksText, inSleeve, pencils } from "../copies";
import { dealsAlike } from "../levels";
import { counted } from "../report";
import { sentenceRuns, translationOf } from "./key";
import { type DealtRebuild, packetOf, type RebuildDeal, signIn } from "./model";

/** What a colleague needs to run rebuild. */
export function rebuildGuide(dealt: DealtRebuild): GuideEntry {
  const { request, options, sentences, deals } = dealt;
  const [first] = deals;
  const [count, packets] = [first?.sentences.length ?? 0, first?.packets.length ?? 0];
  const check =
    options.translation === "label"
      ? " The translation on the packet says what comes out."
      : " The translations are in the key only.";
  const levels =
    new Set(deals.map(({ level }) => level)).size > 1
      ? " The cards of the hard sets show neither the capital at the beginning nor the mark at the end."
      : "";
  const cautions: Caution[] = ["cutter", "scissors", "small-parts"];
  const task =
    packets === 1
      ? `Learners lay the cards of the packet so that they make ${count === 1 ? "a sentence" : counted(count, "sentence")}.`
      : `Learners lay the cards of a numbered packet so that they make a sentence, then change the packet: ${counted(count, "sentence")} in ${counted(packets, "packet")}.`;
  return {
    summary: `${task}${check}${levels}`,
    materials: (words) => [
      words.bags(packets),
      ...(options.slip === "sentences"
        ? [words.sentenceSlip(inSleeve(words, options), pencils(words, options, "one"))]
        : []),
    ],
    atSet: options.group,
    // Own estimate: a minute a sentence, and five to begin and to check.
    minutes: request.options.value.minutes ?? Math.max(8, 5 + count),
    // Levels have the same sentences; the versions have others only where `take` leaves some.
    answers: dealsAlike(deals, (each) => each.sentences.join(" ")).flatMap(({ codes, deal }, _, { length }) => [
      ...(length > 1 ? [[{ text: codes.join(", "), bold: true }]] : []),
      ...deal.sentences.map((index) => [
        { text: `${headOf(deal, index)}. `, bold: true },
        ...(sentences[index] ? sentenceRuns(sentences[index]) : []),
        { text: " = " },
        ...translationOf(dealt, index),
      ]),
    ]),
    cautions: options.reuse === "laminate" ? [...cautions, "laminator"] : cautions,
  };
}

function headOf({ packets }: RebuildDeal, index: number): string {
  const packet = packetOf(packets, index);
  return packet ? `${packet.number}${signIn(packet, index)}` : "";
}

/** A label for each packet, with the translation where learners check themselves, and one for the set. */
export function rebuildLabels(dealt: DealtRebuild, deal: RebuildDeal): LabelEntry[] {
  const { options, request } = dealt;
  const { packets } = deal;
  const blank = blanksText(options, request.classes);
  const all = `${counted(packets.length, "packet")}, ${counted(deal.dealt.length, "card")}`;
  return [
    { contents: blank === undefined ? all : `${all}, ${blank}` },
    ...packets.map((packet): LabelEntry => {
      const cards = packet.sentences.reduce((sum, sentence) => sum + (deal.cards[sentence]?.length ?? 0), 0);
      const several = packet.sentences.length > 1;
      const contents = `${counted(cards, "card")}${several ? `, ${counted(packet.sentences.length, "sentence")}` : ""}`;
      const entry = { packet: String(packet.number), contents };
      if (options.translation !== "label") return entry;
      const [only] = several ? [] : packet.sentences;
      const answer = only === undefined ? undefined : dealt.sentences[only]?.pair.right.answers[0];
      if (answer?.picture) return { ...entry, translation: answer.runs, picture: answer.picture };
      const translation = packet.sentences.flatMap((sentence, i): Run[] => [
        ...(i > 0 ? [{ text: "   " }] : []),
        ...(several ? [{ text: `${signIn(packet, sentence)}: `, bold: true }] : []),
        ...translationOf(dealt, sentence),
      ]);
      return { ...entry, translation };
    }),
  ];
}
