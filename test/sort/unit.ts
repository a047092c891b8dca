import { verbs } from "../calls/unit";

/** A unit with one section and a sort about it. */
export function sortUnit(items: readonly string[], options = "", front = "teaches: pt\n"): string {
  return `---\n${front}---\n\n## The café\n\n${items.join("\n")}\n\n\`\`\`activity\nmake: sort\n${options}\n\`\`\`\n\n${verbs}`;
}

/** Two articles; “pianista” takes either. */
export const articles = [
  "### o",
  "",
  "- disco",
  "- café",
  "- pão",
  "- copo",
  "- pianista",
  "",
  "### a",
  "",
  "- mochila",
  "- conta",
  "- gaivota",
  "- pianista",
];

export const crockery = [
  "- o copo = the glass",
  "- a tigela = the mug / the tankard",
  "- o garfo = the fork",
  "- a colher = the spoon",
  "- a faca = the knife",
  "- a chávena = the cup / the mug",
  "- lavar = to wash",
  "- secar = to dry",
];

export const meals = [
  "### Breakfast",
  "",
  "- disco",
  "- mochila",
  "- mel",
  "- pão",
  "- fruta",
  "",
  "### Lunch",
  "",
  "- sopa",
  "- arroz",
  "- pão",
  "- fruta",
  "- peixe",
  "",
  "### Supper",
  "",
  "- pão",
  "- queijo",
  "- sopa",
  "- ovos",
];
