import { plain, type Run } from "../../base/run";
import { answerKey } from "../../match/relation";
import type { Answer, Item, Pair, PileMember, Section } from "../../unit/unit";
import { allClaims, supplyClaims } from "../claim-supply";
import type { DealRequest } from "../contract";
import { type DealPlan, plansOf } from "../levels";
import type { Level } from "../options";
import { type Claim, truthWordsIn } from "../statements";
import { chooseForVersions, isFormPair, pairsOf, takeSpread, type Uses } from "../supply";
import { mispair } from "./mispair";
import {
  type CardText,
  equals,
  type SortCard,
  type SortHand,
  type SortPile,
  type SortSupply,
  type Stray,
} from "./model";
import type { SortOptions } from "./options";

/** What is sorted into what, and what each of the planned deals gets of it. */
export function supplySort(
  request: DealRequest,
  options: SortOptions,
): SortSupply & { readonly plans: readonly DealPlan[]; readonly dealt: readonly SortHand[]; readonly plain: Level } {
  const headings = headingsOf(request.sections);
  const byHeadings = options.piles === "auto" ? headings.size > 1 : options.piles !== "truth";
  return byHeadings ? supplyPiles(request, options, headings) : supplyTruth(request, options, [...headings.keys()]);
}

/** The cards of several hands, each once, in the order in which their items stand. */
function allCards(hands: readonly SortHand[], items: readonly Item[]): SortCard[] {
  const found = new Map<string, SortCard>();
  const ranks = new Map(items.map((item, i) => [item, i]));
  const rank = ({ item }: SortCard): number => ranks.get(item) ?? items.length;
  for (const card of hands.flatMap(({ cards }) => cards)) {
    const name = [rank(card), card.key, ...card.piles].join("\u0000");
    if (!found.has(name)) found.set(name, card);
  }
  return [...found.values()].sort((a, b) => rank(a) - rank(b));
}

/** Piles of all sections by name; headings of one name are one pile. */
function headingsOf(sections: readonly Section[]): Map<string, { pile: SortPile; members: PileMember[] }> {
  const found = new Map<string, { pile: SortPile; members: PileMember[] }>();
  for (const { name, heading, members } of sections.flatMap(({ piles }) => piles)) {
    const known = found.get(name);
    if (known) known.members.push(...members);
    else found.set(name, { pile: { name, source: heading }, members: [...members] });
  }
  return found;
}

function supplyPiles(
  request: DealRequest,
  options: SortOptions,
  headings: ReturnType<typeof headingsOf>,
): ReturnType<typeof supplySort> {
  const wanted = typeof options.piles === "object" ? options.piles : [...headings.keys()];
  const chosen = wanted.flatMap((name) => headings.get(name) ?? []);
  const cards = new Map<string, SortCard>();
  const repeated: SortSupply["repeated"][number][] = [];
  chosen.forEach(({ members }, pile) => {
    for (const member of members) {
      const card = cardOf(member, request, options);
      const known = cards.get(card.key);
      if (!known) cards.set(card.key, { ...card, piles: [pile] });
      else if (!known.piles.includes(pile)) {
        const again = [...(known.again ?? []), { range: card.source, item: card.item }];
        cards.set(card.key, { ...known, piles: [...known.piles, pile], again });
      } else repeated.push({ range: card.source, text: card.text, item: card.item, first: known.source, pile });
    }
  });
  const all = [...cards.values()];
  const groups = chosen.map((_, pile) => all.filter(({ piles }) => piles[0] === pile));
  const inPiles = new Set<Item>(
    request.sections.flatMap(({ piles }) => piles.flatMap(({ members }) => members.map(({ item }) => item))),
  );
  const loose = request.sections.flatMap(({ pairs, statements, events }) =>
    [...pairs, ...statements, ...events]
      .filter((item) => !inPiles.has(item))
      .map(
        (item): Stray => ({ range: item.range, text: "text" in item ? item.text : item.left.answers[0].text, item }),
      ),
  );
  const choices = chooseForVersions(options.versions, options.seed, (seed, uses: Uses<SortCard>) =>
    takeSpread(groups, options.take, seed, uses),
  );
  // Without levels no header card has an example.
  const plain = "hard";
  const plans = plansOf(options, plain);
  const dealt = plans.map(({ version }): SortHand => {
    return { cards: choices[version - 1] ?? [], claims: [], missingTwins: 0, missingMispairs: 0 };
  });
  return {
    by: "headings",
    piles: chosen.map(({ pile }) => pile),
    plans,
    dealt,
    plain,
    cards: allCards(
      dealt,
      all.map(({ item }) => item),
    ),
    claims: [],
    hands: [],
    missingTwins: 0,
    missingMispairs: 0,
    loose,
    repeated,
    unknown: wanted.filter((name) => !headings.has(name)),
    headings: [...headings.keys()],
  };
}

