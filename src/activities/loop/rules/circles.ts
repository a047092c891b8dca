import type { Related, Report, Rule } from "../../../base/finding";
import type { Press } from "../../contract";
import { setOption } from "../../edits";
import { optionPlace, quotedList } from "../../report";
import { laterOf } from "../../shared-answers";
import { dealLoop, fewestPairs } from "../deal";
import { type DealtLoop, type LoopDeal, signAt } from "../model";
import { type Clash, clashCause, clashesOf, closedBy } from "./clashes";
import { fixesFor } from "./fixes";

export interface LoopContext {
  readonly dealt: DealtLoop;
  readonly press: Press;
}

export const tooFewCards: Rule<LoopContext> = {
  code: "loop-too-few",
  severity: "error",
  title: "Too few pairs for a circle of cards",
  why: "Each pair asks on one card and answers on the next, so a circle of three cards leaves nothing to look for. Four pairs are the least; twelve to twenty make a good circle.",
  example: {
    wrong: "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n\n```activity\nmake: loop\n```",
    right: "## Drinks\n\n- chá = tea\n- leite = milk\n- água = water\n- sumo = juice\n\n```activity\nmake: loop\n```",
  },
  check: ({ dealt }) => {
    const { request, pairs, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, unit, sections } = request;
    const taken = options.take !== undefined && pairs.length >= fewestPairs;
    const names = quotedList(sections.map(({ name }) => name));
    const message = taken
      ? `A loop needs at least ${fewestPairs} pairs; \`take\` leaves ${options.take} of ${pairs.length}.`
      : `A loop needs at least ${fewestPairs} pairs; ${names} has ${pairs.length === 0 ? "none" : pairs.length}.`;
    const all = setOption(block, unit.text, "take", String(pairs.length));
    const fixes = taken ? [{ title: `Take ${pairs.length}`, edits: [all] }] : [];
    return [{ range: optionPlace(block, ...(taken ? ["take"] : ["from"])), message, fixes }];
  },
};

function laterPair({ asks, answers }: Clash): Clash["asks"] {
  return laterOf(asks, answers);
}

/** Clashes of the first deal in which a later item has any, one for each later item. */
function clashesByItem({ deals, request }: DealtLoop): Map<number, Clash> {
  const found = new Map<number, Clash>();
  for (const clash of deals.flatMap((deal) => clashesOf(deal, request.relation))) {
    const { start } = laterPair(clash).range;
    if (!found.has(start)) found.set(start, clash);
  }
  return found;
}

/** Deals of which more than one circle takes every card, and the clashes that a second one goes by. */
function secondCircles({ deals, request }: DealtLoop): { readonly deal: LoopDeal; readonly by: readonly Clash[] }[] {
  return deals.flatMap((deal) => {
    const { second } = deal.proof;
    if (deal.proof.status !== "several" || !second) return [];
    const steps = new Set(second.map((card, i) => `${card} ${second[(i + 1) % second.length]}`));
    return [{ deal, by: clashesOf(deal, request.relation).filter(({ card, next }) => steps.has(`${card} ${next}`)) }];
  });
}

function report(dealt: DealtLoop, clash: Clash, effect: string, also: readonly Related[] = []): Report {
  const { deal, card, next, asks, answers } = clash;
  const { range, others } = clashCause(clash, dealt.request.relation);
  const [here, there] = [deal.cards[card], deal.cards[next]];
  const earlier = laterPair(clash) === asks ? answers : asks;
  const related = range.start === earlier.range.start ? laterPair(clash) : earlier;
  return {
    range,
    message: `“${here?.prompt.text}” on card ${signAt(deal, card)} is answered by “${there?.answer.text}” on card ${signAt(deal, next)} too. ${effect}`,
    related: [
      { range: related.range, message: "The other pair" },
      ...others.slice(0, 2).map((pair) => ({ range: pair.range, message: "This says that the two fit" })),
      ...also,
    ],
    fixes: fixesFor(dealt, clash),
  };
}

