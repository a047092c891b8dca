import type { Range } from "../base/range";
import type { Run } from "../base/run";
import { fold } from "../match/fold";
import { answerKey } from "../match/relation";
import type { Picture, Statement } from "../unit/unit";
import { told } from "./printed";

/*
 * Statements as `sort` and `calls` deal them: those that are written, and false twins of true ones that differ in a form
 * of a verb.
 */

/** Something that is true or false. */
export interface Claim {
  /** Empty for a bare picture. */
  readonly runs: readonly Run[];
  readonly picture?: Picture;
  /** As printed; the alternative text of a bare picture. */
  readonly text: string;
  /** Equal for claims that are the same to a learner. */
  readonly key: string;
  readonly truth: boolean;
  /** What is right instead of a false claim, where it is known. */
  readonly correction?: Correction;
  /** Code of the learner who wrote it. */
  readonly by?: string;
  readonly source: Range;
  /** What it was read from; a twin has that of its true statement. */
  readonly item: Statement;
  /** Set for a false twin: the wrong form, and whose form the right one is. */
  readonly twin?: { readonly wrong: string; readonly right: string; readonly column: string; readonly person: string };
}

export interface Correction {
  readonly runs: readonly Run[];
  readonly text: string;
  readonly source: Range;
}

/** `auto`: as many as it takes that at most 60 % are true. */
export type Twins = "auto" | "none" | number;

/** Shares of true ones that are fine, and that learners can make use of. About as many true as false is best; own limits. */
export const fineShare = { least: 0.4, most: 0.6 } as const;
export const usableShare = { least: 0.3, most: 0.7 } as const;

/** Share of true ones, 0 to 1; 0.5 for none. */
export function trueShare(claims: readonly Pick<Claim, "truth">[]): number {
  return claims.length === 0 ? 0.5 : claims.filter(({ truth }) => truth).length / claims.length;
}

export function claimOf(statement: Statement): Claim {
  const { runs, text, truth, correction, by, range, picture } = statement;
  return {
    runs,
    text,
    key: answerKey(statement),
    truth,
    ...(picture ? { picture } : {}),
    // A correction stands in lists only, which tell a picture in words.
    ...(correction && !truth
      ? { correction: { runs: told(correction), text: correction.text, source: correction.range } }
      : {}),
    ...(by ? { by: by.code } : {}),
    source: range,
    item: statement,
  };
}

/** What a statement says is so, folded: itself where it is true, else its correction. */
export function assertions(statement: Statement): string[] {
  if (statement.truth) return [fold(statement.text)];
  return statement.correction ? [fold(statement.correction.text)] : [];
}

/** “True” and “false” as learners say them, by primary language tag; English where there are none. */
const truthWords: Readonly<Record<string, readonly [string, string]>> = {
  en: ["True", "False"],
  es: ["Verdadero", "Falso"],
  fr: ["Vrai", "Faux"],
  de: ["Richtig", "Falsch"],
  pt: ["Verdadeiro", "Falso"],
  it: ["Vero", "Falso"],
};

/** The words in the first of some languages that has them, else in English. */
export function truthWordsIn(...langs: readonly string[]): {
  readonly yes: string;
  readonly no: string;
  readonly lang: string;
} {
  const lang = langs.map((each) => each.toLowerCase().split("-")[0] ?? "").find((each) => truthWords[each]) ?? "en";
  const [yes, no] = truthWords[lang] ?? ["True", "False"];
  return { yes, no, lang };
}

/** A claim as lists tell it, with the code of the learner who wrote it: `… (K7)`. */
export function labelled(claim: Pick<Claim, "runs" | "picture" | "by">): readonly Run[] {
  return claim.by === undefined ? told(claim) : [...told(claim), { text: ` (${claim.by})` }];
}
