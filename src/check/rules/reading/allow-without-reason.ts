import { problemRule } from "./problem-rule";

export const allowWithoutReason = problemRule({
  code: "allow-without-reason",
  severity: "warning",
  title: "A silenced finding without a reason",
  why: "`<!-- allow CODE: reason -->` at the end of an item's line says that a finding there is meant. Next year somebody wants to know why. Without a reason it silences nothing.",
  example: {
    wrong: "## People\n\n- el jefe = the boss <!-- allow duplicate-answer -->",
    right: "## People\n\n- el jefe = the boss",
  },
});
