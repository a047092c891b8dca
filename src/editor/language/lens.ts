import type { Deal, DealtActivity } from "../../activities/contract";
import { difficultiesText } from "../../activities/difficulty";
import type { Sheet } from "../../page/sheet";
import { count } from "./outline";

/** What stands over an activity: `4 × 4 tiles · 16 pieces · 2 sheets a set · 15 sets · one solution, proven · no wrong neighbours`. */
export function lensText({ summary, deals }: DealtActivity, sheetsOf: (deal: Deal) => readonly Sheet[]): string {
  if (deals.length === 0) return "Not dealt: see what is found below";
  const sizes = deals.map((deal) => sizeOf(sheetsOf(deal)));
  return [
    summary,
    span(
      sizes.map(({ pieces }) => pieces),
      "piece",
    ),
    `${span(
      sizes.map(({ sheets }) => sheets),
      "sheet",
    )} a set`,
    ...(deals.length > 1 ? [`${deals.length} deals`] : []),
    setsOf(deals),
    proofOf(deals),
    difficultiesText(deals),
  ]
    .filter(Boolean)
    .join(" · ");
}

function sizeOf(sheets: readonly Sheet[]): { readonly sheets: number; readonly pieces: number } {
  const pieces = new Set(
    sheets.flatMap(({ items }) => items.flatMap((item) => (item.type === "area" ? item.piece : []))),
  );
  return { sheets: sheets.length, pieces: pieces.size };
}

/** `16 pieces`, or `12–16 pieces` where deals differ. */
function span(numbers: readonly number[], one: string): string {
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return least === most ? count(least, one) : `${least}–${most} ${one}s`;
}

function setsOf(deals: readonly Deal[]): string {
  const copies = deals.map((deal) => deal.copies);
  if (copies.some((each) => each === "by copier")) return "copied by the copier";
  return count(
    copies.reduce((sum: number, each) => sum + Number(each), 0),
    "set",
  );
}

function proofOf(deals: readonly Deal[]): string {
  const has = (status: Deal["proof"]["status"]): boolean => deals.some(({ proof }) => proof.status === status);
  if (has("none")) return "no solution";
  if (deals.some(({ proof }) => proof.status === "several" && !proof.accepted)) return "more than one solution";
  if (has("unsettled")) return "proof not settled";
  if (deals.some(({ proof }) => proof.accepted)) return "several right ways, proven";
  return deals.length === 1 ? "one solution, proven" : "one solution each, proven";
}
