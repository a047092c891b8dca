import type { Rule } from "../../../base/finding";
import { takingEnough } from "../../enough";
import { optionPlace, quotedList } from "../../report";
import { fewestPairs } from "../circles";
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
  check: (context) => {
    const { dealt } = context;
    const { request, pairs, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, sections } = request;
    const taken = options.take !== undefined && pairs.length >= fewestPairs;
    const names = quotedList(sections.map(({ name }) => name));
    const message = taken
      ? `A loop needs at least ${fewestPairs} pairs; \`take\` leaves ${options.take} of ${pairs.length}.`
      : `A loop needs at least ${fewestPairs} pairs; ${names} has ${pairs.length === 0 ? "none" : pairs.length}.`;
    return [
      {
        range: optionPlace(block, ...(taken ? ["take"] : ["from"])),
        message,
        fixes: taken ? () => takingEnough(context, { fewest: fewestPairs, most: pairs.length }) : [],
      },
    ];
  },
};
