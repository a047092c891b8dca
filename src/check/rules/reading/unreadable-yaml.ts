import { settingsRule } from "./problem-rule";

export const unreadableYaml = settingsRule({
  code: "unreadable-yaml",
  severity: "error",
  title: "Settings that cannot be read",
  why: "The front matter and the `activity` blocks are YAML: one `name: value` a line. A text with a colon or a number sign needs quotation marks.",
  example: {
    wrong: "```activity\nmake: tiles\nfrom: [Food\n```",
    right: "```activity\nmake: tiles\nfrom: [Food]\n```",
  },
});
