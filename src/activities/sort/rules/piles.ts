import type { Fix, Report, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { counted, optionPlace, quotedList } from "../../report";
import { fewestCards, fewestPiles, mostPiles } from "../deal";
import { pileNames } from "../model";
import { dealtWith, type SortContext } from "./context";

const activity = (options = ""): string => `\n\n\`\`\`activity\nmake: sort\n${options}\`\`\``;
const articles = "## Articles\n\n### o\n\n- disco\n- café\n- pão\n\n### a\n\n- mochila\n- conta\n";

export const sortPiles: Rule<SortContext> = {
  code: "sort-piles",
  severity: "error",
  title: "Fewer than two piles, more than six, or one that no heading names",
  why: "Piles are what the headings below the section's own name (`###`): two to six of them, which fit on a table. Without such headings statements are sorted into true and false. `piles` may name some of the headings.",
  example: {
    wrong: `## Articles\n\n### o\n\n- disco\n- café\n- pão\n- mel${activity("piles: headings\n")}`,
    right: `${articles}${activity("piles: headings\n")}`,
  },
  check: ({ dealt }) => {
    const { piles, unknown, headings, deals, request } = dealt;
    const { block, unit } = request;
    if (deals.length > 0) return [];
    const range = optionPlace(block, "piles", "from");
    const fixes: Fix[] = [];
    const list = (names: readonly string[]): string => `[${names.map((name) => JSON.stringify(name)).join(", ")}]`;
    const offer = (title: string, value: "truth" | "headings" | readonly string[]): void => {
      const { deals: better } = dealtWith(dealt, { piles: value });
      const text = typeof value === "string" ? value : list(value);
      if (better.length > 0) fixes.push({ title, edits: [setOption(block, unit.text, "piles", text)] });
    };
    if (unknown.length > 0) {
      offer("Take all headings", "headings");
      const known = headings.length > 0 ? `there are ${quotedList(headings)}` : "there are none";
      return [
        { range, message: `No heading below the section's own is called ${quotedList(unknown)}; ${known}.`, fixes },
      ];
    }
    if (piles.length > mostPiles) {
      offer(`Take the first ${mostPiles}`, headings.slice(0, mostPiles));
      return [{ range, message: `${piles.length} piles are too many for a table: ${mostPiles} at most.`, fixes }];
    }
    if (piles.length < fewestPiles) {
      offer("Sort into true and false", "truth");
      const found = headings.length === 0 ? "none" : `only ${quotedList(headings)}`;
      return [
        {
          range,
          message: `Sorting needs at least two piles, headings below the section's own; there is ${found}.`,
          fixes,
        },
      ];
    }
    return [];
  },
};

export const tooFewCards: Rule<SortContext> = {
  code: "too-few-cards",
  severity: "error",
  title: "Too few cards to sort",
  why: "Sorting needs at least four cards: items under the headings that name the piles, or statements (`[x]`, `[ ]`), or pairs of which some are shown with a wrong partner.",
  example: {
    wrong: `## Articles\n\n### o\n\n- disco\n\n### a\n\n- mochila${activity()}`,
    right: `${articles}${activity()}`,
  },
  check: ({ dealt }) => {
    const { cards, piles, unknown, deals, request, options } = dealt;
    if (deals.length > 0 || unknown.length > 0 || piles.length < fewestPiles || piles.length > mostPiles) return [];
    const { block, unit } = request;
    const enough = options.take !== undefined && dealtWith(dealt, { take: fewestCards }).deals.length > 0;
    return [
      {
        range: optionPlace(block, ...(enough ? ["take"] : ["from"])),
        message: `Sorting needs at least ${fewestCards} cards; ${enough ? `\`take\` leaves ${cards.length}` : cards.length === 0 ? "there is none" : `there ${cards.length === 1 ? "is" : "are"} ${cards.length}`}.`,
        fixes: enough
          ? [{ title: `Take ${fewestCards}`, edits: [setOption(block, unit.text, "take", String(fewestCards))] }]
          : [],
      },
    ];
  },
};

export const cardInNoPile: Rule<SortContext> = {
  code: "card-in-no-pile",
  severity: "warning",
  title: "An item that belongs to no pile",
  why: "It stands above the first heading that names a pile, so nobody could say where its card goes. It is left out. Move it under a heading, or into a section of its own.",
  example: {
    wrong: `## Articles\n\n- o mel = honey\n\n${articles.slice(13)}${activity()}`,
    right: `${articles}${activity()}`,
  },
  check: ({ dealt }) => {
    const [first, ...others] = dealt.loose;
    if (!first || dealt.deals.length === 0) return [];
    return [
      {
        range: first.range,
        message: `“${first.text}”${others.length > 0 ? ` and ${counted(others.length, "more item")}` : ""} ${others.length > 0 ? "stand" : "stands"} above the first pile and ${others.length > 0 ? "are" : "is"} left out.`,
        related: others.slice(0, 5).map(({ range }) => ({ range, message: "Left out too" })),
      },
    ];
  },
};

export const cardInTwoPiles: Rule<SortContext> = {
  code: "card-in-two-piles",
  severity: "warning",
  title: "A card that belongs to several piles",
  why: "The same text stands under several headings, so its card belongs to each of these piles and the key says so. Where that is meant, say `overlap: true`, for two or three piles: then the directions tell the learners, and mats have circles that overlap. With more piles there is no place that belongs to some of them and not to others.",
  example: {
    wrong: `${articles}- café${activity()}`,
    right: `${articles}- café${activity("overlap: true\n")}`,
  },
  check: ({ dealt }) => {
    const { cards, piles, options, deals, request } = dealt;
    if (deals.length === 0 || (options.overlap && piles.length <= 3)) return [];
    return cards.flatMap((card): Report[] => {
      const [again] = card.again ?? [];
      if (!again) return [];
      const names = quotedList(pileNames(dealt, card));
      const meant: Fix[] =
        piles.length <= 3
          ? [
              {
                title: "Let piles overlap",
                edits: [setOption(request.block, request.unit.text, "overlap", "true")],
              },
            ]
          : [];
      return [
        {
          range: again.range,
          message: `“${card.text}” stands under ${names}, so its card belongs to each of them${piles.length > 3 ? `; of ${piles.length} piles that cannot be shown` : ""}.`,
          related: [{ range: card.source, message: "Here it stands first" }],
          fixes: [...meant, { title: "Take it out here", edits: [{ range: again.item.block, text: "" }] }],
        },
      ];
    });
  },
};

export const repeatedCard: Rule<SortContext> = {
  code: "repeated-card",
  severity: "warning",
  title: "An item that stands twice under one heading",
  why: "It would give two cards that are alike. Only one of them is made.",
  example: { wrong: `${articles}- conta${activity()}`, right: `${articles}${activity()}` },
  check: ({ dealt }) =>
    (dealt.deals.length > 0 ? dealt.repeated : []).map(({ range, text, item, first }) => ({
      range,
      message: `“${text}” stands twice in this pile; one card is made.`,
      related: [{ range: first, message: "Here it stands first" }],
      fixes: [{ title: "Take this one out", edits: [{ range: item.block, text: "" }], preferred: true }],
    })),
};

/** A pile with less than this part of an even share is small: for two piles 30 %. */
const leastPart = 0.6;

export const unbalancedPiles: Rule<SortContext> = {
  code: "unbalanced-piles",
  severity: "information",
  title: "A pile with few cards",
  why: "Where nearly all cards belong to the other piles, learners can guess. A pile should have at least three fifths of an even share: 30 % of the cards with two piles, 20 % with three (own rule, after the one for true and false).",
  example: {
    wrong: `## Articles\n\n### o\n\n- disco\n- café\n- pão\n- mel\n\n### a\n\n- mochila${activity()}`,
    right: `${articles}${activity()}`,
  },
  check: ({ dealt }) => {
    const { piles, cards, by, claims, deals, request } = dealt;
    // Statements are judged by their own rule, and where false cards are missing that is what there is to say.
    if (deals.length === 0 || (by === "truth" && claims.length > 0) || dealt.missingMispairs > 0) return [];
    const counts = piles.map((_, pile) => cards.filter((card) => card.piles.includes(pile)).length);
    const least = (leastPart * cards.length) / piles.length;
    const small = piles.flatMap((pile, i) => ((counts[i] ?? 0) < least ? [{ pile, count: counts[i] ?? 0 }] : []));
    const [first] = small;
    if (!first) return [];
    const half = Math.floor(cards.length / 2);
    const fixes: Fix[] =
      by === "truth" && dealtWith(dealt, { mispair: half }).missingMispairs === 0
        ? [
            {
              title: `Make ${half} of them false`,
              edits: [setOption(request.block, request.unit.text, "mispair", String(half))],
            },
          ]
        : [];
    return [
      {
        range:
          by === "truth" ? optionPlace(request.block, "mispair") : (first.pile.source ?? optionPlace(request.block)),
        message: `${small.map(({ pile, count }) => `“${pile.name}” has ${count}`).join(", ")} of ${cards.length} cards: learners can guess. At least ${Math.ceil(least)} would be better.`,
        fixes,
      },
    ];
  },
};

export const tooFewMispairs: Rule<SortContext> = {
  code: "too-few-mispairs",
  severity: "warning",
  title: "Fewer false cards than asked for",
  why: "A false card shows a pair with the other side of another pair. That must be surely wrong: no answer of the pair, nor of a word that has an answer in common with it. Each wrong side is used once, so there are at most as many false cards as pairs.",
  example: {
    wrong: `## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice${activity("mispair: 6\n")}`,
    right: `## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice${activity("mispair: 2\n")}`,
  },
  check: ({ dealt }) => {
    const { missingMispairs, options, request, deals } = dealt;
    if (deals.length === 0 || missingMispairs <= 0 || options.mispair === undefined) return [];
    const made = options.mispair - missingMispairs;
    // As many as can be made would leave none that are true, where all pairs can be shown with a wrong partner.
    const fair = Math.min(made, Math.floor(dealt.used.length / 2));
    return [
      {
        range: optionPlace(request.block, "mispair"),
        message: `Only ${made} of ${options.mispair} false cards can be made of these pairs.`,
        fixes: [
          {
            title: `Ask for ${fair}`,
            edits: [setOption(request.block, request.unit.text, "mispair", String(fair))],
            preferred: true,
          },
        ],
      },
    ];
  },
};

export const matCircles: Rule<SortContext> = {
  code: "mat-circles",
  severity: "warning",
  title: "Circles for more than three piles",
  why: "Four circles cannot be drawn so that each group of them has a place of its own. The mat has fields instead.",
  example: {
    wrong: `## Letters\n\n### a\n- ato\n\n### b\n- boi\n\n### c\n- cor\n\n### d\n- dia${activity("mats: circles\n")}`,
    right: `## Letters\n\n### a\n- ato\n\n### b\n- boi\n\n### c\n- cor\n\n### d\n- dia${activity("mats: fields\n")}`,
  },
  check: ({ dealt: { options, piles, deals, request } }) =>
    deals.length > 0 && options.mats === "circles" && piles.length > 3
      ? [
          {
            range: optionPlace(request.block, "mats"),
            message: `Circles are for two or three piles, here are ${piles.length}: the mat has fields.`,
            fixes: [
              {
                title: "Print fields",
                edits: [setOption(request.block, request.unit.text, "mats", "fields")],
                preferred: true,
              },
            ],
          },
        ]
      : [],
};
