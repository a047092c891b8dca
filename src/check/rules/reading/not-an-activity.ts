import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const notAnActivity = problemRule({
  code: "not-an-activity",
  severity: "warning",
  title: "A block that is nearly an activity",
  why: "The name behind the backquotes is `activity`, in small letters. Under another name the block is a note.",
  example: { wrong: `${inFood("")}\n\n\`\`\`Activity\nmake: tiles\n\`\`\``, right: inFood("") },
});
