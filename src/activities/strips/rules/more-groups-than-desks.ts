import type { Fix, Rule } from "../../../base/finding";
import { setsFor } from "../../copies";
import { setOption } from "../../edits";
import { counted, optionPlace } from "../../report";
import { deskRound, mostDesks } from "../desks";
import type { StripsContext } from "./context";

/** What the schema allows. */
const largestGroup = 8;

const unit = (options: string): string =>
  `---\nclasses: [12]\n---\n\n## The morning\n\n1. A Inês entra.\n2. Ela mede um sumo.\n3. Ela paga.\n\n\`\`\`activity\nmake: strips\n${options}\n\`\`\``;

export const moreGroupsThanDesks: Rule<StripsContext> = {
  code: "more-groups-than-desks",
  severity: "information",
  title: "More groups than desks to visit",
  why: "A desk has one set, so one group works at it. With more groups than desks some wait in each round, and it takes as many rounds as there are groups until everybody has been everywhere. Make larger groups, lay out more desks, or let a `stations` block plan who is where when.",
  example: { wrong: unit("desks: 4\ngroup: 2"), right: unit("desks: 4\ngroup: 3") },
  check: ({ dealt }) => {
    const { options, request, deals } = dealt;
    const round = deals.length > 0 ? deskRound(options, request) : undefined;
    if (!round || round.waiting === 0) return [];
    const { learners, groups, desks, waiting } = round;
    const { block, unit: whole } = request;
    const fixes: Fix[] = [];
    const larger = Array.from({ length: largestGroup }, (_, i) => i + 1).find(
      (size) => setsFor(learners, size) <= desks,
    );
    if (larger !== undefined)
      fixes.push({ title: `Make groups of ${larger}`, edits: [setOption(block, whole.text, "group", String(larger))] });
    if (groups <= mostDesks)
      fixes.push({ title: `Lay out ${groups} desks`, edits: [setOption(block, whole.text, "desks", String(groups))] });
    const message = `The class of ${learners} makes ${counted(groups, "group")} for ${desks} desks: ${waiting} ${waiting === 1 ? "waits" : "wait"} in each round.`;
    return [{ range: optionPlace(block, "desks"), message, fixes }];
  },
};
