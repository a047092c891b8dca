/** Statements of a story, some with a tied form, and a game of calls about them. */
export function callsUnit(statements: readonly string[], options = "", front = "teaches: pt\n"): string {
  return `---\n${front}---\n\n## The morning\n\n${statements.join("\n")}\n\n\`\`\`activity\nmake: calls\n${options}\n\`\`\`\n\n${verbs}`;
}

/** Of “cantar” two persons have forms that are spelled alike. */
export const verbs = `## Verbs

|      | medir   | cantar (antes) |
| ---- | ------- | -------------- |
| eu   | meço    | cantava        |
| ela  | mede    | cantava        |
| nós  | medimos | cantávamos     |
`;

export const story = [
  "- [x] A Inês entra no café às nove.",
  "- [ ] O pai come sopa.",
  "  - O pai come uma mochila.",
  "- [x] A Inês [mede](#medir) um disco.",
  "- [ ] O gato dorme na cadeira. <!-- by: K7 -->",
  "  - O gato dorme na janela.",
  "- [x] Nós [medimos](#medir) a conta.",
  "- [x] A gaivota leva a mochila.",
  "- [ ] A Inês paga com um sapato.",
  "  - A Inês paga com uma nota.",
  '- [x] Eu [cantava](<#cantar (antes)> "eu") no porto.',
  "- [x] O empregado ri.",
  "- [ ] A mãe chega de barco.",
  "  - A mãe chega de bicicleta.",
  "- [x] Chove ao meio-dia.",
  "- [ ] A Inês esquece o chapéu no café.",
  "  - A Inês esquece o livro no café.",
];
