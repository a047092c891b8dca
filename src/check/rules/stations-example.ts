const pairs =
  "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: tiles\ntitle: Drinks\n```\n";

/** A unit with one activity, called “Drinks”, and a plan of stations with these options. */
export const plan = (options: string): string => `${pairs}\n\`\`\`stations\n${options}\n\`\`\``;
