import type { Range } from "../../base/range";
import type { RawItem } from "../items";
import { type Problems, write } from "../problems";
import type { Mark } from "./marks";

/*
 * Numbered items that were meant as something else, and numbers where only bullets are read.
 */

export function numberedPair({ text: source, block }: RawItem, problems: Problems): void {
  const start = source.source(0);
  problems.trap(
    "numbered-pair",
    source.whole,
    "A numbered item is an event of a story; its “ = ” is read as text. A pair stands behind a hyphen.",
    write("Make it a pair", { start: block.start, end: start }, "- "),
  );
}

export function numberedStatement({ text: source, block }: RawItem, problems: Problems): void {
  const start = source.source(0);
  problems.trap(
    "numbered-statement",
    source.range(0, 3),
    "A numbered item is an event of a story; its mark is read as text. A statement stands behind a hyphen.",
    write("Make it a statement", { start: block.start, end: start }, "- "),
  );
}

/** `1. [F] O mar é seco.`: a number instead of the hyphen, and another mark too. */
export function numberedMark({ text: source, block }: RawItem, { written, truth }: Mark, problems: Problems): void {
  const sign = truth ? "[x]" : "[ ]";
  const range = { start: block.start, end: source.source(written.length) };
  problems.trap(
    "numbered-statement",
    source.range(0, written.trimEnd().length),
    "A numbered item is an event of a story, and this mark is read as text. A statement stands behind a hyphen, with “[x]” when it is true and “[ ]” when it is false.",
    write(`Write “- ${sign}”`, range, `- ${sign} `),
  );
}

/** Numbered items under an item: only bullets are read there. Under an event those may stand in any order, and steps may not. */
export function nestedNumbers({ numbered = [] }: RawItem, ofEvent: boolean, problems: Problems): void {
  const [first] = numbered;
  if (!first) return;
  const sign = ({ text: source, block }: RawItem): Range => ({ start: block.start, end: source.source(0) });
  problems.trap(
    "nested-number",
    first.text.whole,
    "Numbered items under another item are not read; what belongs to that one stands behind hyphens.",
    {
      title: ofEvent && numbered.length > 1 ? "Make bullets of them, in any order" : "Make bullets of them",
      edits: numbered.map((item) => ({ range: sign(item), text: "- " })),
      ...(ofEvent && numbered.length > 1 ? { unsure: true as const } : {}),
    },
  );
}
