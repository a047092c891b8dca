import type { Run } from "../../base/run";
import type { Caution, GuideEntry } from "../contract";
import { counted } from "../report";
import { labelled, truthWordsIn } from "../statements";
import type { DealtCalls } from "./model";

/** What a colleague needs to run calls. */
export function callsGuide({ request, options, claims, reserve, deals }: DealtCalls): GuideEntry {
  const { yes, no } = truthWordsIn(request.explains);
  const lists =
    deals.length > 1 ? `${deals.length} callers’ lists, one for each class hour in its own order` : "one caller’s list";
  const slips = options.slip === "tally" || options.teams !== undefined;
  const cautions: Caution[] = ["clear-floor"];
  if (slips) cautions.push("cutter", "scissors");
  if (slips && options.reuse === "laminate") cautions.push("laminator");
  return {
    summary: `The caller reads ${counted(claims.length, "statement")}; learners grab the object between them when one is true and leave it when it is false. The papers have ${lists}, with the answers${reserve.length > 0 ? `, and ${reserve.length} more for ties` : ""}. Chairs and bags stand away from the floor between the learners; hands lie still until a statement has been read to its end; nobody dives for the object.`,
    materials: [
      "the caller’s list of the hour",
      "for each group one soft object, such as a cloth or a sponge",
      ...(options.slip === "tally" ? ["a tally slip and a pencil for each group"] : []),
      ...(options.teams === undefined ? [] : [`the tally sheet for ${options.teams} teams`]),
    ],
    // Own estimate: three quarters of a minute a statement, four to explain and to count.
    minutes: request.options.value.minutes ?? Math.max(8, Math.round(4 + 0.75 * claims.length)),
    answers: claims.map((claim): readonly Run[] => [
      { text: `${claim.truth ? yes : no}: `, bold: true },
      ...labelled(claim),
      ...(claim.correction ? [{ text: " – " }, ...claim.correction.runs] : []),
    ]),
    cautions,
  };
}
