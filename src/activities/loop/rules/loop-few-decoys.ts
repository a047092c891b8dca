import type { Rule } from "../../../base/finding";
import { removeOption, setOption } from "../../edits";
import { onlySome, optionPlace } from "../../report";
import { missingCards } from "../model";
import type { LoopContext } from "./context";

export const loopFewDecoys: Rule<LoopContext> = {
  code: "loop-few-decoys",
  severity: "warning",
  title: "Fewer cards that belong nowhere than asked for",
  why: "A card that belongs nowhere takes its two words from two pairs that the circle does not use, here or in other sections of the unit. Nothing in the circle may answer them. Let `take` leave more pairs, or add some.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: loop\ndecoys: 2\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n- mel = honey\n- pão = bread\n\n```activity\nmake: loop\ntake: 4\ndecoys: 1\n```",
  },
  check: ({ dealt }) => {
    const { options, request } = dealt;
    const missing = missingCards(dealt);
    if (missing === 0 || options.decoys === undefined) return [];
    const { block, unit } = request;
    const made = options.decoys - missing;
    const without = removeOption(block, unit.text, "decoys");
    return [
      {
        range: optionPlace(block, "decoys"),
        message: `${onlySome(made, options.decoys, "card")} can be made of words that have no partner in the circle.`,
        fixes:
          made > 0
            ? [
                {
                  title: `Ask for ${made}`,
                  edits: [setOption(block, unit.text, "decoys", String(made))],
                  preferred: true,
                },
              ]
            : without
              ? [{ title: "Take “decoys” out", edits: [without] }]
              : [],
      },
    ];
  },
};
