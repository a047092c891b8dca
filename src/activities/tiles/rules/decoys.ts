import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { list, place, type TilesContext } from "./context";

export const tooFewDecoys: Rule<TilesContext> = {
  code: "too-few-decoys",
  severity: "warning",
  title: "Fewer decoys than asked for",
  why: "A decoy is a word on an outer edge that has no partner on any tile. They come from pairs that the tiles do not use, here or in other sections of the unit, or from a list after `decoys:`. Edges without one stay blank.",
  example: {
    wrong:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ndecoys: 2\n```",
    right:
      "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ndecoys: [arroz, mel]\n```",
  },
  check: ({ dealt }) => {
    const short = dealt.deals.find(
      ({ decoys }) => typeof dealt.options.decoys !== "object" && decoys.edges.length < decoys.wanted,
    );
    if (!short) return [];
    const { edges, wanted } = short.decoys;
    const { block, unit } = dealt.request;
    return [
      {
        range: place(dealt, "decoys", "outer", "levels"),
        message: `Only ${edges.length} of ${wanted} outer edges get a word without a partner: the unit has no more unused words that fit nothing.`,
        fixes: [
          edges.length > 0
            ? {
                title: `Ask for ${edges.length}`,
                edits: [setOption(block, unit.text, "decoys", String(edges.length))],
                preferred: true,
              }
            : { title: "Leave the outer edges blank", edits: [setOption(block, unit.text, "decoys", "0")] },
        ],
      },
    ];
  },
};

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
