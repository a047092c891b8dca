import type { Fix, Rule } from "../base/finding";
import { supplyClaims } from "./claim-supply";
import type { ClaimContext, Facts } from "./dealt-claims";
import { setOption } from "./edits";
import { counted, optionPlace } from "./report";
import { type Claim, fineShare, trueShare, usableShare } from "./statements";

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
      const wide = !isUsable(claims);
      const many = share > fineShare.most;
      const twins = claims.filter(({ twin }) => twin).length;
      const counts = `${right} of ${counted(claims.length, "statement")} ${right === 1 ? "is" : "are"} true (${Math.round(share * 100)} %${twins > 0 ? `, ${counted(twins, "twin")} included` : ""}).`;
      const { block, unit } = request;
      const fixes: Fix[] = [];
      const plans = deals.map(({ version }) => ({ level: "gentle" as const, version }));
      const better = mostUneven(
        supplyClaims(
          request,
          { ...options, levels: undefined, twins: "auto", replace: dealt.replace === true },
          plans,
        ).hands.map((each) => each.claims),
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

/** Whether guessing does not pay. */
export function isUsable(claims: readonly Claim[]): boolean {
  const share = trueShare(claims);
  return share >= usableShare.least && share <= usableShare.most;
}

function isFine(share: number): boolean {
  return share >= fineShare.least && share <= fineShare.most;
}

function off(share: number): number {
  return Math.abs(share - 0.5);
}