function named(deal: LoopDeal, circle: readonly number[]): string {
  const signs = circle.map((place) => signAt(deal, place));
  const shown = signs.length > 14 ? [...signs.slice(0, 13), "…"] : signs;
  return shown.join(" ");
}

export const secondCircle: Rule<LoopContext> = {
  code: "second-circle",
  severity: "error",
  title: "Cards that close a full circle in more than one way",
  why: "Words that answer more than one card allow a second circle with all cards: learners may be right and yet have other signs than the key. It takes answers that are used three times, or two of them that return in turn. The preview shows both circles. Take out a pair or an alternative answer, or let `take` leave pairs out.",
  example: {
    wrong:
      "## People\n\n- o patrão = the boss\n- o chefe = the boss\n- o dono = the boss\n- a amiga = the friend\n- o vizinho = the neighbour\n\n```activity\nmake: loop\n```",
    right:
      "## People\n\n- o patrão = the boss\n- o chefe = the leader\n- o dono = the owner\n- a amiga = the friend\n- o vizinho = the neighbour\n\n```activity\nmake: loop\n```",
  },
  check: ({ dealt }) => {
    const place = optionPlace(dealt.request.block);
    const [hit] = secondCircles(dealt);
    if (hit) {
      const { deal, by } = hit;
      const { second = [] } = deal.proof;
      const [clash] = [...by].sort((a, b) => laterPair(b).range.start - laterPair(a).range.start);
      const also = [{ range: place, message: "The preview shows both circles" }];
      const effect = `So all ${second.length} cards also make the circle ${named(deal, second)}.`;
      return clash ? [report(dealt, clash, effect, also)] : [];
    }
    const open = dealt.deals.find(({ proof }) => proof.status === "unsettled");
    if (!open) return [];
    const { options, request } = dealt;
    const settled = [1, 2, 3].find((more) => {
      const value = { ...options, seed: options.seed + more };
      return dealLoop({ ...request, options: { ...request.options, value } }).deals.every(
        ({ proof }) => proof.status === "one",
      );
    });
    const seed = String(options.seed + (settled ?? 0));
    return [
      {
        range: place,
        severity: "warning",
        message: `It could not be settled whether these cards make one full circle only (${open.proof.nodes} steps were tried).`,
        fixes:
          settled === undefined
            ? []
            : [{ title: `Use seed ${seed}`, edits: [setOption(request.block, request.unit.text, "seed", seed)] }],
      },
    ];
  },
};

export const earlyClose: Rule<LoopContext> = {
  code: "early-close",
  severity: "warning",
  title: "Cards that close a circle while others are left over",
  why: "A word on one card is answered by two cards. Whoever takes the wrong one comes back to the start too soon and never meets the other cards. No order of the cards helps: take out a pair or an alternative answer, or let `take` leave pairs out; those that clash are left out first.",
  example: {
    wrong:
      "## People\n\n- o patrão = the boss\n- o chefe = the boss\n- a amiga = the friend\n- o vizinho = the neighbour\n- a prima = the cousin\n\n```activity\nmake: loop\n```",
    right:
      "## People\n\n- o patrão = the boss\n- o chefe = the boss\n- a amiga = the friend\n- o vizinho = the neighbour\n- a prima = the cousin\n\n```activity\nmake: loop\ntake: 4\n```",
  },
  check: ({ dealt }) => {
    // What makes a second circle is told by that.
    const [hit] = secondCircles(dealt);
    const told = new Set(hit?.by.map((clash) => laterPair(clash).range.start));
    return [...clashesByItem(dealt)].flatMap(([start, clash]) => {
      if (told.has(start)) return [];
      const circle = closedBy(clash);
      const { deal } = clash;
      const effect =
        circle.length === 1
          ? "So that card closes a circle of its own."
          : `So a circle can close with ${circle.length} of ${deal.cards.length} cards: ${named(deal, circle)}.`;
      return [report(dealt, clash, effect)];
    });
  },
};
