import { stops } from "../../base/stops";
import { spacedSeparators } from "../inline";
import { type Problems, write } from "../problems";
import type { SourceText } from "../source-text";

const stopped = new RegExp(`[${stops}]$`, "u");

/** `- [ ] o eixo = the axle` where nothing takes statements. A box may also say that a pair is not wanted for now. */
export function boxedPair(source: SourceText, mask: readonly boolean[], problems: Problems): void {
  const [box] = /^\[[ xX]\]\s+/u.exec(source.text) ?? [];
  if (box === undefined) return;
  const [sign, second] = spacedSeparators(source.text, mask, "=", box.length);
  // Behind a sentence stands its correction.
  if (!sign || second || stopped.test(source.text.slice(0, sign.start))) return;
  // A sum is no pair of words.
  if (!/\p{L}/u.test(source.text.slice(box.length, sign.start)) || !/\p{L}/u.test(source.text.slice(sign.end))) return;
  problems.tell(
    "pairs alone",
    "meant-as-pair",
    source.whole,
    "A box makes this a statement, which no activity takes from here: a pair has none.",
    { ...write("Take the box out", source.range(0, box.length), ""), unsure: true },
  );
}
