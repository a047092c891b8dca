import type { Fix, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { counted, optionPlace } from "../../report";
import { fewestPairs } from "../circles";
import { dealLoop } from "../deal";
import type { DealtLoop } from "../model";
import { sharedBetween } from "../shared";
import type { LoopContext } from "./context";

const unit = (options: string): string =>
  `## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n- mel = honey\n- pão = bread\n- sal = salt\n- arroz = rice\n\n\`\`\`activity\nmake: loop\nversions: 2\n${options}\`\`\``;

export const sharedCircles: Rule<LoopContext> = {
  code: "shared-circles",
  severity: "information",
  title: "Circles of one room that share words",
  why: "Several circles hang in one room. Where a card's words are answered in another circle too, nothing but the number behind the letter of the sign says which of the two cards is meant, and a learner who overlooks it walks on in the wrong circle. With `take` circles can have words of their own, as far as the unit has enough; levels always share theirs. On tables (`size: mini`) each circle lies by itself.",
  example: { wrong: unit(""), right: unit("take: 4\n") },
  check: ({ dealt }) => {
    const { request, options } = dealt;
    const shared = sharedBetween(dealt);
    if (!shared) return [];
    const { block, unit: whole } = request;
    const take = ownWords(dealt);
    const fixes: Fix[] = [];
    if (take !== undefined)
      fixes.push({
        title: `Take ${take} pairs for each circle`,
        edits: [setOption(block, whole.text, "take", String(take))],
      });
    if (options.cards === undefined)
      fixes.push({ title: "Lay the circles on tables", edits: [setOption(block, whole.text, "size", "mini")] });
    const circles = shared.circles.length > 2 ? `${shared.circles.length} circles` : "two circles";
    return [
      {
        range: optionPlace(block, "versions", "levels", "take"),
        message: `${counted(shared.cards.length, "card")} in ${circles} of one room can be answered in another circle too: only the number in the sign tells the cards apart.`,
        fixes,
      },
    ];
  },
};

/** How many pairs each circle may take so that none shares a word with another; undefined where there is no such number. */
function ownWords({ request, pairs, deals }: DealtLoop): number | undefined {
  const take = Math.floor(pairs.length / deals.length);
  if (take < fewestPairs) return undefined;
  const { options } = request;
  const other = dealLoop({ ...request, options: { ...options, value: { ...options.value, take } } });
  return other.deals.length > 0 && !sharedBetween(other) ? take : undefined;
}
