import type { Press } from "../activities/contract";
import { type Finding, type Fix, joined, type Rule, runningRule, type TextEdit } from "../base/finding";
import type { Range } from "../base/range";
import { finished, type Steps, told } from "../base/steps";
import type { Silence } from "../unit/unit";
import { withCauses } from "./causes";
import { codes } from "./codes";
import type { CheckContext, CheckedActivity } from "./context";
import { foresightOf } from "./foresight";
import { type IdleSilence, idleSilences } from "./idle";
import { mostTaken, sparingOthers } from "./others";
import { generalRules } from "./rules";
import { ruleFailed } from "./rules/rule-failed";
import { unusedSilence } from "./rules/unused-silence";
import { silence, silencesOf, withSeverities } from "./silence";

/** All findings of a unit, in the order of their places. A rule that fails becomes a finding and stops no other. */
export function checkUnit(context: CheckContext): Finding[] {
  return finished(checking(context));
}

/** The same with a pause after each rule, and within those that take steps; says the rule's code. */
export function* checking(context: CheckContext): Steps<Finding[]> {
  const findings: Finding[] = [];
  for (const activity of context.activities) yield* layingOut(activity, context.press);
  for (const rule of generalRules) {
    findings.push(...(yield* inSteps(rule, context)));
    yield rule.code;
  }
  const tries = { left: mostTaken };
  for (const activity of context.activities) {
    const { plan, dealt } = activity;
    const about = { dealt, press: context.press, foresee: foresightOf(activity, context) };
    for (const rule of plan.kind?.rules ?? []) {
      for (const finding of yield* inSteps(rule, about, plan.index))
        findings.push(yield* told(sparingOthers(finding, activity, context, tries), rule.code));
      yield rule.code;
    }
  }
  const mendable = findings.map((finding) => withoutForeignFixes(finding, context.plan?.adopted ?? []));
  const silences = context.plan ? silencesOf(context) : [];
  const { said, used } = silence(mendable, silences);
  const rules = [...generalRules, ...context.activities.flatMap(({ plan }) => plan.kind?.rules ?? [])];
  const unused = silences.filter((each) => !used.has(each));
  const idle =
    unused.length > 0 ? guarded(unusedSilence, { ...context, idle: idleOf(context, unused, said, rules) }) : [];
  const lasting = new Set(rules.flatMap((rule) => (rule.lasting ? [rule.code] : [])));
  const left = withSeverities(distinct([...said, ...idle]), context.severities, lasting);
  return (context.plan ? withCauses(left, rules, context) : left).sort(
    (a, b) => a.range.start - b.range.start || a.range.end - b.range.end || (a.code < b.code ? -1 : 1),
  );
}

function idleOf(
  context: CheckContext,
  unused: readonly Silence[],
  said: readonly Finding[],
  rules: readonly Pick<Rule<never>, "code" | "hides">[],
): readonly IdleSilence[] {
  const hiding = new Set(rules.filter(({ hides }) => hides).map(({ code }) => code));
  return idleSilences(context, unused, said, { known: codes(), hiding });
}

/** Has an activity laid out before its rules ask for that at once; if it fails, so does the rule that asks, and that is told. */
function* layingOut({ plan, dealt }: CheckedActivity, press: Press): Steps<void> {
  try {
    if (plan.kind?.laying && dealt.deals.length > 0) yield* told(plan.kind.laying(dealt, press), "laying out");
  } catch {}
}

/** Two activities about one section find the same about its items: it is said once, of both, with what helps both. */
function distinct(findings: readonly Finding[]): Finding[] {
  const known = new Map<string, Finding>();
  for (const finding of findings) {
    const key = [finding.code, finding.range.start, finding.range.end, finding.message].join("\u0000");
    const first = known.get(key);
    const { activities: own, ...rest } = first ?? finding;
    const activities = first ? joined(own, finding.activities) : own;
    const fixes = first ? fixesOfBoth(first.fixes, finding.fixes) : finding.fixes;
    known.set(key, { ...rest, fixes, ...(activities ? { activities } : {}) });
  }
  return [...known.values()];
}

/** Fixes that two findings have in common, each with the edits of both: options of two activities are set in both. */
function fixesOfBoth(some: readonly Fix[], others: readonly Fix[]): Fix[] {
  return some.flatMap((fix) => {
    const other = others.find(({ title }) => title === fix.title);
    if (!other) return [];
    const isIn = ({ range, text }: TextEdit): boolean =>
      fix.edits.some((own) => own.range.start === range.start && own.range.end === range.end && own.text === text);
    return [{ ...fix, edits: [...fix.edits, ...other.edits.filter((edit) => !isIn(edit))] }];
  });
}

/** What stands in another unit is mended there: a fix here would write over its name. */
function withoutForeignFixes(finding: Finding, adopted: readonly Range[]): Finding {
  if (adopted.length === 0 || finding.code === "unknown-section" || finding.code === "wrong-option") return finding;
  const foreign = ({ start, end }: Range): boolean => adopted.some((place) => place.start <= start && end <= place.end);
  return { ...finding, fixes: finding.fixes.filter(({ edits }) => !edits.some(({ range }) => foreign(range))) };
}

function guarded<Context>(rule: Rule<Context>, context: Context): Finding[] {
  return finished(inSteps(rule, context));
}

function* inSteps<Context>(rule: Rule<Context>, context: Context, activity?: number): Steps<Finding[]> {
  try {
    return yield* told(runningRule(rule, context, activity), rule.code);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return finished(runningRule(ruleFailed, { failures: [{ code: rule.code, reason }] }));
  }
}
