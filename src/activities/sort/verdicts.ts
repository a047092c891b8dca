import { block, section, type Verdict } from "../verdict";

export const verdicts: readonly Verdict[] = [
  {
    title: "Each card has its pile",
    why: "No text is on two cards that belong to different piles, so there is one way to sort them. A card that belongs to several piles lies where their circles overlap, where `overlap: true` says so.",
    example:
      section(
        "In the workshop",
        "- [x] A roda é redonda.",
        "- [x] O selim é macio.",
        "- [ ] A corrente é de papel.",
        "- [ ] O pneu é quadrado.",
      ) + block("sort"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    title: "A card with two right piles",
    why: "A card stands under two headings, and the piles do not overlap: it may be laid on either, and both are right. The number is that of all ways to sort the set. Say `overlap: true` for circles with a place for such cards.",
    example:
      section(
        "Articles",
        "### o",
        "",
        "- disco",
        "- pão",
        "- capital",
        "",
        "### a",
        "",
        "- mochila",
        "- conta",
        "- capital",
      ) + block("sort"),
    unit: true,
    says: { status: "several", count: 2, accepted: true },
    codes: ["card-in-two-piles"],
  },
  {
    title: "No solution",
    why: "A sentence is marked true and false, or one that is marked false is what another one's correction says, so no pile is right for its card.",
    example:
      section(
        "In the workshop",
        "- [x] A roda é redonda.",
        "- [x] O selim é macio.",
        "- [ ] A roda é redonda.",
        "- [ ] O pneu é quadrado.",
      ) + block("sort"),
    unit: true,
    says: { status: "none" },
    codes: ["contradicting-statements"],
  },
];
