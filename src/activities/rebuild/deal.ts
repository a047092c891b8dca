import { dealCode } from "../../base/mark";
import { plain } from "../../base/run";
import { Random, upTo } from "../../base/seed";
import { finished, type Steps } from "../../base/steps";
import { countStrings, dealtOrder } from "../../prove/orders/orders";
import type { Pair } from "../../unit/unit";
import type { DealRequest } from "../contract";
import { copiesOf, setsFor } from "../copies";
import type { Level } from "../options";
import { told } from "../printed";
import { counted } from "../report";
import { chooseForVersions, takeSpread, type Uses } from "../supply";
import { cutSentence } from "./cut";
import { cardRuns, spellingOf } from "./hide";
import type { DealtRebuild, Packet, PartOrder, RebuildDeal, Sentence, SentenceCard } from "./model";
import { hiddenAt, levelsOf, type RebuildOptions, rebuildOptions } from "./options";
import { asPuzzle, proveRebuild, readOrder, visibleOrders } from "./proof";

/** Orders of a packet drawn before one that has a sentence in order, or that another version has, is taken. */
const attempts = 60;

export function dealRebuild(request: DealRequest): DealtRebuild {
  return finished(dealingRebuild(request));
}

/** The same with a pause after what is chosen, and after each deal. */
export function* dealingRebuild(request: DealRequest): Steps<DealtRebuild> {
  const options = rebuildOptions(request.options);
  const { unit, sections } = request;
  const cut = sections.map(({ pairs }) => pairs.map((pair) => toSentence(pair, unit.text)));
  const whole = cut.flat().flatMap((each) => (each.parts.length < 2 ? [each.pair] : []));
  const groups = cut.map((group) => group.filter(({ parts }) => parts.length > 1));
  const choices = chooseForVersions(options.versions, options.seed, (seed, uses: Uses<Sentence>) =>
    takeSpread(groups, options.take, seed, uses),
  );
  const chosen = new Set(choices.flat());
  const sentences = groups.flat().filter((sentence) => chosen.has(sentence));
  // Packets of all versions go round in one room, so each that has sentences of its own has a number of its own.
  const known = new Map<string, Packet[]>();
  const packetsBy = choices.map((own) => {
    const indices = own.map((sentence) => sentences.indexOf(sentence));
    const key = indices.join(" ");
    const packets = known.get(key) ?? packetsOf(indices, options.packet, [...known.values()].flat().length);
    known.set(key, packets);
    return packets;
  });
  const [first = []] = packetsBy;
  const base = {
    request,
    options,
    sentences,
    whole,
    packets: [...known.values()].flat(),
    used: sentences.map(({ pair }) => pair),
  };
  if (sentences.length === 0) return { ...base, summary: "sentences", deals: [] };
  const plans = levelsOf(options).flatMap((level) => upTo(options.versions).map((i) => ({ level, version: i + 1 })));
  const copies = copiesOf({ ...options, ...copiesFor(options, request.classes, first.length) }, request.classes, plans);
  yield "cutting the sentences";
  const spelling = spellingOf(request, options.names ?? []);
  yield "cutting the sentences";
  const cardsAt = (level: Level): SentenceCard[][] =>
    sentences.map((sentence, i) => toCards(sentence, i, cardRuns(sentence, hiddenAt(options, level), spelling)));
  const cardsBy = new Map(levelsOf(options).map((level) => [level, cardsAt(level)]));
  yield "arranging";
  const taken = new Map<string, Set<string>>();
  const deals: RebuildDeal[] = [];
  for (const [i, { level, version }] of plans.entries()) {
    const before = taken.get(level) ?? new Set();
    taken.set(level, before);
    const material = { options, sentences, packets: packetsBy[version - 1] ?? [], cards: cardsBy.get(level) ?? [] };
    deals.push({ ...arrange(material, level, version, before), copies: copies[i] ?? 1 });
    yield "arranging";
  }
  const count = counted(choices[0]?.length ?? 0, "sentence");
  return {
    ...base,
    deals,
    summary: `${count} in ${counted(first.length, "packet")}`,
    ...(options.levels !== undefined && printsOf(cardsAt("gentle")) === printsOf(cardsAt("hard"))
      ? { sameLevels: "hard hides the capitals and the marks at the ends of sentences, and these sentences show none" }
      : {}),
  };
}

/** What some cards show, as one text. */
function printsOf(cards: readonly (readonly SentenceCard[])[]): string {
  return JSON.stringify(cards.map((own) => own.map(({ runs }) => runs)));
}

function toSentence(pair: Pair, text: string): Sentence {
  const parts = cutSentence(pair, text);
  return { pair, parts, orders: [upTo(parts.length), ...pair.orders.map((order) => order.parts)] };
}

function toCards({ parts }: Sentence, sentence: number, runs: readonly SentenceCard["runs"][]): SentenceCard[] {
  return parts.map(({ runs: whole, source, picture }, part) => {
    const own = runs[part] ?? whole;
    const text = plain(told({ runs: own, ...(picture ? { picture } : {}) }));
    return { sentence, part, runs: own, text, source, ...(picture ? { picture } : {}) };
  });
}

/** Sentences in packets of a size, in the order of the unit; so many packets are numbered before them. */
function packetsOf(sentences: readonly number[], size: number, before: number): Packet[] {
  return upTo(Math.ceil(sentences.length / size)).map((i) => ({
    number: before + i + 1,
    sentences: sentences.slice(i * size, (i + 1) * size),
  }));
}

