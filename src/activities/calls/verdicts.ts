import { block, section, type Verdict } from "../verdict";

export const verdicts: readonly Verdict[] = [
  {
    title: "Each call has its answer",
    why: "No sentence is called both as true and as false, in the list, its reserve or a correction. The order is proven as well: no run of more than three equal answers where there are enough of both, and no plain alternation.",
    example:
      section(
        "In the workshop",
        "- [x] A roda é redonda.",
        "- [x] O selim é macio.",
        "- [x] O guiador roda.",
        "- [x] O travão trava.",
        "- [ ] A corrente é de papel.",
        "- [ ] O pneu é quadrado.",
        "- [ ] O sino é mudo.",
        "- [ ] A bomba canta.",
      ) + block("calls"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    title: "No solution",
    why: "A sentence is called as true and as false, or one that is called as false is what another one's correction says: whatever a learner answers, one of the two keys is against it.",
    example:
      section(
        "In the workshop",
        "- [x] A roda é redonda.",
        "- [x] O selim é macio.",
        "- [x] O guiador roda.",
        "- [ ] A roda é redonda.",
        "- [ ] O pneu é quadrado.",
        "- [ ] O sino é mudo.",
      ) + block("calls"),
    unit: true,
    says: { status: "none", count: 0 },
    codes: ["contradicting-statements"],
  },
];
