import { settingsRule } from "./problem-rule";

export const optionTwice = settingsRule({
  code: "option-twice",
  severity: "warning",
  title: "An option that stands twice",
  why: "Only the first of two lines with the same name counts. Take one of them out.",
  example: {
    wrong: "```activity\nmake: tiles\nseed: 1\nseed: 2\n```",
    right: "```activity\nmake: tiles\nseed: 2\n```",
  },
});
