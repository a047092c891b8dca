import type { Rule, Severity } from "../../base/finding";
import type { CheckContext } from "../context";

/** A rule that hands on what reading the unit found under its code. */
function problemRule(rule: Omit<Rule<CheckContext>, "check"> & { readonly severity: Severity }): Rule<CheckContext> {
  return {
    ...rule,
    check: ({ unit }) =>
      unit.problems
        .filter(({ code }) => code === rule.code)
        .map(({ range, message, replacement }) => ({
          range,
          message,
          ...(replacement
            ? {
                fixes: [
                  {
                    title: replacement.title,
                    edits: [{ range: replacement.range, text: replacement.text }],
                    preferred: true,
                  },
                ],
              }
            : {}),
        })),
  };
}

export const readingRules: readonly Rule<CheckContext>[] = [
  problemRule({
    code: "second-equals",
    severity: "warning",
    title: "A second equals sign in a pair",
    why: "The first ` = ` parts an item into its two sides. A further one is read as text and printed. If it is meant as text, write `\\=`; if it was to be a further answer, write ` / `.",
    example: { wrong: "## Counting\n\n- dos = two = 2", right: "## Counting\n\n- dos = two / 2" },
  }),
  problemRule({
    code: "empty-answer",
    severity: "error",
    title: "A side of a pair without anything on it",
    why: "Each side of ` = `, and each answer beside ` / `, needs a word or a picture. An item with an empty side is not used.",
    example: { wrong: "## Counting\n\n- dos = two / <!-- by: K7 -->", right: "## Counting\n\n- dos = two" },
  }),
  problemRule({
    code: "unreadable-yaml",
    severity: "error",
    title: "Settings that cannot be read",
    why: "The front matter and the `activity` blocks are YAML: one `name: value` a line. A text with a colon or a hash sign needs quotation marks.",
    example: {
      wrong: "```activity\nmake: tiles\nfrom: [Food\n```",
      right: "```activity\nmake: tiles\nfrom: [Food]\n```",
    },
  }),
  problemRule({
    code: "option-twice",
    severity: "warning",
    title: "An option that stands twice",
    why: "Only the first of two lines with the same name counts. Take one of them out.",
    example: {
      wrong: "```activity\nmake: tiles\nseed: 1\nseed: 2\n```",
      right: "```activity\nmake: tiles\nseed: 2\n```",
    },
  }),
];
