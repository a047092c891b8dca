import type { Caution, GuideEntry, LabelEntry } from "../contract";
import { inSleeve, pencils } from "../copies";
import { listed, toPrinted } from "../printed";
import { counted } from "../report";
import { summaryOf } from "./deal";
import { type DealtLoop, type LoopDeal, signAt } from "./model";
import { hasSlip } from "./options";

/** What a colleague needs to run a loop. */
export function loopGuide({ request, options, used, deals, leftOut }: DealtLoop): GuideEntry {
  const { size, versions } = options;
  const decoys = Math.max(0, ...deals.map((deal) => deal.decoys.length));
  const levels = new Set(deals.map(({ level }) => level)).size > 1;
  const nowhere =
    decoys > 0
      ? ` ${levels ? "In the hard circles" : "Besides these"} ${counted(decoys, "card belongs", "cards belong")} nowhere and ${decoys === 1 ? "is" : "are"} left over.`
      : "";
  const count = deals[0]?.cards.length ?? 0;
  const where =
    size === "room"
      ? `${counted(count, "card")} hang round the room, each with a large sign. Learners go from each card to the one that answers it, until they are back where they started.`
      : `Learners lay ${counted(count, "card")} on the table, each one answering the card before it, until the circle closes.`;
  const several =
    size === "room" && deals.length > 1
      ? ` ${counted(deals.length, "circle")} hang in one room and may share words: a number behind the letter of a sign says which circle the card belongs to${levels ? `; ${levelsText(deals)}` : ""}. Learners follow only the cards of the circle that ${hasSlip(options) ? "their slip names" : "their first card belongs to"}.`
      : "";
  const further =
    versions === 1
      ? ""
      : size === "room"
        ? ` ${levels ? "Of each level the circle with the lowest number is for all" : "Circle 1 is for all"}; further ones are for those who finish first.`
        : ` There are ${versions} different circles; those who finish first change sets.`;
  const without =
    leftOut === 0
      ? ""
      : ` ${counted(leftOut, "form that reads", "forms that read")} like another ${leftOut === 1 ? "is" : "are"} left out of ${deals.length > 1 ? "each" : "the"} circle.`;
  const cautions: Caution[] = ["cutter", "scissors"];
  if (size === "room") cautions.push("clear-floor");
  if (options.reuse === "laminate") cautions.push("laminator");
  return {
    summary: `${where}${without}${nowhere}${several}${further}`,
    materials: (words) => [
      ...(size === "room" ? [words.hanging, words.roomPlan] : [words.table]),
      ...(options.blanks > 0 && !hasSlip(options) ? [pencils(words, options, "some")] : []),
      ...(hasSlip(options) ? [words.recordingSlip(inSleeve(words, options), pencils(words, options, "one"))] : []),
    ],
    ...(size === "room" ? {} : { atSet: options.group }),
    // Own estimates: half a minute a card on the table, one in the room, five to begin and to check.
    minutes: request.options.value.minutes ?? Math.max(8, Math.round(5 + count * (size === "room" ? 1 : 0.5))),
    answers: [
      ...deals.map((deal) => [
        { text: `${deal.code}: ` },
        { text: deal.cards.map((_, place) => signAt(deal, place)).join(" "), bold: true },
        { text: ", then the first again" },
        ...(deal.decoys.length > 0
          ? [
              { text: "; nowhere: " },
              { text: deal.decoys.map((_, i) => signAt(deal, deal.cards.length + i)).join(" "), bold: true },
            ]
          : []),
      ]),
      ...used.map(({ left, right }) => [
        ...listed(toPrinted(left.answers[0], request.teaches)).runs,
        { text: " = " },
        ...listed(toPrinted(right.answers[0], request.explains)).runs,
      ]),
    ],
    cautions,
  };
}

/** `gentle are 1 and 2, hard are 3 and 4` */
function levelsText(deals: readonly LoopDeal[]): string {
  const parts = [...new Set(deals.map(({ level }) => level))].map((level) => {
    const numbers = deals.filter((deal) => deal.level === level).map(({ number }) => number);
    return `${level} ${numbers.length === 1 ? "is" : "are"} ${numbers.join(numbers.length === 2 ? " and " : ", ")}`;
  });
  return parts.join(", ");
}

export function loopLabels(dealt: DealtLoop, deal: LoopDeal): LabelEntry[] {
  return [{ contents: summaryOf(dealt, deal) }];
}
