import type { Deal, Dealt, Press } from "../../activities/contract";
import { setsWanted } from "../../activities/copies";
import { slipWords } from "../../activities/paper-words";
import { cardPicture, told } from "../../activities/printed";
import { upTo } from "../../base/seed";
import { type Block, heightOfBlocks, setInBox, setSlips } from "../../page/document";
import { type Box, papers } from "../../page/paper";
import type { Sheet, SheetItem } from "../../page/sheet";
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
  /** Of the directions, which speak of packets. */
  readonly lang: string;
  readonly entry: ReturnType<Printable["kind"]["labels"]>[number];
}

/**
 * A label for every packet and bag of every copy, in the order of the activities; of a master, for as many copies of it as the
 * largest class needs.
 */
export function labelSheets(printables: readonly Printable[], press: Press): Sheet[] {
  const [first] = printables;
  if (!first) return [];
  const { paper, margin } = first.dealt.request.options.value;
  const labels = printables.flatMap(({ kind, dealt, title, lang }) =>
    dealt.deals.flatMap((deal) =>
      copiesOn(dealt, deal).flatMap((copy) =>
        kind.labels(dealt, deal).map((entry): Label => {
          const set = copy === undefined ? "a copy of the master" : `set ${copy + 1}`;
          return {
            activity: title,
            code: deal.code,
            lang,
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
        return label ? drawLabel(label, box, press) : [];
      },
    },
    labels.length,
    page,
  );
}

function copiesOn(dealt: Dealt<Deal>, { copies }: Deal): readonly (number | undefined)[] {
  return copies === "by copier" ? upTo(setsWanted(dealt) ?? 1).map(() => undefined) : copyNumbers(copies);
}

/** Sizes of a label's texts as shares of the usual ones, down to what still fits a packet's longest translations. */
const scales = Array.from({ length: 13 }, (_, i) => 1 - 0.05 * i);
const textSize = 10;
/** Of a label's width, what a picture gets at most; mm between it and the words. */
const pictureShare = 0.4;
const pictureGap = 3;

/** The words at the left, all of them as much smaller as it takes; a packet's picture at the right. */
function drawLabel(label: Label, box: Box, press: Press): SheetItem[] {
  const { picture } = label.entry;
  const drawn = cardPicture(picture, press);
  const w = drawn ? Math.min(box.w * pictureShare, box.h * drawn.ratio) : 0;
  const words = drawn ? { ...box, w: box.w - w - pictureGap } : box;
  const fits = (scale: number): boolean =>
    heightOfBlocks(labelBlocks(label, press, scale), words.w, press.typeface, textSize * scale) <= words.h;
  const scale = scales.find(fits) ?? scales.at(-1) ?? 1;
  const { items } = setInBox(labelBlocks(label, press, scale), words, press.typeface, { size: textSize * scale });
  if (!drawn) return [...items];
  const { key, alt, ratio } = drawn;
  const h = w / ratio;
  const at = { x: box.x + box.w - w, y: box.y + (box.h - h) / 2, w, h };
  return [...items, { type: "picture", key, alt, ...at, turn: 0 }];
}

function labelBlocks({ activity, code, state, lang, entry }: Label, press: Press, scale: number): Block[] {
  const packet = entry.packet === undefined ? "" : `${slipWords(lang).packet} ${entry.packet} · `;
  // A picture that cannot be read leaves its description.
  const lost = entry.picture && !cardPicture(entry.picture, press) ? told({ runs: [], picture: entry.picture }) : [];
  const translation = [...lost, ...(entry.translation ?? [])];
  return [
    { type: "paragraph", text: press.unitTitle, size: 7.5 * scale },
    { type: "paragraph", text: [{ text: activity, bold: true }], size: 11 * scale },
    { type: "paragraph", text: [{ text: `${packet}${state}`, bold: true }, { text: ` · ${code}` }] },
    { type: "paragraph", text: entry.contents, size: 8.5 * scale },
    ...(translation.length > 0 ? [{ type: "paragraph", text: translation } as const] : []),
  ];
}
