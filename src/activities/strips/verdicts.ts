import { block, section, type Verdict } from "../verdict";

export const verdicts: readonly Verdict[] = [
  {
    title: "One right order",
    why: "Each event has its place in the story.",
    example:
      section(
        "The morning",
        "1. A Íris abre a oficina.",
        "2. Ela acende a luz.",
        "3. Ela varre o chão.",
        "4. Chega o primeiro cliente.",
      ) + block("strips"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    title: "Several right orders",
    why: "Bullets under an event may stand in any order after it. All these orders are right: they are counted exactly (from about nine thousand million million on, told as at least so many), the key tells them, and no finding comes of it. The strips are never dealt in one of them.",
    example:
      section(
        "The repair",
        "1. A Íris vira a bicicleta.",
        "2. Ela muda:",
        "   - a câmara",
        "   - a corrente",
        "3. Ela testa os travões.",
      ) + block("strips"),
    unit: true,
    says: { status: "several", count: 2, accepted: true },
    codes: [],
  },
  {
    title: "One right order, in which strips that say the same may be exchanged",
    why: "Two strips have the same words. Which of them lies where cannot be seen, so it is the same story to the eye and still one right order; the finding says so, since a learner may think of one of the two moments only.",
    example:
      section(
        "The morning",
        "1. A Íris abre a oficina.",
        "2. Ela acende a luz.",
        "3. Ela varre o chão.",
        "4. Ela acende a luz.",
      ) + block("strips"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: ["repeated-event"],
  },
  {
    title: "No wrong order",
    why: "All events may stand anywhere, or all say the same. The number of right orders is proven all the same, and the export is refused: there is nothing to find out.",
    example:
      section("The morning", "1. Ela acende a luz.", "2. Ela acende a luz.", "3. Ela acende a luz.") + block("strips"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: ["strips-any-order"],
  },
];
