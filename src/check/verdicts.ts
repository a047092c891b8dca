import type { KindName } from "../activities/contract";
import type { Proof } from "../prove/proof";

/** Something that the prover can say of a deal, told for the reference with a unit that gives it. */
export interface Verdict {
  readonly make: KindName;
  readonly title: string;
  /** What it says, why, and what to do. Markdown. */
  readonly why: string;
  /** A unit whose first deal gets it; without `unit`, in words. */
  readonly example: string;
  readonly unit?: true;
  readonly says: Partial<Pick<Proof<unknown>, "status" | "count" | "by" | "capped" | "accepted">>;
  /** Findings that come with it. */
  readonly codes: readonly string[];
}

const block = (make: string, ...options: readonly string[]): string =>
  ["", "```activity", `make: ${make}`, ...options, "```"].join("\n");

const unit = (heading: string, ...lines: readonly string[]): string => `## ${heading}\n\n${lines.join("\n")}\n`;

const drinks = ["- chá = tea", "- leite = milk", "- água = water", "- sumo = juice"];

/** Eighty-four numbers with three answers between them. */
const remainders = Array.from(
  { length: 84 },
  (_, i) => `- ${i + 1} = ${["one over", "two over", "nothing over"][i % 3] ?? ""}`,
);

export const verdicts: readonly Verdict[] = [
  {
    make: "tiles",
    title: "One solution, by a certificate",
    why: "Each word with a partner stands on one edge, has one partner there, and all other edges are blank or have no partner. Then each tile has its place by the words alone, and nothing need be searched. A grid that may be turned as a whole counts as one.",
    example: unit("Drinks", ...drinks) + block("tiles", "grid: 2 x 2"),
    unit: true,
    says: { status: "one", count: 1, by: "certificate" },
    codes: [],
  },
  {
    make: "tiles",
    title: "One solution, by search",
    why: "Some words fit more than one edge, as where two items share an answer. The prover tries every way to lay the tiles and finds only the one in the key: the other edges keep the words apart. Tiles that print alike may be exchanged; that is no second solution.",
    example:
      unit(
        "People",
        "- o patrão = the boss",
        "- o chefe = the boss",
        "- a amiga = the friend",
        "- a prima = the cousin",
      ) + block("tiles", "grid: 2 x 2"),
    unit: true,
    says: { status: "one", count: 1, by: "search" },
    codes: ["duplicate-answer"],
  },
  {
    make: "tiles",
    title: "Several solutions",
    why: "There is a second way to lay the tiles so that all edges fit; the preview and the key show it beside the first, with the tiles marked that lie elsewhere. “At least” stands before the number where the prover stopped counting. Learners could be right and yet not have what the key shows, so the export is refused: take a word out, give it an answer of its own, or try another seed.",
    example: unit("Drinks", ...drinks.slice(0, 2)) + block("tiles", "grid: 3 x 3", "fill: blank"),
    unit: true,
    says: { status: "several" },
    codes: ["several-solutions"],
  },
  {
    make: "tiles",
    title: "Not settled",
    why: "The search used up its steps without a second solution and without a proof that there is none. The steps are counted, not timed, so every machine says the same. It happens where a few words return about fifteen times and more in a large grid. Nothing is claimed then: the sheets can be made, and the key says so. Fewer repeated answers or another seed help.",
    example: unit("Divided by three", ...remainders) + block("tiles", "grid: 7 x 7", "seed: 3"),
    unit: true,
    says: { status: "unsettled" },
    codes: ["unsettled-proof", "duplicate-answer"],
  },
  {
    make: "tiles",
    title: "No solution",
    why: "No layout fits, not even the one that the tiles were made from. That cannot come from a unit: it would be a fault in the program. Please report it with the unit.",
    example: "No unit can give this: tiles are cut from a layout that fits, and the prover counts that one.",
    says: { status: "none" },
    codes: ["no-solution"],
  },
  {
    make: "loop",
    title: "One full circle, and none closes early",
    why: "Each answer stands on one card, so each card leads to one other, and the circle comes back to the start only when all cards are in it.",
    example: unit("Drinks", ...drinks) + block("loop"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    make: "loop",
    title: "One full circle, but a smaller one can close",
    why: "Two cards have the same answer. There is still only one circle with all cards, yet whoever takes the wrong card is back at the start too soon, with cards left over. The two are judged apart, since neither follows from the other.",
    example:
      unit(
        "People",
        "- o patrão = the boss",
        "- o chefe = the boss",
        "- a amiga = the friend",
        "- o vizinho = the neighbour",
        "- a prima = the cousin",
      ) + block("loop"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: ["early-close"],
  },
  {
    make: "loop",
    title: "Several full circles",
    why: "An answer that three cards have, or two answers that return in turn, let all cards close a circle in another order. The preview and the key show both.",
    example:
      unit(
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
    make: "loop",
    title: "Not settled",
    why: "Words whose sets of answers overlap in many ways are searched, up to a number of steps. Where these are used up, nothing is claimed.",
    example:
      "No short unit gives this. Of 60,000 circles of 12 to 311 cards with up to three further answers a card on average, drawn at random, one was left open, of 114 cards; and an activity draws up to forty circles before it takes one.",
    says: { status: "unsettled" },
    codes: ["second-circle"],
  },
  {
    make: "strips",
    title: "One right order",
    why: "Each event has its place in the story, and no two strips say the same.",
    example:
      unit(
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
    make: "strips",
    title: "Several right orders",
    why: "Bullets under an event may stand in any order after it. All these orders are right: they are counted exactly, the key tells them, and no finding comes of it. The strips are never dealt in one of them.",
    example:
      unit(
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
    make: "rebuild",
    title: "One right order of each sentence",
    why: "Each sentence has one accepted order. Two cards with the same word may be exchanged: that is the same sentence to the eye.",
    example: unit("Asking", "- Onde | fica | a oficina? = Where is the workshop?") + block("rebuild"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    make: "rebuild",
    title: "Several right orders",
    why: "A sentence has further accepted orders under it. The number is that of all sentences together: two orders of one and three of another make six. The key tells them all.",
    example:
      unit("Asking", "- Amanhã | venho | buscá-la. = I'll come for it tomorrow.", "  - Venho | buscá-la | amanhã.") +
      block("rebuild"),
    unit: true,
    says: { status: "several", count: 2, accepted: true },
    codes: [],
  },
  {
    make: "sort",
    title: "Each card has its pile",
    why: "No text is on two cards that belong to different piles, so there is one way to sort them. A card that belongs to several piles lies where their circles overlap, where `overlap: true` says so.",
    example:
      unit(
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
    make: "sort",
    title: "A card with two right piles",
    why: "A card stands under two headings, and the piles do not overlap: it may be laid on either, and both are right. The number is that of all ways to sort the set. Say `overlap: true` for circles with a place for such cards.",
    example:
      unit(
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
    make: "sort",
    title: "No solution",
    why: "A sentence is marked true and false, or one that is marked false is what another one's correction says, so no pile is right for its card.",
    example:
      unit(
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
  {
    make: "calls",
    title: "Each call has its answer",
    why: "No sentence is called both as true and as false, in the list, its reserve or a correction. The order is proven as well: no run of more than three equal answers, and no plain alternation.",
    example:
      unit(
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
    make: "board",
    title: "Each call has one target",
    why: "What the caller says fits one word on the board and no other, so a touch is right or wrong without a doubt.",
    example: unit("Drinks", ...drinks) + block("board", "clue: gloss"),
    unit: true,
    says: { status: "one", count: 1 },
    codes: [],
  },
  {
    make: "board",
    title: "A call with two targets",
    why: "What is called for one word fits another on the same board. Clues are called one at a time, so each must be clear by itself, even where all of them together have one assignment.",
    example:
      unit(
        "People",
        "- o patrão = the boss",
        "- o chefe = the boss",
        "- a amiga = the friend",
        "- a prima = the cousin",
      ) + block("board", "clue: gloss"),
    unit: true,
    says: { status: "several" },
    codes: ["board-clue-fits-two"],
  },
];
