import type { Rule } from "../../../base/finding";
import type { Steps } from "../../../base/steps";
import { setOption } from "../../edits";
import { optionPlace, quotedList } from "../../report";
import { fewestPairs } from "../circles";
import { dealingLoop } from "../deal";
import { type DealtLoop, missingCards } from "../model";
import { clashCount } from "./clashes";
import type { LoopContext } from "./context";

export const loopTooFew: Rule<LoopContext> = {
  code: "loop-too-few",
  severity: "error",
  counts: true,
  title: "Too few pairs for a circle of cards",
  why: "Each pair asks on one card and answers on the next, so a circle of three cards leaves nothing to look for. Four pairs are the least; twelve to twenty make a good circle.",
  example: {
    wrong: "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n\n```activity\nmake: loop\n```",
    right: "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: loop\n```",
  },
  check: ({ dealt }) => {
    const { request, pairs, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, unit, sections } = request;
    const taken = options.take !== undefined && pairs.length >= fewestPairs;
    const names = quotedList(sections.map(({ name }) => name));
    const message = taken
      ? `A loop needs at least ${fewestPairs} pairs; \`take\` leaves ${options.take} of ${pairs.length}.`
      : `A loop needs at least ${fewestPairs} pairs; ${names} has ${pairs.length === 0 ? "none" : pairs.length}.`;
    return [
      {
        range: optionPlace(block, ...(taken ? ["take"] : ["from"])),
        message,
        fixes: function* () {
          const take = taken ? yield* enough(dealt) : undefined;
          if (take === undefined) return [];
          return [{ title: `Take ${take}`, edits: [setOption(block, unit.text, "take", String(take))] }];
        },
      },
    ];
  },
};

/** Numbers of pairs that are tried. */
const mostTries = 8;

/** The fewest pairs that make a circle in which no card fits where it should not, as far as is tried, else the fewest that make one. */
function* enough({ request, options, pairs }: DealtLoop): Steps<number | undefined> {
  let fewest: number | undefined;
  const last = Math.min(pairs.length, fewestPairs + mostTries - 1);
  for (let take = fewestPairs; take <= last; take++) {
    yield "trying a fix";
    const after = yield* dealingLoop({ ...request, options: { ...request.options, value: { ...options, take } } });
    if (after.deals.length === 0) continue;
    fewest ??= take;
    if (clashCount(after) + missingCards(after) === 0) return take;
  }
  return fewest;
}
