import type { Rule } from "../../../base/finding";
import { fold } from "../../../match/fold";
import { heard } from "../../../match/heard";
import { isUsable } from "../../balance-rule";
import { setOption } from "../../edits";
import { statementGroups } from "../../form-statements";
import { otherSections } from "../../other-sections";
import { optionPlace, quotedList } from "../../report";
import { isMeant } from "../../trial";
import { dealCalls, fewestStatements } from "../deal";
import type { DealtCalls } from "../model";
import type { CallsContext } from "./context";
import { six } from "./example";

export const tooFewStatements: Rule<CallsContext> = {
  code: "too-few-statements",
  severity: "error",
  counts: true,
  title: "Too few statements to call",
  why: "A game needs at least six statements: items with `[x]` for true and `[ ]` for false, with the correction in a bullet below. Where a section has none, each cell of its forms table is one: “medir, nós: medimos”. Twelve to twenty fill ten minutes.",
  example: {
    wrong: "## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n\n```activity\nmake: calls\n```",
    right: `${six}\`\`\`activity\nmake: calls\n\`\`\``,
  },
  check: ({ dealt }) => {
    const { request, hands, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, unit, sections } = request;
    const found = statementGroups(sections).flat().length;
    const taken = options.take !== undefined && options.take < fewestStatements && found >= fewestStatements;
    const others = otherSections(request, (each) => each.statements.length >= fewestStatements);
    const fixes = taken
      ? [
          {
            title: `Take ${fewestStatements}`,
            edits: [setOption(block, unit.text, "take", String(fewestStatements))],
            preferred: isSound(dealt),
          },
        ]
      : options.take !== undefined
        ? []
        : others.slice(0, 3).map(({ name }) => ({
            title: `Take the statements of “${name}”`,
            edits: [setOption(block, unit.text, "from", JSON.stringify(name))],
          }));
    const names = quotedList(sections.map(({ name }) => name));
    const message = taken
      ? `Calls need at least ${fewestStatements} statements; \`take\` leaves ${Math.min(...hands.map(({ length }) => length))} of ${found}.`
      : `Calls need at least ${fewestStatements} statements (\`[x]\` or \`[ ]\`); ${names} has ${found === 0 ? "none" : found}.`;
    return [{ range: optionPlace(block, ...(taken ? ["take"] : ["from"])), message, fixes }];
  },
};

/**
 * Whether as many statements as are needed contradict none, sound like none, are corrected by what they do not say themselves, are
 * fair, differ by level, and leave as many as are kept for a tie.
 */
function isSound({ request, options }: DealtCalls): boolean {
  const value = { ...options, take: fewestStatements };
  const { deals, hands, reserve, sameLevels } = dealCalls({ ...request, options: { ...request.options, value } });
  if (sameLevels !== undefined) return false;
  const all = hands.map((hand) => [...hand, ...reserve]);
  const differ = all.every((claims) => new Set(claims.map(({ key }) => heard(key))).size === claims.length);
  const corrected = all.flat().every(({ correction, key }) => !correction || fold(correction.text) !== key);
  return deals.every(isMeant) && hands.every(isUsable) && reserve.length >= options.reserve && differ && corrected;
}
