import { kinds } from "../activities/kinds";
import type { Rule } from "../base/finding";
import type { CheckContext } from "./context";
import { duplicateAnswer } from "./rules/answers";
import { movedDeal, sameCode } from "./rules/history";
import { overruledOption, sameLevels } from "./rules/levels";
import { noKind, noSection, unknownSection, wrongOption } from "./rules/options";
import { missingGlyph, missingPicture, narrowMargin } from "./rules/print";
import { readingRules } from "./rules/reading";
import { sameSection, unknownForm } from "./rules/sections";
import { unknownCode, unusedSilence } from "./rules/silences";
import {
  contradictingStatements,
  giveawayWord,
  repeatedStatement,
  sameCorrection,
  unbalancedStatements,
} from "./rules/statements";
import { longStations, unevenStations, wrongStations } from "./rules/stations";

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
  unknownForm,
  unknownCode,
  wrongStations,
  longStations,
  unevenStations,
  duplicateAnswer,
  unbalancedStatements,
  contradictingStatements,
  sameCorrection,
  repeatedStatement,
  giveawayWord,
  missingGlyph,
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
  ...kinds.flatMap((kind) => kind.rules),
].sort((a, b) => (a.code < b.code ? -1 : 1));
