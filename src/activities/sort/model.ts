import type { Range } from "../../base/range";
import type { Run } from "../../base/run";
import type { Item, Picture } from "../../unit/unit";
import type { Deal, Dealt } from "../contract";
import type { ShownPair } from "../dealt-claims";
import type { Level } from "../options";
import type { Claim, Correction } from "../statements";
import type { SortOptions } from "./options";

export interface SortPile {
  readonly name: string;
  /** Its heading; undefined for true and false. */
  readonly source?: Range;
  /** BCP 47; undefined where that of the heading is not known. */
  readonly lang?: string;
}

/** Between the two sides of a pair on one card, a run of its own. */
export const equals = " = ";

/** What stands on a card. */
export interface CardText {
  /** Empty for a bare picture. */
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** As printed; the alternative text of a bare picture. */
  readonly text: string;
  /** BCP 47 */
  readonly lang: string;
}

export interface SortCard extends CardText {
  /** Equal for cards that are the same to a learner. */
  readonly key: string;
  /** Indices of the piles that it belongs to, ascending. */
  readonly piles: readonly number[];
  readonly source: Range;
  readonly item: Item;
  /** Where it stands under further headings. */
  readonly again?: readonly { readonly range: Range; readonly item: Item }[];
  /** Code of the learner who wrote it. */
  readonly by?: string;
  /** What is right instead, on a card that is false. */
  readonly correction?: Pick<Correction, "runs"> & { readonly source?: Range };
  readonly twin?: boolean;
}

export interface SortDeal extends Deal {
  readonly level: Level;
  /** Indices of cards in the order in which they are dealt; header cards come before and have no place here. */
  readonly order: readonly number[];
  /** By pile the card that its header card shows as an example and that is not dealt; empty where there are none. */
  readonly examples: readonly (number | undefined)[];
}

/** What one deal gets. */
export interface SortHand {
  /** In the order of the unit. */
  readonly cards: readonly SortCard[];
  /** Statements among them. */
  readonly claims: readonly Claim[];
  readonly missingTwins: number;
  readonly missingMispairs: number;
}

/** A card that stands in the unit but is not dealt as it stands. */
export interface Stray {
  readonly range: Range;
  readonly text: string;
  readonly item: Item;
}

export interface SortSupply {
  /** `truth`: the first pile is the true one. */
  readonly by: "truth" | "headings";
  readonly piles: readonly SortPile[];
  /** Those of all deals, in the order of the unit. */
  readonly cards: readonly SortCard[];
  /** Statements among them. */
  readonly claims: readonly Claim[];
  /** The statements of each deal. */
  readonly hands: readonly (readonly Claim[])[];
  /** Of the deal that lacks most. */
  readonly missingTwins: number;
  /** False cards by mispairing that were asked for and could not be made. */
  readonly missingMispairs: number;
  /** Items above the first heading. */
  readonly loose: readonly Stray[];
  /** Items that stand twice under one heading, the one of the pile with this index. */
  readonly repeated: readonly (Stray & { readonly first: Range; readonly pile: number })[];
  /** Names of piles that were asked for and that no heading has. */
  readonly unknown: readonly string[];
  /** All pile names that the headings have. */
  readonly headings: readonly string[];
}

export interface DealtSort extends Dealt<SortDeal>, SortSupply {
  readonly options: SortOptions;
  /** Cards of the deal that gets the fewest. */
  readonly fewest: number;
  /** Its pairs, where what is right is parted from what is wrong. */
  readonly shown: readonly ShownPair[];
  readonly shownIn: readonly (readonly ShownPair[])[];
}

/** Names of the piles that a card belongs to. */
export function pileNames({ piles }: Pick<SortSupply, "piles">, card: SortCard): string[] {
  return card.piles.flatMap((pile) => piles[pile]?.name ?? []);
}
