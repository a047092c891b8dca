import type { Fix, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { optionPlace, quotedList } from "../../report";
import { cutSentence } from "../cut";
import type { RebuildContext } from "./context";
import { lacksBars } from "./lacks-bars";

export const noSentences: Rule<RebuildContext> = {
  code: "no-sentences",
  severity: "error",
  title: "Nothing to rebuild",
  why: "Rebuild takes pairs whose left side has two words or more: `Queria um disco. = I'd like a record.` Bars say where to cut: `Queria | um disco. = …`; without them each word is a card.",
  example: {
    wrong: "## Words\n\n- olá = hello\n- sim = yes\n\n```activity\nmake: rebuild\n```",
    right: "## Ordering\n\n- Queria um disco. = I'd like a record.\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) => {
    const { sentences, whole, request } = dealt;
    // Pairs that need bars say so themselves.
    if (sentences.length > 0 || whole.some(lacksBars)) return [];
    const { unit, sections, block } = request;
    const others = unit.sections.filter(
      (section) =>
        !sections.includes(section) && section.pairs.some((pair) => cutSentence(pair, unit.text).length >= 3),
    );
    const fixes: Fix[] = others.slice(0, 3).map(({ name }) => ({
      title: `Take the sentences of “${name}”`,
      edits: [setOption(block, unit.text, "from", JSON.stringify(name))],
    }));
    const names = quotedList(sections.map(({ name }) => name));
    const message = `${names} has no pair whose left side makes two cards or more.`;
    return [{ range: optionPlace(block, "from"), message, fixes }];
  },
};
