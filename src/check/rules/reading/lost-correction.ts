import { problemRule } from "./problem-rule";

const claims = (text: string): string =>
  `## Workshop\n\n- [x] A Marta lava a roda.\n${text}\n\n\`\`\`activity\nmake: sort\n\`\`\``;

export const lostCorrection = problemRule({
  code: "lost-correction",
  severity: "warning",
  title: "A correction that is not read as one",
  why: "The correction of a false statement is the bullet under it. Behind an arrow, a slash or in brackets in the statement's own line it is printed with the statement, and behind a bullet of its own it is a note, so that the key does not have it.",
  example: {
    wrong: claims("- [ ] O Nuno vende a luz. -> O Nuno compra a luz."),
    right: claims("- [ ] O Nuno vende a luz.\n  - O Nuno compra a luz."),
  },
});
