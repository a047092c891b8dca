import { block, section, type Verdict } from "../verdict";

export const verdicts: readonly Verdict[] = [
  {
    title: "One right order of each sentence",
    why: "Each sentence has one accepted order. Two cards with the same word may be exchanged: that is the same sentence to the eye.",
    example: section("Asking", "- Onde | fica | a oficina? = Where is the workshop?") + block("rebuild"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    title: "Several right orders",
    why: "A sentence has further accepted orders under it. The number is that of all sentences together: two orders of one and three of another make six. The key tells them all.",
    example:
      section("Asking", "- Amanhã | venho | buscá-la. = I'll come for it tomorrow.", "  - Venho | buscá-la | amanhã.") +
      block("rebuild"),
    unit: true,
    says: { status: "several", count: 2, accepted: true },
    codes: [],
  },
  {
    title: "No wrong order of a sentence",
    why: "All orders of a sentence's cards are accepted, or all its cards are the same. They are counted as well, and the finding says that there is nothing to find out.",
    example: section("Asking", "- Venho | amanhã. = I'll come tomorrow.", "  - Amanhã | venho.") + block("rebuild"),
    unit: true,
    says: { status: "several", count: 2, accepted: true },
    codes: ["rebuild-any-order"],
  },
];
