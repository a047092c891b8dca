import type { ItemShape } from "../../../activities/contract";
import type { Report, Rule } from "../../../base/finding";
import type { Range } from "../../../base/range";
import type { Problem } from "../../../unit/unit";
import { type CheckContext, inUse } from "../../context";

/** A rule without steps. */
interface ProblemRule extends Rule<CheckContext> {
  check(context: CheckContext): readonly Report[];
}

/** A rule that hands on what reading the unit found under its code; traps only where an activity uses the section. */
export function problemRule(rule: Omit<Rule<CheckContext>, "check">): ProblemRule {
  return {
    ...rule,
    check: (context) =>
      context.unit.problems
        .filter(({ code, trap, range }) => code === rule.code && (!trap || isWorthIt(context, range.start, trap)))
        .map((problem) => reportOf({ ...problem, fixes: likeliestFirst(context, problem) })),
  };
}

function isWorthIt(context: CheckContext, offset: number, trap: NonNullable<Problem["trap"]>): boolean {
  if (trap === "pairs alone") return inUse(context, offset, "pairs") && !inUse(context, offset, "statements");
  if (trap === "unused") return isIdle(context, offset);
  return inUse(context, offset, trap === true ? "any" : trap);
}

/** Whether a place stands where nothing is printed yet, although something could be. */
function isIdle(context: CheckContext, offset: number): boolean {
  const { activities, sections } = context.unit;
  if (activities.length === 0) return true;
  const section = sections.find(({ range }) => inRange(range, offset));
  if (!section || inUse(context, offset)) return false;
  return [section.pairs, section.statements, section.events, section.tables].some(({ length }) => length > 0);
}

/** The fixes, with one first that is the likeliest where activities take nothing but one shape; else it is left out. */
function likeliestFirst(context: CheckContext, { fixes, range }: Problem): Problem["fixes"] {
  if (!fixes.some(({ among }) => among)) return fixes;
  const takes = (shape: ItemShape): boolean => inUse(context, range.start, shape);
  const isLikely = ({ among }: Problem["fixes"][number]): boolean =>
    among !== undefined && shapes.every((shape) => takes(shape) === (shape === among));
  const likely = fixes.filter(isLikely);
  const others = fixes.filter(({ among }) => !among);
  // Beside numbered events it may be one of them, or a note.
  const { events = [] } = context.unit.sections.find((each) => inRange(each.range, range.start)) ?? {};
  if (likely.length === 0 || events.length === 0) return [...likely, ...others];
  return [...likely, ...others].map((fix) => ({ ...fix, unsure: true }));
}

const inRange = ({ start, end }: Range, offset: number): boolean => start <= offset && offset < end;

const shapes: readonly ItemShape[] = ["pairs", "statements", "events", "tables"];

/** The same about the settings of a file: said only where it has an activity, for others have front matter too. */
export function settingsRule(rule: Omit<Rule<CheckContext>, "check">): Rule<CheckContext> {
  const { check, ...facts } = problemRule(rule);
  return { ...facts, check: (context) => (isUnit(context.unit) ? check(context) : []) };
}

/** Whether a file has an activity or a plan, so that its front matter is meant for us. */
export function isUnit({ activities, stations }: CheckContext["unit"]): boolean {
  return activities.length + stations.length > 0;
}

/** The first fix is done without asking, unless it takes something out or something else may be meant. */
export function reportOf({ range, message, fixes }: Problem): Report {
  return {
    range,
    message,
    fixes: fixes.map(({ title, edits, drops, unsure }, i) =>
      i === 0 && !drops && !unsure ? { title, edits, preferred: true } : { title, edits },
    ),
  };
}
