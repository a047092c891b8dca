import type { Range } from "../../base/range";
import type { Run } from "../../base/run";
import type { Proof } from "../../prove/proof";
import type { Pair, Picture } from "../../unit/unit";
import type { Deal, Dealt } from "../contract";
import type { Level } from "../options";
import type { RebuildOptions } from "./options";

/** Parts of a sentence by their index, in an order. */
export type PartOrder = readonly number[];

export interface SentencePart {
  /** Empty for a bare picture. */
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** As printed; the alternative text of a bare picture. */
  readonly text: string;
  readonly source: Range;
}

/** A sentence that is cut into cards. */
export interface Sentence {
  readonly pair: Pair;
  /** Two and more. */
  readonly parts: readonly SentencePart[];
  /** All accepted orders of the parts, the written one first. */
  readonly orders: readonly [PartOrder, ...PartOrder[]];
}

/** A numbered bag. */
export interface Packet {
  /** From 1, through all versions. */
  readonly number: number;
  /** Indices of sentences. */
  readonly sentences: readonly number[];
}

/** A card as it is printed: a part of a sentence without what its level hides. */
export interface SentenceCard {
  /** Index of the sentence, and of the part in it. */
  readonly sentence: number;
  readonly part: number;
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** Equal for cards that look alike. */
  readonly text: string;
  readonly source: Range;
}

/** For each sentence of a deal an order of its parts. */
export type Rebuilt = readonly PartOrder[];

export interface RebuildDeal extends Deal {
  readonly level: Level;
  /** Indices of its sentences, in the order of the unit. */
  readonly sentences: readonly number[];
  readonly packets: readonly Packet[];
  /** By sentence and part, for all sentences of the activity. */
  readonly cards: readonly (readonly SentenceCard[])[];
  /** The cards as they are dealt, packet by packet: a card's place here is its number. */
  readonly dealt: readonly SentenceCard[];
  /** Its sentences whose cards lie in an accepted order, since no other was found. */
  readonly inOrder: readonly number[];
  readonly proof: Proof<Rebuilt>;
}

export interface DealtRebuild extends Dealt<RebuildDeal> {
  readonly options: RebuildOptions;
  /** Those of all deals, in the order of the unit. */
  readonly sentences: readonly Sentence[];
  /** Pairs that make one card only and are left out. */
  readonly whole: readonly Pair[];
  /** Those of all versions, each once, by number. */
  readonly packets: readonly Packet[];
}

/** What stands on the cards of a packet's n-th sentence: its letter, where the packet has several. */
export function signIn(packet: Packet, sentence: number): string {
  return packet.sentences.length > 1 ? "ABCDEFGHJKLM".charAt(packet.sentences.indexOf(sentence)) : "";
}

/** The packet that a sentence is in. */
export function packetOf(packets: readonly Packet[], sentence: number): Packet | undefined {
  return packets.find(({ sentences }) => sentences.includes(sentence));
}
