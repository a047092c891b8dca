import { problemRule } from "./problem-rule";

export const openFence = problemRule({
  code: "open-fence",
  severity: "error",
  title: "An activity or a block of notes without an end",
  why: "Three backticks in a line of their own end an activity or another block. Without them everything below belongs to it.",
  example: {
    wrong: "## Food\n\n```activity\nmake: tiles\n\n- pão = bread",
    right: "## Food\n\n```activity\nmake: tiles\n```\n\n- pão = bread",
  },
});
