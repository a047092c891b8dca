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
    sizes.every(({ sets }) => sets === 1)
      ? `${span(
          sizes.map(({ sheets }) => sheets),
          "sheet",
        )} a set`
      : `${span(
          sizes.map(({ sets }) => sets),
          "set",
        )} a sheet`,
    ...(deals.length > 1
      ? [`${deals.length} ${deals.every(({ desk }) => desk !== undefined) ? "desks" : "deals"}`]
      : []),
    setsOf(deals),
    proofOf(deals),
    difficultiesText(deals),
  ]
    .filter(Boolean)
    .join(" · ");
}

/** Of sets that share a sheet each has all pieces. */
function sizeOf(sheets: readonly Sheet[]): {
  readonly sheets: number;
  readonly pieces: number;
  readonly sets: number;
} {
  const areas = sheets.flatMap(({ items }) => items.flatMap((item) => (item.type === "area" ? item.piece : [])));
  const counts = new Map<number, number>();
  for (const piece of areas) counts.set(piece, (counts.get(piece) ?? 0) + 1);
  const sets = counts.size > 0 ? Math.min(...counts.values()) : 1;
  return { sheets: sheets.length, pieces: counts.size, sets };
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

/** What is proven of the deals; of circles also whether a smaller one can close, which is a proof of its own. */
function proofOf(deals: readonly Deal[]): string {
  const early = deals.some(({ smaller }) => smaller !== undefined);
  const status = statusOf(deals);
  const joint = status.includes("proven") ? "but" : "and";
  return early ? `${status}, ${joint} a smaller circle can close` : status;
}

function statusOf(deals: readonly Deal[]): string {
  const has = (status: Deal["proof"]["status"]): boolean => deals.some(({ proof }) => proof.status === status);
  if (has("none")) return "no solution";
  if (deals.some(({ proof }) => proof.status === "several" && !proof.accepted)) return "more than one solution";
  if (has("unsettled")) return "proof not settled";
  if (deals.some(({ proof }) => proof.accepted)) return "several right ways, proven";
  return deals.length === 1 ? "one solution, proven" : "one solution each, proven";
}
