import { block, section, type Verdict } from "../verdict";

export const verdicts: readonly Verdict[] = [
  {
    title: "One right order",
    why: "Each event has its place in the story, and no two strips say the same.",
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
    why: "Bullets under an event may stand in any order after it. All these orders are right: they are counted exactly, the key tells them, and no finding comes of it. The strips are never dealt in one of them.",
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
];
