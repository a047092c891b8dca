/** A story of so many events, and strips of it. */
export function storyUnit(events: readonly string[], options = "", front = "teaches: pt\n"): string {
  return `---\n${front}---\n\n## The morning\n\n${events.join("\n")}\n\n\`\`\`activity\nmake: strips\n${options}\n\`\`\`\n`;
}

export const morning = [
  "1. A Inês entra no café.",
  "2. Ela mede:",
  "   - um disco",
  "   - uma mochila",
  "3. Uma gaivota entra.",
  "4. A gaivota leva a mochila.",
  "5. Ela paga.",
];
