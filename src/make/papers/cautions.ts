import type { Caution } from "../../activities/contract";

/**
 * The usual cautions. Cutters: guard on, latched when not in use, adults only (OSHA interpretation of 1976-06-30 of 29 CFR
 * 1910.212; a school district's safety note of 2018 for stacks). Small parts: 16 CFR 1501.4, EN 71-1. Rollers, scissors, floor:
 * usual wording, no source. No compliance is claimed.
 */
const texts: Readonly<Record<Caution, string>> = {
  cutter:
    "Paper cutter: an adult works it, with the guard in place, a few sheets at a time, and latches the blade down afterwards.",
  scissors: "Scissors: round tips, carried closed with the blades in the hand, passed handle first.",
  laminator:
    "Laminator: its rollers are hot; keep sleeves, hair and fingers away, and let pouches cool before they are cut.",
  "small-parts": "Small pieces are not for children under three. Count the pieces before they go back into the bag.",
  "clear-floor": "Clear the floor and the way to the objects. No running, no diving; hands, not elbows.",
};

export const schoolFirst = "The school's own rules go before anything that stands here.";

/** The cautions of some activities, each once, in a fixed order. */
export function cautionTexts(cautions: readonly Caution[]): string[] {
  const order: readonly Caution[] = ["cutter", "scissors", "laminator", "small-parts", "clear-floor"];
  return order.filter((caution) => cautions.includes(caution)).map((caution) => texts[caution]);
}
