import type { Fix, Report, Rule } from "../base/finding";
import { supplyClaims } from "./claim-supply";
import type { Deal, Dealt, Press } from "./contract";
import { setOption } from "./edits";
import type { Level } from "./options";
import { counted, optionPlace } from "./report";
import { type Claim, fineShare, type Twins, trueShare, usableShare } from "./statements";

/* Findings about statements that kinds which deal them have in common; each kind has them under its own code. */

/** What was dealt, with its statements: none where it deals something else. */
export interface DealtClaims extends Dealt<Deal> {
  readonly options: {
    readonly twins: Twins;
    readonly take?: number;
    readonly seed: number;
    readonly reserve?: number;
    readonly levels?: readonly Level[];
  };
  /** Those of all deals. */
  readonly claims: readonly Claim[];
  /** Those of each deal. */
  readonly hands: readonly (readonly Claim[])[];
  /** Further ones, kept for a tie. */
  readonly reserve?: readonly Claim[];
  /** Twins that were asked for and could not be made. */
  readonly missingTwins: number;
}

interface ClaimContext {
  readonly dealt: DealtClaims;
  readonly press: Press;
}

export function hasClaims(dealt: Dealt<Deal>): dealt is DealtClaims {
  return "claims" in dealt && "hands" in dealt && "missingTwins" in dealt;
}

type Facts = Pick<Rule<never>, "code" | "example">;

/** Too many true or too many false ones among what is dealt, twins included. */
export function balanceRule(facts: Facts): Rule<ClaimContext> {
  return {
    ...facts,
    severity: "warning",
    title: "Far more true statements than false ones, or the other way round, among those that are dealt",
    why: "Learners who guess lean towards “true” (Cronbach 1942, J. Educ. Psych. 33). With 40 to 60 % true ones all is well, as item-writing guides advise (Penn State); outside of 30 to 70 % guessing pays (the limits are our own). False twins count: a true statement with a form that is tied to a forms table, `[meço](#medir)`, gives one.",
    check: ({ dealt }) => {
      const { request, options, deals } = dealt;
      // Each deal must be fair by itself.
      const claims = mostUneven(dealt.hands);
      const share = trueShare(claims);
      if (deals.length === 0 || claims.length === 0 || (share >= fineShare.least && share <= fineShare.most)) return [];
      const right = claims.filter(({ truth }) => truth).length;
      const wide = share < usableShare.least || share > usableShare.most;
      const many = share > fineShare.most;
      const twins = claims.filter(({ twin }) => twin).length;
      const counts = `${right} of ${counted(claims.length, "statement")} ${right === 1 ? "is" : "are"} true (${Math.round(share * 100)} %${twins > 0 ? `, ${counted(twins, "twin")} included` : ""}).`;
      const { block, unit } = request;
      const fixes: Fix[] = [];
      const plans = deals.map(({ version }) => ({ level: "gentle" as const, version }));
      const better = mostUneven(
        supplyClaims(request, { ...options, levels: undefined, twins: "auto" }, plans).hands.map((each) => each.claims),
      );
      if (options.twins !== "auto" && off(trueShare(better)) < off(share) && isFine(trueShare(better)))
        fixes.push({
          title: "Add false twins until it is fair",
          edits: [setOption(block, unit.text, "twins", "auto")],
          preferred: true,
        });
      return [
        {
          range: optionPlace(block, "twins", "take"),
          severity: wide ? "warning" : "hint",
          message: `${counts} ${many ? "Make some of them false, or tie a form" : "Make some of them true"}: between 40 and 60 % true is best.`,
          related: claims
            .filter(({ truth, twin }) => truth !== many && !twin)
            .slice(0, 5)
            .map(({ source, truth }) => ({ range: source, message: `${truth ? "True" : "False"}, one of few` })),
          fixes,
        },
      ];
    },
  };
}

/** The claims of the deal that is farthest from as many true as false ones. */
function mostUneven(hands: readonly (readonly Claim[])[]): readonly Claim[] {
  return hands.reduce((worst, each) => (off(trueShare(each)) > off(trueShare(worst)) ? each : worst), hands[0] ?? []);
}

function isFine(share: number): boolean {
  return share >= fineShare.least && share <= fineShare.most;
}

function off(share: number): number {
  return Math.abs(share - 0.5);
}

/** Fewer twins than asked for. */
export function twinsRule(facts: Facts): Rule<ClaimContext> {
  return {
    ...facts,
    severity: "warning",
    title: "Fewer false twins than asked for",
    why: 'A twin is a true statement with another form of a verb, so it needs a tied form: `[meço](#medir)`, or `[meço](#medir "eu")` where the form stands twice in its column. The column must have a form that is spelled differently, and what comes out must not be true as well.',
    check: ({ dealt }): Report[] => {
      const { options, missingTwins, claims, request } = dealt;
      if (missingTwins <= 0 || typeof options.twins !== "number") return [];
      const made = claims.filter(({ twin }) => twin).length;
      const { block, unit } = request;
      return [
        {
          range: optionPlace(block, "twins"),
          message: `Only ${made} of ${options.twins} twins can be made: no more of the true statements have a tied form with a wrong one beside it.`,
          fixes: [
            { title: `Ask for ${made}`, edits: [setOption(block, unit.text, "twins", String(made))], preferred: true },
          ],
        },
      ];
    },
  };
}
