import type { Range } from "./range";
import { finished, type Steps } from "./steps";

/** `error` blocks nothing by itself, but the command line fails on it by default; `hint` is quiet. */
export type Severity = "error" | "warning" | "information" | "hint";

export interface TextEdit {
  readonly range: Range;
  readonly text: string;
}

export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** The one that the editor may apply without asking. */
  readonly preferred?: boolean;
}

export interface Related {
  readonly range: Range;
  readonly message: string;
}

/** One diagnostic: one cause, one finding. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly range: Range;
  readonly message: string;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
  /** Indices in the unit of the only activities that it is about; undefined where its places say that. */
  readonly activities?: readonly number[];
  /** Further places of the same fault: what stands there is as wrong. */
  readonly also?: readonly Range[];
}

/** What a rule reports; the list of rules adds the code and, where it is not given, the rule's severity. */
export interface Report {
  readonly range: Range;
  readonly message: string;
  readonly severity?: Severity;
  readonly related?: readonly Related[];
  readonly fixes?: readonly Fix[] | FixSearch;
  readonly activities?: readonly number[];
  readonly also?: readonly Range[];
}

/** Fixes that are tried before they are offered, in steps: whoever only counts what is found never asks for them. */
export type FixSearch = () => Steps<readonly Fix[], unknown>;

/** Activities that a finding is about which several of them give: those of both, or undefined where either is about no certain ones. */
export function joined(
  a: readonly number[] | undefined,
  b: readonly number[] | undefined,
): readonly number[] | undefined {
  return a && b && [...new Set([...a, ...b])];
}

/** One kind of finding. `why` and `example` make its reference page. */
export interface Rule<Context> {
  /** Words joined by hyphens; never changes once released. */
  readonly code: string;
  readonly severity: Severity;
  /** One sentence without a final stop. */
  readonly title: string;
  /** Markdown for teachers: what goes wrong on the table, and what to do. */
  readonly why: string;
  /** A unit, or a part of one, that gives the finding, and the same put right. */
  readonly example: { readonly wrong: string; readonly right: string };
  /** What it tells keeps items from being read. */
  readonly hides?: true;
  /** It tells that items are too few. */
  readonly counts?: true;
  /** It tells what would be missing on paper: turned off, it is information still. */
  readonly lasting?: true;
  /** In steps where it is long work. */
  check(context: Context): readonly Report[] | Steps<readonly Report[], unknown>;
}

export function runRule<Context>(rule: Rule<Context>, context: Context, activity?: number): Finding[] {
  return finished(runningRule(rule, context, activity));
}

/** What a rule reports, with a pause after each step of one that has some. */
export function* reporting<Context>(rule: Rule<Context>, context: Context): Steps<readonly Report[], unknown> {
  const reports = rule.check(context);
  return "next" in reports ? yield* reports : reports;
}

/** The same as findings, with a pause after each step of looking for fixes too. */
export function* runningRule<Context>(
  rule: Rule<Context>,
  context: Context,
  activity?: number,
): Steps<Finding[], unknown> {
  const findings: Finding[] = [];
  for (const report of yield* reporting(rule, context)) {
    const fixes = typeof report.fixes === "function" ? yield* report.fixes() : (report.fixes ?? []);
    const activities = report.activities ?? (activity === undefined ? undefined : [activity]);
    findings.push({
      code: rule.code,
      severity: report.severity ?? rule.severity,
      range: report.range,
      message: report.message,
      related: report.related ?? [],
      fixes,
      ...(activities ? { activities } : {}),
      ...(report.also ? { also: report.also } : {}),
    });
  }
  return findings;
}
