import type { Fix, Rule } from "../../../base/finding";
import { withBars } from "../cut";
import { type RebuildContext, shortened } from "./context";
import { lacksBars } from "./lacks-bars";

export const needsBars: Rule<RebuildContext> = {
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
    return whole.filter(lacksBars).map((pair) => {
      const { range, text } = pair.left.answers[0];
      // Only what is written as it prints can be edited by its characters.
      const plain = unit.text.slice(range.start, range.end) === text;
      const barred = plain ? withBars(text, teaches) : undefined;
      const written = plain && /[^/／]\s*[/／]\s*[^/／]/u.test(text) ? text.replace(/\s*[/／]\s*/gu, "|") : barred;
      const fixes: Fix[] = written ? [{ title: `Cut it so: ${written}`, edits: [{ range, text: written }] }] : [];
      return {
        range,
        message: `“${shortened(text)}” has no spaces to cut at: bars must say where. It is left out.`,
        fixes,
      };
    });
  },
};
