import { plain, type Run } from "../../base/run";
import { answerKey } from "../../match/relation";
import type { Answer, Item, Pair, PileMember, Section } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { type Claim, supplyClaims, truthWordsIn } from "../statements";
import { pairsOf, takeSpread } from "../supply";
import { mispair } from "./mispair";
import type { CardText, SortCard, SortPile, SortSupply, Stray } from "./model";
import type { SortOptions } from "./options";

/** What is sorted into what. */
export function supplySort(request: DealRequest, options: SortOptions): SortSupply {
  const headings = headingsOf(request.sections);
  const byHeadings = options.piles === "auto" ? headings.size > 1 : options.piles !== "truth";
  return byHeadings ? supplyPiles(request, options, headings) : supplyTruth(request, options, [...headings.keys()]);
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

function supplyPiles(request: DealRequest, options: SortOptions, headings: ReturnType<typeof headingsOf>): SortSupply {
  const wanted = typeof options.piles === "object" ? options.piles : [...headings.keys()];
  const chosen = wanted.flatMap((name) => headings.get(name) ?? []);
  const cards = new Map<string, SortCard>();
  const repeated: (Stray & { first: SortCard["source"] })[] = [];
  chosen.forEach(({ members }, pile) => {
    for (const member of members) {
      const card = cardOf(member, request, options);
      const known = cards.get(card.key);
      if (!known) cards.set(card.key, { ...card, piles: [pile] });
      else if (!known.piles.includes(pile)) {
        const again = [...(known.again ?? []), { range: card.source, item: card.item }];
        cards.set(card.key, { ...known, piles: [...known.piles, pile], again });
      } else repeated.push({ range: card.source, text: card.text, item: card.item, first: known.source });
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
  return {
    by: "headings",
    piles: chosen.map(({ pile }) => pile),
    cards: takeSpread(groups, options.take, String(options.seed)),
    claims: [],
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
  const equals = first.length > 0 && second.length > 0 ? [{ text: " = " }] : [];
  const runs = [...first, ...equals, ...second];
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

function supplyTruth(request: DealRequest, options: SortOptions, headings: readonly string[]): SortSupply {
  const statements = request.sections.flatMap((section) => section.statements);
  const withPairs = options.mispair !== undefined || statements.length === 0;
  const { take, seed } = options;
  const takePairs = take === undefined || statements.length === 0 ? take : Math.floor(take / 2);
  const takeClaims = withPairs && take !== undefined ? take - (takePairs ?? 0) : take;
  const supply =
    statements.length > 0
      ? supplyClaims(request, { ...options, take: takeClaims })
      : { claims: [], missingTwins: typeof options.twins === "number" ? options.twins : 0 };
  const pairs = withPairs ? takeSpread(request.sections.map(pairsOf), takePairs, String(seed)) : [];
  const count = Math.min(options.mispair ?? Math.floor(pairs.length / 2), pairs.length);
  const wrong = mispair(pairs, count, request.relation, `mispair/${seed}`);
  const words = truthWordsIn(request.teaches, request.explains);
  const names = options.names ?? [words.yes, words.no];
  const lang = options.names ? {} : { lang: words.lang };
  return {
    by: "truth",
    piles: names.map((name): SortPile => ({ name, ...lang })),
    cards: [
      ...supply.claims.map((claim) => claimCard(claim, request.teaches)),
      ...pairs.map((pair, i) => pairCard(pair, wrong.get(i), request.teaches)),
    ],
    claims: supply.claims,
    missingTwins: supply.missingTwins,
    missingMispairs: (options.mispair ?? count) - wrong.size,
    loose: [],
    repeated: [],
    unknown: [],
    headings,
  };
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
              ...(left.runs.length > 0 ? [{ text: " = " }] : []),
              ...own.map((run) => ({ ...run, bold: true })),
            ],
          },
        }
      : {}),
  };
}
