import { kinds } from "../activities/kinds";
import type { Rule } from "../base/finding";
import type { CheckContext } from "./context";
import { contradictingStatements } from "./rules/contradicting-statements";
import { duplicateAnswer } from "./rules/duplicate-answer";
import { fewSets } from "./rules/few-sets";
import { giveawayWord } from "./rules/giveaway-word";
import { longStations } from "./rules/long-stations";
import { lookAlike } from "./rules/look-alike";
import { missingGlyph } from "./rules/missing-glyph";
import { missingPicture } from "./rules/missing-picture";
import { mixedLetters } from "./rules/mixed-letters";
import { movedDeal } from "./rules/moved-deal";
import { narrowMargin } from "./rules/narrow-margin";
import { noKind } from "./rules/no-kind";
import { noSection } from "./rules/no-section";
import { overruledOption } from "./rules/overruled-option";
import { readingRules } from "./rules/reading";
import { repeatedStatement } from "./rules/repeated-statement";
import { ruleFailed } from "./rules/rule-failed";
import { sameCode } from "./rules/same-code";
import { sameCorrection } from "./rules/same-correction";
import { sameLevels } from "./rules/same-levels";
import { sameSection } from "./rules/same-section";
import { smallGroups } from "./rules/small-groups";
import { unbalancedStatements } from "./rules/unbalanced-statements";
import { underlinedNote } from "./rules/underlined-note";
import { unevenStations } from "./rules/uneven-stations";
import { unknownCode } from "./rules/unknown-code";
import { unknownForm } from "./rules/unknown-form";
import { unknownSection } from "./rules/unknown-section";
import { unusedSilence } from "./rules/unused-silence";
import { wrongOption } from "./rules/wrong-option";
import { wrongStations } from "./rules/wrong-stations";

// Some of these ask this very list for codes: whoever wants them takes them from here, so that it is there first.
export { readingRules };

/** The rules that are about units as such; each kind brings its own. Their order means nothing. */
export const generalRules: readonly Rule<CheckContext>[] = [
  ...readingRules,
  noKind,
  wrongOption,
  unknownSection,
  noSection,
  sameLevels,
  overruledOption,
  sameSection,
  underlinedNote,
  unknownForm,
  unknownCode,
  wrongStations,
  longStations,
  unevenStations,
  fewSets,
  smallGroups,
  duplicateAnswer,
  lookAlike,
  unbalancedStatements,
  contradictingStatements,
  sameCorrection,
  repeatedStatement,
  giveawayWord,
  missingGlyph,
  mixedLetters,
  missingPicture,
  narrowMargin,
  sameCode,
  movedDeal,
];

/** What every rule says of itself; the reference pages are made from it. */
export type RuleFacts = Pick<Rule<never>, "code" | "severity" | "title" | "why" | "example">;

export const allRules: readonly RuleFacts[] = [
  ...generalRules,
  unusedSilence,
  ruleFailed,
  ...kinds.flatMap((kind) => kind.rules),
].sort((a, b) => (a.code < b.code ? -1 : 1));
