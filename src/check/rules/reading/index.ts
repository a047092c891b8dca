import type { Rule } from "../../../base/finding";
import type { CheckContext } from "../../context";
import { allowWithoutReason } from "./allow-without-reason";
import { blockInItem } from "./block-in-item";
import { dashInCell } from "./dash-in-cell";
import { emptyAnswer } from "./empty-answer";
import { emptyStatement } from "./empty-statement";
import { footnote } from "./footnote";
import { gapInCell } from "./gap-in-cell";
import { hiddenSign } from "./hidden-sign";
import { htmlInText } from "./html-in-text";
import { indentedList } from "./indented-list";
import { insideItem } from "./inside-item";
import { listInList } from "./list-in-list";
import { looseEmphasis } from "./loose-emphasis";
import { lopsidedSlash } from "./lopsided-slash";
import { lostCorrection } from "./lost-correction";
import { lostOrder } from "./lost-order";
import { meantAsPair } from "./meant-as-pair";
import { meantAsStatement } from "./meant-as-statement";
import { misplacedComment } from "./misplaced-comment";
import { nearlyARemark } from "./nearly-a-remark";
import { nearlyATie } from "./nearly-a-tie";
import { nestedItem } from "./nested-item";
import { nestedNumber } from "./nested-number";
import { notAHeading } from "./not-a-heading";
import { notATable } from "./not-a-table";
import { notAnActivity } from "./not-an-activity";
import { notAnItem } from "./not-an-item";
import { notNested } from "./not-nested";
import { numberedPair } from "./numbered-pair";
import { numberedStatement } from "./numbered-statement";
import { openComment } from "./open-comment";
import { openFence } from "./open-fence";
import { optionTwice } from "./option-twice";
import { otherParts } from "./other-parts";
import { picturePath } from "./picture-path";
import { printedBar } from "./printed-bar";
import { printedCounter } from "./printed-counter";
import { quotedItems } from "./quoted-items";
import { secondCorrection } from "./second-correction";
import { secondEquals } from "./second-equals";
import { secondPicture } from "./second-picture";
import { splitEmphasis } from "./split-emphasis";
import { splitList } from "./split-list";
import { starInWord } from "./star-in-word";
import { struckText } from "./struck-text";
import { swallowedList } from "./swallowed-list";
import { tooDeep } from "./too-deep";
import { tooManyCells } from "./too-many-cells";
import { twiceInTable } from "./twice-in-table";
import { underlinedItem } from "./underlined-item";
import { underscoreGap } from "./underscore-gap";
import { unreadText } from "./unread-text";
import { unreadableYaml } from "./unreadable-yaml";

/** What reading finds wrong wherever it stands. */
const faults: readonly Rule<CheckContext>[] = [
  secondEquals,
  emptyAnswer,
  emptyStatement,
  otherParts,
  tooManyCells,
  allowWithoutReason,
  unreadableYaml,
  optionTwice,
  openFence,
  insideItem,
];

/** What Markdown makes of lines that were meant otherwise; looked for in sections in use. */
const traps: readonly Rule<CheckContext>[] = [
  hiddenSign,
  gapInCell,
  dashInCell,
  listInList,
  underlinedItem,
  swallowedList,
  splitList,
  indentedList,
  picturePath,
  underscoreGap,
  splitEmphasis,
  openComment,
  meantAsPair,
  meantAsStatement,
  numberedPair,
  numberedStatement,
  nestedItem,
  nestedNumber,
  secondCorrection,
  lostCorrection,
  lostOrder,
  notNested,
  notAnItem,
  notAHeading,
  notATable,
  notAnActivity,
  misplacedComment,
  blockInItem,
  tooDeep,
  printedCounter,
  quotedItems,
  htmlInText,
  struckText,
  starInWord,
  footnote,
  twiceInTable,
  nearlyARemark,
  lopsidedSlash,
  nearlyATie,
  unreadText,
  looseEmphasis,
  printedBar,
  secondPicture,
];

/** The rules that hand on what reading the unit found. */
export const readingRules: readonly Rule<CheckContext>[] = [...faults, ...traps];