function cardOf(member: PileMember, request: DealRequest, { show }: SortOptions): Omit<SortCard, "piles"> {
  const by = member.item.by ? { by: member.item.by.code } : {};
  if (member.shape !== "pair") {
    const { runs, text, range, picture } = member.item;
    const card = { runs, text, lang: request.teaches, source: range, item: member.item, ...by };
    return { ...card, key: answerKey(member.item), ...(picture ? { picture } : {}) };
  }
  const { item } = member;
  const [left, right] = [item.left.answers[0], item.right.answers[0]];
  if (show === "both") {
    const key = `${answerKey(left)}\u0001${answerKey(right)}`;
    return { ...together(left, right, request.teaches), key, source: item.range, item, ...by };
  }
  const answer = show === "left" ? left : right;
  const { runs, text, range, picture } = answer;
  const lang = show === "left" ? request.teaches : request.explains;
  return { runs, text, lang, ...(picture ? { picture } : {}), key: answerKey(answer), source: range, item, ...by };
}

/** Both sides of a pair on one card: a picture over the other side's words, or the two with an equals sign. */
function together(left: Answer, right: Answer, lang: string): CardText {
  const picture = left.picture ?? right.picture;
  const wordsOf = ({ runs, text, picture: own }: Answer): readonly Run[] =>
    runs.length > 0 || own === picture ? runs : [{ text: `[${text}]`, italic: true }];
  const [first, second] = [wordsOf(left), wordsOf(right)];
  const between = first.length > 0 && second.length > 0 ? [{ text: equals }] : [];
  const runs = [...first, ...between, ...second];
  const text = `${left.text} = ${right.text}`;
  return {
    runs,
    text: picture ? [`[${picture.alt}]`, plain(runs)].filter(Boolean).join(" ") : text,
    lang,
    ...(picture ? { picture } : {}),
  };
}

/** The pile of what is true, and of what is not. */
const yes = 0;
const no = 1;

