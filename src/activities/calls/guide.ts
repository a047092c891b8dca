import type { Run } from "../../base/run";
import type { Caution, GuideEntry } from "../contract";
import { inSleeve, pencils } from "../copies";
import { counted } from "../report";
import { labelled, truthWordsIn } from "../statements";
import type { DealtCalls } from "./model";

/** What a colleague needs to run calls. */
export function callsGuide(dealt: DealtCalls): GuideEntry {
  const { request, options, claims, reserve, hands, deals } = dealt;
  const { yes, no } = truthWordsIn(request.explains);
  const count = hands[0]?.length ?? 0;
  const ties = deals[0]?.reserve.length ?? 0;
  const slips = options.slip === "tally" || options.teams !== undefined || options.blanks > 0;
  const blanks =
    options.blanks > 0
      ? ` Each group writes ${counted(options.blanks, "statement")} of its own on ${options.blanks === 1 ? "a slip" : "slips"} for the caller, with the answer and its code.`
      : "";
  const cautions: Caution[] = ["clear-floor"];
  if (slips) cautions.push("cutter", "scissors");
  if (slips && options.reuse === "laminate") cautions.push("laminator");
  return {
    summary: `The caller reads ${counted(count, "statement")}; learners grab the object between them when one is true and leave it when it is false. The papers have ${listsText(dealt)}, with the answers${ties > 0 ? `, and ${ties} more for ties` : ""}.${blanks} Chairs and bags stand away from the floor between the learners; hands lie still until a statement has been read to its end; nobody dives for the object.`,
    materials: (words) => [
      words.list,
      words.object,
      ...(options.slip === "tally" ? [words.tallySlip(inSleeve(words, options), pencils(words, options, "one"))] : []),
      ...(options.blanks > 0
        ? [words.blankSlips(inSleeve(words, options) && words.eachInSleeve, pencils(words, options, "some"))]
        : []),
      ...(options.teams === undefined ? [] : [words.tallySheet(options.teams, inSleeve(words, options))]),
    ],
    // Own estimate: three quarters of a minute a statement, a minute and a half to write one, four to explain and to count.
    minutes: request.options.value.minutes ?? Math.max(8, Math.round(4 + 0.75 * count + 1.5 * options.blanks)),
    answers: [...claims, ...reserve].map((claim): readonly Run[] => [
      { text: `${claim.truth ? yes : no}: `, bold: true },
      ...labelled(claim),
      ...(claim.correction ? [{ text: " – " }, ...claim.correction.runs] : []),
    ]),
    cautions,
  };
}

/** `6 callers’ lists, a gentle and a hard one for each class hour` */
function listsText({ deals, claims, hands }: DealtCalls): string {
  if (deals.length < 2) return "one caller’s list";
  const hours = new Set(deals.map(({ version }) => version)).size;
  const each = new Set(deals.map(({ level }) => level)).size > 1 ? "a gentle and a hard one" : "one";
  const others = hours > 1 && claims.length > (hands[0]?.length ?? 0);
  const how = hours > 1 ? ` for each class hour ${others ? "with statements of its own" : "in its own order"}` : "";
  return `${deals.length} callers’ lists, ${each}${how}`;
}
