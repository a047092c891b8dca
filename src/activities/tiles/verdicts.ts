import { block, drinks, people, section, type Verdict } from "../verdict";

/** Eighty-four numbers with three answers between them. */
const remainders = Array.from(
  { length: 84 },
  (_, i) => `- ${i + 1} = ${["one over", "two over", "nothing over"][i % 3] ?? ""}`,
);

export const verdicts: readonly Verdict[] = [
  {
    title: "One solution, by a certificate",
    why: "Each word with a partner stands on one edge, has one partner there, and all other edges are blank or have no partner. Then each tile has its place by the words alone, and nothing need be searched. A grid that may be turned as a whole counts as one.",
    example: section("Drinks", ...drinks) + block("tiles", "grid: 2 x 2"),
    unit: true,
    says: { status: "one", count: 1, by: "certificate" },
    codes: [],
  },
  {
    title: "One solution, by search",
    why: "Some words fit more than one edge, as where two items share an answer. The prover tries every way to lay the tiles and finds only the one in the key: the other edges keep the words apart. Tiles that print alike may be exchanged; that is no second solution.",
    example: section("People", ...people) + block("tiles", "grid: 2 x 2"),
    unit: true,
    says: { status: "one", count: 1, by: "search" },
    codes: ["duplicate-answer"],
  },
  {
    title: "Several solutions",
    why: "There is a second way to lay the tiles so that all edges fit; the preview and the key show it beside the first, with the tiles marked that lie elsewhere. “At least” stands before the number where the prover stopped counting. Learners could be right and yet not have what the key shows, so the export is refused: take a word out, give it an answer of its own, or try another seed; where edges inside are blank, put in more pairs or take a smaller grid.",
    example: section("Drinks", ...drinks.slice(0, 2)) + block("tiles", "grid: 3 x 3", "fill: blank"),
    unit: true,
    says: { status: "several" },
    codes: ["several-solutions"],
  },
  {
    title: "Not settled",
    why: "The search used up its steps without a second solution and without a proof that there is none. The steps are counted, not timed, so every machine says the same. It happens where a few words return about fifteen times and more in a large grid. Nothing is claimed then: the sheets can be made, and the key says so. Fewer repeated answers or another seed help.",
    example: section("Divided by three", ...remainders) + block("tiles", "grid: 7 x 7", "seed: 3"),
    unit: true,
    says: { status: "unsettled" },
    codes: ["unsettled-proof", "duplicate-answer"],
  },
  {
    title: "No solution",
    why: "No layout fits, not even the one that the tiles were made from. That cannot come from a unit: it would be a fault in the program. Please report it with the unit.",
    example: "No unit can give this: tiles are cut from a layout that fits, and the prover counts that one.",
    says: { status: "none" },
    codes: ["no-solution"],
  },
];
