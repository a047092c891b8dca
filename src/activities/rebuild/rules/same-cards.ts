import type { Report, Rule } from "../../../base/finding";
import { dropPair } from "../../shared-answers";
import { type DealtRebuild, packetOf } from "../model";
import { type RebuildContext, shortened } from "./context";
import { type Couple, sameCardCouples, sparing } from "./troubles";

export const sameCards: Rule<RebuildContext> = {
  code: "same-cards",
  severity: "warning",
  title: "A sentence that can be laid with another one's cards",
  why: "With the cards of one sentence another one of the set can be laid: `O pai vê a mãe` and `A mãe vê o pai` have the same cards. Only the translation tells which is meant, and a learner may lay a right sentence from the wrong packet. In one packet, where another sentence has all of these cards and more, only the letters on the cards tell whose they are. Change one of the two.",
  example: {
    wrong:
      "## People\n\n- o pai | vê | a mãe = the father sees the mother\n- a mãe | vê | o pai = the mother sees the father\n\n```activity\nmake: rebuild\n```",
    right:
      "## People\n\n- o pai | vê | a mãe = the father sees the mother\n- a mãe | ouve | o pai = the mother hears the father\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) => sameCardCouples(dealt).map((couple) => clash(dealt, couple)),
};

function clash(dealt: DealtRebuild, { sentence, from, leftOver }: Couple): Report {
  const { sentences, packets } = dealt;
  const late = leftOver === 0 ? Math.max(sentence, from) : sentence;
  const early = late === sentence ? from : sentence;
  const [here, there] = [sentences[late], sentences[early]].map((each) => each?.pair.left.answers[0]);
  const pair = sentences[late]?.pair;
  const range = here?.range ?? { start: 0, end: 0 };
  const where =
    packetOf(packets, late) === packetOf(packets, early) ? "" : ` (packet ${packetOf(packets, early)?.number ?? ""})`;
  const how = leftOver === 0 ? "the same cards as" : "only cards that are also in";
  const but = printsAlike(dealt, late, early) ? "" : ", but for capitals and marks";
  // Cards are borrowed only within a packet, and there each has its sentence's letter.
  const then =
    leftOver === 0
      ? "one can be laid for the other, and only the translation tells which is meant"
      : "only the letters on the cards tell whose they are";
  return {
    range,
    message: `“${shortened(here?.text ?? "")}” has ${how} “${shortened(there?.text ?? "")}”${where}${but}: ${then}.`,
    related: there ? [{ range: there.range, message: "The other sentence" }] : [],
    fixes: function* () {
      return pair ? yield* sparing(dealt, pair, dropPair(pair)?.fix) : [];
    },
  };
}

/** Whether on some level all cards of a sentence are printed just as cards of another one. */
function printsAlike({ deals }: DealtRebuild, sentence: number, other: number): boolean {
  return deals.some(({ cards }) => {
    const there = (cards[other] ?? []).map(({ text }) => text);
    return (cards[sentence] ?? []).every(({ text }) => {
      const place = there.indexOf(text);
      if (place >= 0) there.splice(place, 1);
      return place >= 0;
    });
  });
}
