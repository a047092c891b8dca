import type { Random } from "../../base/seed";
import { drawBelow } from "../items/draw";
import type { Order } from "./orders";
import { countStrings, tally } from "./sentences";

/**
 * A row of cards in which nothing is solved: every row that does not read like an accepted one is as likely as the others.
 * `undefined` where there is none.
 *
 * @throws RangeError where an accepted order is not one of all parts.
 */
export function dealtOrder(random: Random, parts: readonly string[], accepted: readonly Order[]): Order | undefined {
  const texts = [...tally(parts).keys()];
  const ranks = new Set(accepted.map((order) => rankOf(parts, texts, order)));
  const free = countStrings(parts) - BigInt(ranks.size);
  if (free <= 0n) return undefined;
  let rank = drawBelow(random, free);
  for (const taken of [...ranks].sort((a, b) => (a < b ? -1 : 1))) if (taken <= rank) rank++;
  return rowAt(parts, texts, rank);
}

/** How many rows start with one text, when so many cards of each are left. */
function rowsFrom(left: Map<string, number>, cards: number, rows: bigint, text: string): bigint {
  return (rows * BigInt(left.get(text) ?? 0)) / BigInt(cards);
}

/** Which row it is among all that read differently, in the order of `texts`. */
function rankOf(parts: readonly string[], texts: readonly string[], order: Order): bigint {
  const all = new Set(order);
  if (order.length !== parts.length || all.size !== parts.length || order.some((part) => parts[part] === undefined))
    throw new RangeError("an accepted order must take each part once");
  const left = tally(parts);
  let rows = countStrings(parts);
  let rank = 0n;
  order.forEach((part, place) => {
    const cards = parts.length - place;
    const text = parts[part] ?? "";
    for (const smaller of texts.slice(0, texts.indexOf(text))) rank += rowsFrom(left, cards, rows, smaller);
    rows = rowsFrom(left, cards, rows, text);
    left.set(text, (left.get(text) ?? 0) - 1);
  });
  return rank;
}

function rowAt(parts: readonly string[], texts: readonly string[], rank: bigint): Order {
  const left = tally(parts);
  const unused = new Map(texts.map((text) => [text, parts.flatMap((part, i) => (part === text ? [i] : []))]));
  let rows = countStrings(parts);
  let rest = rank;
  return parts.map((_, place) => {
    for (const text of texts) {
      const here = rowsFrom(left, parts.length - place, rows, text);
      if (rest < here) {
        rows = here;
        left.set(text, (left.get(text) ?? 0) - 1);
        return unused.get(text)?.shift() ?? -1;
      }
      rest -= here;
    }
    return -1;
  });
}