/**
 * Packets go round, so that one set serves as many groups as it has packets: enough sets that each group of the largest class has
 * a packet and one is free to change to.
 */
function copiesFor(
  { copies, group }: RebuildOptions,
  classes: readonly number[],
  packets: number,
): Pick<RebuildOptions, "copies"> {
  if (copies !== undefined || classes.length === 0) return copies === undefined ? {} : { copies };
  const groups = Math.max(...classes.map((learners) => setsFor(learners, group)));
  return { copies: Math.ceil((groups + 1) / packets) };
}

interface Material {
  readonly options: RebuildOptions;
  readonly sentences: readonly Sentence[];
  readonly packets: readonly Packet[];
  readonly cards: readonly (readonly SentenceCard[])[];
}

function arrange(material: Material, level: Level, version: number, taken: Set<string>): Omit<RebuildDeal, "copies"> {
  const { options, sentences, packets, cards } = material;
  const own = packets.flatMap((packet) => packet.sentences);
  const stream = `rebuild/${options.seed}/${version}/${level}`;
  const drawn = packets.map((packet) => drawPacket(material, packet, `${stream}/${packet.number}`, taken));
  const dealt = drawn.flatMap((each) => each.cards);
  const inOrder = own.filter((sentence) => isInOrder(material, sentence, dealt));
  const texts = dealt.map(({ sentence, part, runs, picture }) => [
    sentence,
    part,
    runs,
    ...(picture ? [picture.path] : []),
  ]);
  const code = dealCode(JSON.stringify(["rebuild", level, version, options.packet, options.blanks, texts]));
  const attempt = Math.max(...drawn.map((each) => each.attempt));
  const proof = proveRebuild(
    own.flatMap((sentence) => sentences[sentence] ?? []),
    own.map((sentence) => cards[sentence] ?? []),
  );
  return { code, level, version, attempt, sentences: own, packets, cards, dealt, inOrder, proof };
}

/** A packet's cards in an order in which no sentence can be read, that no earlier version has, if there is one. */
function drawPacket(
  material: Material,
  packet: Packet,
  stream: string,
  taken: Set<string>,
): { readonly cards: readonly SentenceCard[]; readonly attempt: number } {
  const cards = packet.sentences.flatMap((sentence) => material.cards[sentence] ?? []);
  let best: { readonly cards: readonly SentenceCard[]; readonly attempt: number; readonly faults: number } | undefined;
  for (let attempt = 0; attempt < attempts && best?.faults !== 0; attempt++) {
    const order = new Random(`${stream}/${attempt}`).shuffle(cards);
    const legible = packet.sentences.filter((sentence) => isInOrder(material, sentence, order)).length;
    const known = taken.has(nameOf(packet, order)) || hasRow(order);
    const faults = 2 * legible + (known ? 1 : 0);
    if (!best || faults < best.faults) best = { cards: order, attempt, faults };
  }
  const stuck = packet.sentences.some((sentence) => {
    const own = material.cards[sentence] ?? [];
    return isInOrder(material, sentence, best?.cards ?? own) && hasWrongOrder(material.sentences[sentence], own);
  });
  const drawn = best && !stuck ? best : { cards: dealtWrong(material, packet, stream), attempt: attempts };
  taken.add(nameOf(packet, drawn.cards));
  return drawn;
}

function hasWrongOrder(sentence: Sentence | undefined, cards: readonly SentenceCard[]): boolean {
  return (
    sentence !== undefined &&
    countStrings(cards.map(({ text }) => text)) > BigInt(visibleOrders(sentence, cards).length)
  );
}

/** Where chance found no wrong order of each sentence: one sentence after the other, each in a wrong order if it has any. */
function dealtWrong({ sentences, cards }: Material, packet: Packet, stream: string): SentenceCard[] {
  return packet.sentences.flatMap((index) => {
    const [sentence, own] = [sentences[index], cards[index] ?? []];
    const { parts, accepted } = sentence ? asPuzzle(sentence, own) : { parts: [], accepted: [] };
    const order = dealtOrder(new Random(`${stream}/wrong/${index}`), parts, accepted) ?? upTo(own.length);
    return order.flatMap((part) => own[part] ?? []);
  });
}

function nameOf({ number }: Packet, cards: readonly SentenceCard[]): string {
  return `${number}: ${cards.map(({ sentence, part }) => `${sentence}.${part}`).join(" ")}`;
}

/** Whether the cards of a sentence, read in the order in which they lie, make an accepted order. */
function isInOrder({ sentences, cards }: Material, sentence: number, lying: readonly SentenceCard[]): boolean {
  const own = cards[sentence] ?? [];
  const order: PartOrder = lying.filter((card) => card.sentence === sentence).map(({ part }) => part);
  const read = readOrder(own, order);
  return sentences[sentence]?.orders.some((accepted) => readOrder(own, accepted) === read) ?? false;
}

/** Whether three cards lie next to each other as in their sentence. */
function hasRow(cards: readonly SentenceCard[]): boolean {
  return cards.some((card, i) => {
    const [one, two] = [cards[i - 1], cards[i - 2]];
    const follows = (a: SentenceCard | undefined, b: SentenceCard | undefined): boolean =>
      a !== undefined && b !== undefined && a.sentence === b.sentence && a.part + 1 === b.part;
    return follows(two, one) && follows(one, card);
  });
}
