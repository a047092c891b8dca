import type { Rule } from "../../../base/finding";
import { list, type TilesContext } from "./context";

export const answeringDecoy: Rule<TilesContext> = {
  code: "answering-decoy",
  severity: "error",
  title: "A decoy that has a partner",
  why: "A decoy must fit no word on the tiles, else it is a right answer in a wrong place. Such a word is left out.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ndecoys: [tea]\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ndecoys: [bread]\n```",
  },
  check: ({ dealt }) => {
    const [deal] = dealt.deals.filter(({ decoys }) => decoys.misfits.length > 0);
    const entry = dealt.request.block.options.entries.find(({ key }) => key === "decoys");
    return (deal?.decoys.misfits ?? []).map(({ text, place: range, answers }) => {
      const others = Array.isArray(entry?.value) ? entry.value.map(String).filter((word) => word !== text) : [];
      return {
        range,
        message: `“${text}” is no decoy: it ${answers.length > 0 ? `answers ${list(answers.map((pair) => `${pair.left.answers[0].text} = ${pair.right.answers[0].text}`))}` : "stands on a tile already"}. It is left out.`,
        related: answers.map((pair) => ({ range: pair.range, message: "The pair that it answers" })),
        fixes: entry
          ? [
              {
                title: `Take “${text}” out`,
                edits: [
                  {
                    range: entry.valueRange,
                    text: others.length > 0 ? `[${others.map((word) => JSON.stringify(word)).join(", ")}]` : "0",
                  },
                ],
                preferred: true,
              },
            ]
          : [],
      };
    });
  },
};
