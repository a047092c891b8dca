import { inFood } from "./food-example";
import { problemRule } from "./problem-rule";

export const notAnActivity = problemRule({
  code: "not-an-activity",
  severity: "warning",
  title: "A block that is nearly an activity",
  why: "An activity begins with three backticks and the name `activity`, in small letters, at the beginning of a line. Under another name, between other signs or behind four spaces the block is a note.",
  example: { wrong: `${inFood("")}\n\n\`\`\`Activity\nmake: tiles\n\`\`\``, right: inFood("") },
});
