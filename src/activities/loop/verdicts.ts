import { block, drinks, people, section, type Verdict } from "../verdict";

export const verdicts: readonly Verdict[] = [
  {
    title: "One full circle, and none closes early",
    why: "Each answer stands on one card, so each card leads to one other, and the circle comes back to the start only when all cards are in it.",
    example: section("Drinks", ...drinks) + block("loop"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    title: "One full circle, but a smaller one can close",
    why: "Two cards have the same answer. There is still only one circle with all cards, yet whoever takes the wrong card is back at the start too soon, with cards left over. The two are judged apart, since neither follows from the other: “one solution, but a smaller circle can close”.",
    example: section("People", ...people, "- o vizinho = the neighbour") + block("loop"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: ["early-close"],
  },
  {
    title: "Several full circles",
    why: "An answer that three cards have, or two answers that return in turn, let all cards close a circle in another order. The preview and the key show both.",
    example:
      section(
        "People",
        "- o patrão = the boss",
        "- o chefe = the boss",
        "- o dono = the boss",
        "- a amiga = the friend",
        "- o vizinho = the neighbour",
      ) + block("loop"),
    unit: true,
    says: { status: "several" },
    codes: ["second-circle"],
  },
  {
    title: "Not settled",
    why: "Words whose sets of answers overlap in many ways are searched, up to a number of steps. Where these are used up, nothing is claimed.",
    example:
      "No short unit gives this. Of 60,000 circles of 12 to 311 cards with up to three further answers a card on average, drawn at random, one was left open, of 114 cards; and an activity draws up to forty circles before it takes one.",
    says: { status: "unsettled" },
    codes: ["second-circle"],
  },
];
