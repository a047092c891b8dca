/** A unit of pairs, one a line, and a board of them. */
export function boardUnit(pairs: readonly string[], options = "", front = "teaches: pt\n"): string {
  const list = pairs.map((pair) => `- ${pair}`).join("\n");
  return `---\n${front}---\n\n## At the counter\n\n${list}\n\n\`\`\`activity\nmake: board\n${options}\n\`\`\`\n`;
}

/** Twenty pairs without any clash; the first six have example sentences. */
export const counter = [
  "o copo = the glass\n  - O copo está vazio.",
  "a tigela = the mug / the tankard\n  - A tigela está cheia.",
  "a colher = the spoon\n  - Como a sopa com a colher.",
  "o garfo = the fork\n  - Onde está o garfo?",
  "a faca = the knife\n  - A faca corta bem.",
  "o prato = the plate\n  - O prato é branco.",
  "o guardanapo = the napkin",
  "a garrafa = the bottle",
  "o bule = the teapot",
  "a chávena = the cup",
  "a bandeja = the tray",
  "o açucareiro = the sugar bowl",
  "a mesa = the table",
  "a cadeira = the chair",
  "o saca-rolhas = the corkscrew",
  "a toalha = the tablecloth",
  "o pires = the saucer",
  "a jarra = the jug",
  "o balcão = the counter",
  "a conta = the bill",
];

/** Left sides with their printed right sides. */
export const meanings: ReadonlyMap<string, string> = new Map(
  counter.map((pair) => {
    const [left = "", right = ""] = (pair.split("\n")[0] ?? "").split(" = ");
    return [left, right.split(" / ")[0] ?? ""];
  }),
);
