/** A unit of pairs, one a line, and a loop of them. */
export function loopUnit(pairs: readonly string[], options = "", front = "teaches: pt\n"): string {
  const list = pairs.map((pair) => `- ${pair}`).join("\n");
  return `---\n${front}---\n\n## At the counter\n\n${list}\n\n\`\`\`activity\nmake: loop\n${options}\n\`\`\`\n`;
}

/** Twelve pairs without any clash. */
export const counter = [
  "o copo = the glass",
  "a tigela = the mug / the tankard",
  "a colher = the spoon",
  "o garfo = the fork",
  "a faca = the knife",
  "o prato = the plate",
  "o guardanapo = the napkin",
  "a garrafa = the bottle",
  "o bule = the teapot",
  "a chávena = the cup",
  "a bandeja = the tray",
  "o açucareiro = the sugar bowl",
];
