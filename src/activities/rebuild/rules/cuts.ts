import type { Fix, Rule } from "../../../base/finding";
import type { Pair } from "../../../unit/unit";
import { setOption } from "../../edits";
import { optionPlace, quotedList } from "../../report";
import { cutSentence, lacksSpaces, withBars } from "../cut";
import { type RebuildContext, shortened } from "./context";

/** A pair that makes one card because its script has no spaces and it has no bars. */
function needsBars({ left }: Pair): boolean {
  const [answer] = left.answers;
  return !answer.picture && lacksSpaces(answer.text);
}

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
    if (sentences.length > 0 || whole.some(needsBars)) return [];
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

export const onePartSentence: Rule<RebuildContext> = {
  code: "one-part-sentence",
  severity: "warning",
  title: "A sentence of one part",
  why: "A left side of one word, or with a picture and no words, makes one card: there is nothing to rebuild, and it is left out. Keep single words in a section of their own.",
  example: {
    wrong:
      "## Ordering\n\n- Queria um disco. = I'd like a record.\n- Obrigado! = Thank you!\n\n```activity\nmake: rebuild\n```",
    right:
      "## Ordering\n\n- Queria um disco. = I'd like a record.\n- Muito obrigado! = Thank you!\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) => {
    if (dealt.sentences.length === 0) return [];
    return dealt.whole
      .filter((pair) => !needsBars(pair))
      .map((pair) => ({
        range: pair.left.answers[0].range,
        message: `“${shortened(pair.left.answers[0].text)}” is one card only: nothing to rebuild. It is left out.`,
        fixes: [{ title: "Take it out", edits: [{ range: pair.block, text: "" }] }],
      }));
  },
};

export const barsNeeded: Rule<RebuildContext> = {
  code: "needs-bars",
  severity: "error",
  title: "A sentence without spaces that has no bars",
  why: "Without bars a sentence is cut at white space. Chinese, Japanese, Thai and some other languages write none between words, so bars must say where to cut: `私は | 学生です。` The fix proposes bars between words, as the platform's dictionary sees them; look them over.",
  example: {
    wrong:
      "---\nteaches: ja\n---\n\n## 自己紹介\n\n- 私は学生です。 = I am a student.\n\n```activity\nmake: rebuild\n```",
    right:
      "---\nteaches: ja\n---\n\n## 自己紹介\n\n- 私は|学生|です。 = I am a student.\n\n```activity\nmake: rebuild\n```",
  },
  check: ({ dealt }) => {
    const { request, whole } = dealt;
    const { unit, teaches } = request;
    return whole.filter(needsBars).map((pair) => {
      const { range, text } = pair.left.answers[0];
      // Only what is written as it prints can be edited by its characters.
      const plain = unit.text.slice(range.start, range.end) === text;
      const barred = plain ? withBars(text, teaches) : undefined;
      const fixes: Fix[] = barred ? [{ title: `Cut it so: ${barred}`, edits: [{ range, text: barred }] }] : [];
      return {
        range,
        message: `“${shortened(text)}” has no spaces to cut at: bars must say where. It is left out.`,
        fixes,
      };
    });
  },
};
