/** An activity that sorts, with these options. */
export const activity = (options = ""): string => `\n\n\`\`\`activity\nmake: sort\n${options}\`\`\``;

/** A section with two piles that are in order. */
export const articles = "## Articles\n\n### o\n\n- disco\n- café\n- pão\n\n### a\n\n- mochila\n- conta\n";
