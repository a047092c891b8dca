/** Sentences, one pair a line, and rebuild of them. */
export function sentenceUnit(lines: readonly string[], options = "", front = "teaches: pt\n"): string {
  return `---\n${front}---\n\n## Ordering\n\n${lines.join("\n")}\n\n\`\`\`activity\nmake: rebuild\n${options}\n\`\`\`\n`;
}

export const ordering = [
  "- Queria | um galão, | por favor. = I'd like a milky coffee, please.",
  "  - Por favor, | queria | um galão.",
  "- A Rita bebe um galão com o pai. = Rita drinks a milky coffee with her father.",
  "- O pai come uma torrada e a Rita come um bolo. = Father eats toast and Rita eats a cake.",
  "- O senhor tem sumo de laranja? = Do you have orange juice?",
  "- Quanto custa a torrada? = How much is the toast?",
  "- Rita não gosta de leite. = Rita doesn't like milk.",
];
