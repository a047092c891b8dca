import type { Rule } from "../../../base/finding";
import { balanceRule, twinsRule } from "../../claim-rules";
import type { Press } from "../../contract";
import { setOption } from "../../edits";
import { counted, optionPlace, quotedList } from "../../report";
import { fewestStatements } from "../deal";
import type { DealtCalls } from "../model";

interface CallsContext {
  readonly dealt: DealtCalls;
  readonly press: Press;
}

const six =
  "## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n  - Ela bebe chá.\n- [x] Ela sai às dez.\n- [ ] Ela volta cedo.\n  - Ela volta tarde.\n- [x] Ela dorme.\n- [ ] Ela ri.\n  - Ela chora.\n\n";
const allTrue =
  "## The morning\n\n- [x] Ela chega cedo.\n- [x] Ela bebe chá.\n- [x] Ela sai às dez.\n- [x] Ela volta tarde.\n- [x] Ela dorme.\n- [x] Ela ri.\n\n";

export const tooFewStatements: Rule<CallsContext> = {
  code: "too-few-statements",
  severity: "error",
  title: "Too few statements to call",
  why: "A game needs at least six statements: items with `[x]` for true and `[ ]` for false, with the correction in a bullet below. Twelve to twenty fill ten minutes.",
  example: {
    wrong: "## The morning\n\n- [x] Ela chega cedo.\n- [ ] Ela bebe café.\n\n```activity\nmake: calls\n```",
    right: `${six}\`\`\`activity\nmake: calls\n\`\`\``,
  },
  check: ({ dealt }) => {
    const { request, claims, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, unit, sections } = request;
    const found = sections.reduce((sum, { statements }) => sum + statements.length, 0);
    const taken = options.take !== undefined && options.take < fewestStatements && found >= fewestStatements;
    const others = unit.sections.filter(
      (each) => each.statements.length >= fewestStatements && !sections.includes(each),
    );
    const fixes = taken
      ? [
          {
            title: `Take ${fewestStatements}`,
            edits: [setOption(block, unit.text, "take", String(fewestStatements))],
            preferred: true,
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
      ? `Calls need at least ${fewestStatements} statements; \`take\` leaves ${claims.length} of ${found}.`
      : `Calls need at least ${fewestStatements} statements (\`[x]\` or \`[ ]\`); ${names} has ${found === 0 ? "none" : found}.`;
    return [{ range: optionPlace(block, ...(taken ? ["take"] : ["from"])), message, fixes }];
  },
};

export const shortReserve: Rule<CallsContext> = {
  code: "short-reserve",
  severity: "warning",
  title: "Fewer statements in reserve than asked for",
  why: "What is kept for a tie must not have been called before, so it comes from statements that the list does not use. Write more of them, or take fewer for the list.",
  example: {
    wrong: `${six}\`\`\`activity\nmake: calls\ntake: 6\nreserve: 2\n\`\`\``,
    right: `${six}- [x] Ela fuma.\n- [ ] Ela canta.\n  - Ela dança.\n\n\`\`\`activity\nmake: calls\ntake: 6\nreserve: 2\n\`\`\``,
  },
  check: ({ dealt }) => {
    const { reserve, options, request, deals } = dealt;
    if (deals.length === 0 || reserve.length >= options.reserve) return [];
    const { block, unit } = request;
    return [
      {
        range: optionPlace(block, "reserve"),
        message: `Only ${counted(reserve.length, "statement is", "statements are")} left for a tie, ${options.reserve} were asked for.`,
        fixes: [
          {
            title: reserve.length > 0 ? `Keep ${reserve.length}` : "Keep none",
            edits: [setOption(block, unit.text, "reserve", String(reserve.length))],
          },
        ],
      },
    ];
  },
};

const unbalancedCalls = balanceRule({
  code: "unbalanced-calls",
  example: {
    wrong: `${allTrue}\`\`\`activity\nmake: calls\n\`\`\``,
    right: `${six}\`\`\`activity\nmake: calls\n\`\`\``,
  },
});

const fewCallsTwins = twinsRule({
  code: "too-few-calls-twins",
  example: {
    wrong: `${six}\`\`\`activity\nmake: calls\ntwins: 2\n\`\`\``,
    right: `${six}\`\`\`activity\nmake: calls\ntwins: none\n\`\`\``,
  },
});

export const rules: readonly Rule<CallsContext>[] = [tooFewStatements, unbalancedCalls, fewCallsTwins, shortReserve];
