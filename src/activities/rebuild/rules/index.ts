import type { Rule } from "../../../base/finding";
import type { RebuildContext } from "./context";
import { idleOrder } from "./idle-order";
import { mixedPacket } from "./mixed-packet";
import { needsBars } from "./needs-bars";
import { noSentences } from "./no-sentences";
import { onePartSentence } from "./one-part-sentence";
import { rebuildAnyOrder } from "./rebuild-any-order";
import { rebuildTooSmall } from "./rebuild-too-small";
import { sameCards } from "./same-cards";
import { slashedSentence } from "./slashed-sentence";

export const rules: readonly Rule<RebuildContext>[] = [
  noSentences,
  onePartSentence,
  slashedSentence,
  needsBars,
  rebuildAnyOrder,
  idleOrder,
  sameCards,
  mixedPacket,
  rebuildTooSmall,
];
