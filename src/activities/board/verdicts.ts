import { block, drinks, people, section, type Verdict } from "../verdict";

export const verdicts: readonly Verdict[] = [
  {
    title: "Each call has one target",
    why: "What the caller says fits one word on the board and no other, so a touch is right or wrong without a doubt.",
    example: section("Drinks", ...drinks) + block("board", "clue: gloss"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    title: "A call with two targets",
    why: "What is called for one word fits another on the same board. Clues are called one at a time, so each must be clear by itself, even where all of them together have one assignment.",
    example: section("People", ...people) + block("board", "clue: gloss"),
    unit: true,
    says: { status: "several" },
    codes: ["board-clue-fits-two"],
  },
];
