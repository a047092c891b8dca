/** Statements of a story, some with a tied form, and a game of calls about them. */
export function callsUnit(statements: readonly string[], options = "", front = "teaches: pt\n"): string {
  return `---\n${front}---\n\n## The morning\n\n${statements.join("\n")}\n\n\`\`\`activity\nmake: calls\n${options}\n\`\`\`\n\n${verbs}`;
}

/** Of “cantar” two persons have forms that are spelled alike. */
export const verbs = `## Verbs

|      | pedir   | cantar (antes) |
| ---- | ------- | -------------- |
| eu   | peço    | cantava        |
| ela  | pede    | cantava        |
| nós  | pedimos | cantávamos     |
`;

export const story = [
  "- [x] A Rita entra no café às nove.",
  "- [ ] O pai come sopa.",
  "  - O pai come uma torrada.",
  "- [x] A Rita [pede](#pedir) um galão.",
  "- [ ] O gato dorme na cadeira. <!-- by: K7 -->",
  "  - O gato dorme na janela.",
  "- [x] Nós [pedimos](#pedir) a conta.",
  "- [x] A gaivota leva a torrada.",
  "- [ ] A Rita paga com um sapato.",
  "  - A Rita paga com uma nota.",
  '- [x] Eu [cantava](<#cantar (antes)> "eu") no porto.',
  "- [x] O empregado ri.",
  "- [ ] A mãe chega de barco.",
  "  - A mãe chega de bicicleta.",
  "- [x] Chove ao meio-dia.",
  "- [ ] A Rita esquece o chapéu no café.",
  "  - A Rita esquece o livro no café.",
];
