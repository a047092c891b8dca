import type { Run } from "../../base/run";
import type { Caution, GuideEntry, LabelEntry } from "../contract";
import { counted } from "../report";
import { sentenceRuns, translationOf } from "./key";
import { type DealtRebuild, packetOf, type RebuildDeal, signIn } from "./model";

/** What a colleague needs to run rebuild. */
export function rebuildGuide(dealt: DealtRebuild): GuideEntry {
  const { request, options, sentences, packets } = dealt;
  const check =
    options.translation === "label"
      ? " The translation on the packet says what comes out."
      : " The translations are in the key only.";
  const cautions: Caution[] = ["cutter", "scissors", "small-parts"];
  return {
    summary: `Learners lay the cards of a numbered packet so that they make a sentence, then change the packet: ${counted(sentences.length, "sentence")} in ${counted(packets.length, "packet")}.${check}`,
    materials: [
      `${counted(packets.length, "bag or envelope", "bags or envelopes")} a set, one for each packet`,
      ...(options.slip === "sentences" ? ["a slip and a pencil for each group"] : []),
    ],
    // Own estimate: a minute a sentence, and five to begin and to check.
    minutes: request.options.value.minutes ?? Math.max(8, 5 + sentences.length),
    answers: sentences.map((sentence, index) => [
      { text: `${headOf(dealt, index)}. `, bold: true },
      ...sentenceRuns(sentence),
      { text: " = " },
      ...translationOf(dealt, index),
    ]),
    cautions: options.reuse === "laminate" ? [...cautions, "laminator"] : cautions,
  };
}

function headOf({ packets }: DealtRebuild, index: number): string {
  const packet = packetOf(packets, index);
  return packet ? `${packet.number}${signIn(packet, index)}` : "";
}

/** A label for each packet, with the translation where learners check themselves, and one for the set. */
export function rebuildLabels(dealt: DealtRebuild, deal: RebuildDeal): LabelEntry[] {
  const { packets, options } = dealt;
  const { blanks } = options;
  const all = `${counted(packets.length, "packet")}, ${counted(deal.dealt.length, "card")}`;
  return [
    { contents: blanks > 0 ? `${all}, ${counted(blanks, "blank card")}` : all },
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
