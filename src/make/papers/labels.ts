import type { Press } from "../../activities/contract";
import { type Block, setInBox, setSlips } from "../../page/document";
import { papers } from "../../page/paper";
import type { Sheet } from "../../page/sheet";
import { copyNumbers } from "../pieces-file";
import type { Printable } from "../printable";
import { dealName } from "./guide";
import { unitPage } from "./page";

/** Fits the front of a C6 envelope (114 × 162 mm, ISO 269) and of common bags, and stands fourteen times on a sheet. mm */
const labelSize = { w: 90, h: 36 };

interface Label {
  readonly activity: string;
  readonly code: string;
  readonly state: string;
  readonly entry: ReturnType<Printable["kind"]["labels"]>[number];
}

/** A label for every packet and bag of every copy, in the order of the activities. */
export function labelSheets(printables: readonly Printable[], press: Press, trial: boolean): Sheet[] {
  const [first] = printables;
  if (!first) return [];
  const { paper, margin } = first.dealt.request.options.value;
  const labels = printables.flatMap(({ kind, dealt, title }) =>
    dealt.deals.flatMap((deal) =>
      copyNumbers(trial && deal.copies !== "by copier" ? 1 : deal.copies).flatMap((copy) =>
        kind.labels(dealt, deal).map((entry): Label => {
          const set = copy === undefined ? "a copy of the master" : `set ${copy + 1}`;
          return {
            activity: title,
            code: deal.code,
            state: [dealName(deal, dealt.deals), set].filter(Boolean).join(", "),
            entry,
          };
        }),
      ),
    ),
  );
  const page = { ...unitPage(papers[paper], margin, "labels", first.lang, press), stock: "labels" as const };
  return setSlips(
    {
      ...labelSize,
      padding: 4,
      draw: (box, index) => {
        const label = labels[index];
        return label
          ? setInBox(labelBlocks(label, press.unitTitle), box, press.typeface, { size: 10, least: 6 }).items
          : [];
      },
    },
    labels.length,
    page,
  );
}

function labelBlocks({ activity, code, state, entry }: Label, unit: string): Block[] {
  const packet = entry.packet === undefined ? "" : `Packet ${entry.packet} · `;
  return [
    { type: "paragraph", text: unit, size: 7.5 },
    { type: "paragraph", text: [{ text: activity, bold: true }], size: 11 },
    { type: "paragraph", text: [{ text: `${packet}${state}`, bold: true }, { text: ` · ${code}` }] },
    { type: "paragraph", text: entry.contents, size: 8.5 },
    ...(entry.translation ? [{ type: "paragraph", text: entry.translation } as const] : []),
  ];
}
