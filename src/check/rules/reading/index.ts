import type { Rule } from "../../../base/finding";
import type { CheckContext } from "../../context";
import { allowWithoutReason } from "./allow-without-reason";
import { emptyAnswer } from "./empty-answer";
import { emptyStatement } from "./empty-statement";
import { indentedList } from "./indented-list";
import { listInList } from "./list-in-list";
import { meantAsPair } from "./meant-as-pair";
import { meantAsStatement } from "./meant-as-statement";
import { misplacedComment } from "./misplaced-comment";
import { nestedItem } from "./nested-item";
import { notAHeading } from "./not-a-heading";
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
import { secondEquals } from "./second-equals";
import { splitEmphasis } from "./split-emphasis";
import { splitList } from "./split-list";
import { swallowedList } from "./swallowed-list";
import { tooManyCells } from "./too-many-cells";
import { underlinedItem } from "./underlined-item";
import { underscoreGap } from "./underscore-gap";
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
];

/** What Markdown makes of lines that were meant otherwise; looked for in sections in use. */
const traps: readonly Rule<CheckContext>[] = [
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
  notNested,
  notAnItem,
  notAHeading,
  notAnActivity,
  misplacedComment,
];

/** The rules that hand on what reading the unit found. */
export const readingRules: readonly Rule<CheckContext>[] = [...faults, ...traps];
