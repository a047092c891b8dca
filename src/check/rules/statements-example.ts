/** A unit of statements that an activity deals. */
export const frame = (statements: string): string =>
  `## The morning\n\n${statements}\n\n\`\`\`activity\nmake: calls\n\`\`\``;

/** Statements that are in order, to go with those that an example is about. */
export const others =
  "- [x] Ela dorme.\n- [ ] Ela ri.\n  - Ela chora.\n- [x] Ela sai às dez.\n- [ ] Ela lê.\n  - Ela canta.";