function supplyTruth(
  request: DealRequest,
  options: SortOptions,
  headings: readonly string[],
): ReturnType<typeof supplySort> {
  const statements = request.sections.flatMap((section) => section.statements);
  const withPairs = options.mispair !== undefined || statements.length === 0;
  const { take, seed } = options;
  const takePairs = take === undefined || statements.length === 0 ? take : Math.floor(take / 2);
  const takeClaims = withPairs && take !== undefined ? take - (takePairs ?? 0) : take;
  // Twins are as balance needs them, or as they are asked for; wrong partners are exchanged.
  const plain = statements.length > 0 && !withPairs && typeof options.twins !== "number" ? "gentle" : "hard";
  const plans = plansOf(options, plain);
  const supplies = statements.length > 0 ? supplyClaims(request, { ...options, take: takeClaims }, plans).hands : [];
  const { groups, repeated } = eachOnce(request.sections.map(pairsOf));
  const choices = chooseForVersions(options.versions, seed, (stream, uses: Uses<Pair>) =>
    withPairs ? takeSpread(groups, takePairs, stream, uses) : [],
  );
  const dealt = plans.map(({ level, version }, i): SortHand => {
    const supply = supplies[i] ?? {
      claims: [],
      missingTwins: typeof options.twins === "number" ? options.twins : 0,
    };
    const pairs = choices[version - 1] ?? [];
    const count = Math.min(options.mispair ?? Math.floor(pairs.length / 2), pairs.length);
    const sides = options.levels && level === "gentle" ? "repeated" : "exchanged";
    const stream = `mispair/${seed}${version === 1 ? "" : `/${version}`}`;
    const wrong = mispair(pairs, count, request.relation, stream, sides);
    return {
      cards: [
        ...supply.claims.map((claim) => claimCard(claim, request.teaches)),
        ...pairs.map((pair, place) => pairCard(pair, wrong.get(place), request.teaches)),
      ],
      claims: supply.claims,
      missingTwins: supply.missingTwins,
      missingMispairs: (options.mispair ?? count) - wrong.size,
    };
  });
  const words = truthWordsIn(request.teaches, request.explains);
  const names = options.names ?? [words.yes, words.no];
  const lang = options.names ? {} : { lang: words.lang };
  const hands = dealt.map(({ claims }) => claims);
  return {
    by: "truth",
    piles: names.map((name): SortPile => ({ name, ...lang })),
    plans,
    dealt,
    plain,
    cards: allCards(dealt, [...statements, ...groups.flat()]),
    claims: allClaims(request, hands),
    hands,
    missingTwins: Math.max(...dealt.map(({ missingTwins }) => missingTwins)),
    missingMispairs: Math.max(...dealt.map(({ missingMispairs }) => missingMispairs)),
    loose: [],
    repeated: withPairs ? repeated : [],
    unknown: [],
    headings,
  };
}

/** Pairs without those that read like an earlier one, and these: they would give two cards that are alike. */
function eachOnce(groups: readonly (readonly Pair[])[]): {
  readonly groups: readonly (readonly Pair[])[];
  readonly repeated: SortSupply["repeated"];
} {
  const known = new Map<string, Pair>();
  const repeated: SortSupply["repeated"][number][] = [];
  const once = groups.map((pairs) =>
    pairs.filter((pair) => {
      const [left, right] = [pair.left.answers[0], pair.right.answers[0]];
      const key = `${answerKey(left)}\u0001${answerKey(right)}`;
      const first = known.get(key);
      if (!first) known.set(key, pair);
      else if (!isFormPair(pair)) {
        const text = `${left.text}${equals}${right.text}`;
        repeated.push({ range: pair.range, text, item: pair, first: first.range, pile: yes });
      }
      return !first;
    }),
  );
  return { groups: once, repeated };
}

function claimCard(claim: Claim, lang: string): SortCard {
  const { runs, picture, text, key, truth, source, item, by, correction, twin } = claim;
  return {
    runs,
    ...(picture ? { picture } : {}),
    text,
    lang,
    key,
    piles: [truth ? yes : no],
    source,
    item,
    ...(by === undefined ? {} : { by }),
    ...(correction ? { correction } : {}),
    ...(twin ? { twin: true } : {}),
  };
}

function pairCard(pair: Pair, wrong: Answer | undefined, lang: string): SortCard {
  const [left, right] = [pair.left.answers[0], pair.right.answers[0]];
  const shown = wrong ?? right;
  const key = `${answerKey(left)}\u0001${answerKey(shown)}`;
  const own = right.runs.length > 0 ? right.runs : [{ text: `[${right.text}]`, italic: true }];
  return {
    ...together(left, shown, lang),
    key,
    piles: [wrong ? no : yes],
    source: pair.range,
    item: pair,
    ...(pair.by ? { by: pair.by.code } : {}),
    ...(wrong
      ? {
          correction: {
            runs: [
              ...left.runs,
              ...(left.runs.length > 0 ? [{ text: equals }] : []),
              ...own.map((run) => ({ ...run, bold: true })),
            ],
          },
        }
      : {}),
  };
}
