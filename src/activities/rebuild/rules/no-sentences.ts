import activitySchema from "../../../../schemas/activity.schema.json";
import type { Fix, Rule } from "../../../base/finding";
import type { DealRequest } from "../../contract";
import { setOption } from "../../edits";
import { tieExample } from "../../form-statements";
import { otherSections } from "../../other-sections";
import { optionPlace, quotedList } from "../../report";
import { cutSentence } from "../cut";
import type { RebuildContext } from "./context";
import { cutsOf } from "./cut-at-slashes";
import { lacksBars } from "./lacks-bars";

export const noSentences: Rule<RebuildContext> = {
  code: "no-sentences",
  severity: "error",
  counts: true,
  title: "Nothing to rebuild",
  why: "Rebuild takes pairs whose left side has two words or more: `Queria um disco. = I'd like a record.` Bars say where to cut: `Queria | um disco. = …`; without them each word is a card. A forms table has no sentences: its forms are single words. It feeds tiles, loop, board, sort and calls. For rebuild put a form in a sentence and tie it: `Eu | [meço](#medir) | a roda. = I measure the wheel.`",
  example: {
    wrong: "## Words\n\n- olá = hello\n- sim = yes\n\n```activity\nmake: rebuild\n```",
    right: "## Ordering\n\n- Queria um disco. = I'd like a record.\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) => {
    const { sentences, whole, request } = dealt;
    // Pairs that need bars say so themselves.
    if (sentences.length > 0 || whole.some(lacksBars)) return [];
    const { unit, sections, block } = request;
    const others = otherSections(request, ({ pairs }) =>
      pairs.some((pair) => cutSentence(pair, unit.text).length >= 3),
    );
    const taken: Fix[] = others.slice(0, 3).map(({ name }) => ({
      title: `Take the sentences of “${name}”`,
      edits: [setOption(block, unit.text, "from", JSON.stringify(name))],
    }));
    const fixes = [...cutsOf(whole, "Cut the sentences at the slashes"), ...taken];
    const names = quotedList(sections.map(({ name }) => name));
    const message = `${names} has no pair whose left side makes two cards or more.`;
    const form = tieExample(sections);
    const told = ` The forms of a table are single words. Put one in a sentence, as in \`- … ${form} … = …\`, or make tiles, a loop, a board, a sort or calls of them.`;
    return [
      form !== undefined
        ? { range: optionPlace(block, "from"), message: message + told, fixes: [...fixes, ...otherKinds(request)] }
        : { range: optionPlace(block, "from"), message, fixes },
    ];
  },
};

/** Kinds that forms tables feed, where no option of this kind alone would be left behind. */
function otherKinds({ block, unit }: DealRequest): Fix[] {
  const common = Object.keys(activitySchema.properties);
  if (block.options.entries.some(({ key }) => !common.includes(key))) return [];
  return ["sort", "loop"].map((make) => ({
    title: `Make a ${make} of the forms`,
    edits: [setOption(block, unit.text, "make", make)],
  }));
}
