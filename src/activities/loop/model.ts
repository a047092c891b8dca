import type { Circle } from "../../prove/loops/loops";
import type { Proof } from "../../prove/proof";
import type { Pair } from "../../unit/unit";
import type { Deal, Dealt } from "../contract";
import type { Level } from "../options";
import type { Printed } from "../printed";
import { signIn } from "../strips/model";
import type { LoopOptions } from "./options";

/** A card: above the line the answer to the card before it, under it what the next card answers. */
export interface LoopCard {
  readonly answer: Printed;
  readonly prompt: Printed;
  /** The pairs that the two are taken from. */
  readonly answers: Pair;
  readonly asks: Pair;
}

export interface LoopDeal extends Deal {
  readonly level: Level;
  /** Which of several circles of the activity it is, from 1, as all its signs say; undefined where it is the only one. */
  readonly number: number | undefined;
  /** In the order of the circle; proofs name cards by their place here. */
  readonly cards: readonly LoopCard[];
  /** Cards that belong nowhere in it; they count on from the places of the circle. */
  readonly decoys: readonly LoopCard[];
  /** All cards as dealt, as places. A card's place here is its piece number, and gives it its sign. */
  readonly dealt: readonly number[];
  /** Piece numbers in the order in which they are posted round the room. */
  readonly posting: readonly number[];
  readonly proof: Proof<Circle>;
  /** Cards that close a circle while others are left over, as places in the circle; undefined where none can. */
  readonly smaller: Circle | undefined;
}

export interface DealtLoop extends Dealt<LoopDeal> {
  readonly options: LoopOptions;
  readonly pairs: readonly Pair[];
  /** Cells of forms tables that read like another and that no circle has room for beside it. */
  readonly leftOut: number;
  /** Decoys that some deal has too few of. */
  readonly missingDecoys: number;
}

/** All of one height: the tails of J and Q would reach into the words below a large sign. I and O look like numbers. */
const letters = "ABCDEFGHKLMNPRSTUVWXYZ";

/** The card at a place: of the circle, or behind it a decoy. */
export function cardAt({ cards, decoys }: LoopDeal, place: number | undefined): LoopCard | undefined {
  return place === undefined ? undefined : (cards[place] ?? decoys[place - cards.length]);
}

/** How many cards a deal has, decoys included. */
export function cardCount({ cards, decoys }: LoopDeal): number {
  return cards.length + decoys.length;
}

/** What a card is called, by its piece number: A, B, …; of several circles A1, B1, … and A2, B2, … */
export function signOfPiece({ number }: LoopDeal, piece: number): string {
  const sign = signIn(letters, piece);
  return `${sign}${number ?? ""}`;
}

/** What a card is called, by its place. */
export function signAt(deal: LoopDeal, place: number): string {
  return signOfPiece(deal, deal.dealt.indexOf(place));
}

/** Cards that belong nowhere of which fewer could be made than were asked for. */
export function missingCards({ deals, options, missingDecoys }: DealtLoop): number {
  return deals.length === 0 || options.decoys === undefined ? 0 : Math.max(0, missingDecoys);
}
