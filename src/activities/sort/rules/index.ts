import type { Rule } from "../../../base/finding";
import { cardInNoPile } from "./card-in-no-pile";
import { cardInTwoPiles } from "./card-in-two-piles";
import type { SortContext } from "./context";
import { matBetween } from "./mat-between";
import { matCircles } from "./mat-circles";
import { repeatedCard } from "./repeated-card";
import { sortPiles } from "./sort-piles";
import { sortTooSmall } from "./sort-too-small";
import { tooFewCards } from "./too-few-cards";
import { tooFewMispairs } from "./too-few-mispairs";
import { tooFewSortTwins } from "./too-few-sort-twins";
import { unbalancedPiles } from "./unbalanced-piles";
import { unbalancedSort } from "./unbalanced-sort";

export const rules: readonly Rule<SortContext>[] = [
  sortPiles,
  tooFewCards,
  cardInNoPile,
  cardInTwoPiles,
  repeatedCard,
  unbalancedPiles,
  unbalancedSort,
  tooFewMispairs,
  tooFewSortTwins,
  matCircles,
  matBetween,
  sortTooSmall,
];
