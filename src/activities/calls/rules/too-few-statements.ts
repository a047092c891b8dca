import type { Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import { takingEnough } from "../../enough";
import { statementGroups } from "../../form-statements";
import { otherSections } from "../../other-sections";
import { optionPlace, quotedList } from "../../report";
import { fewestStatements } from "../deal";
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
  check: (context) => {
    const { dealt } = context;
    const { request, hands, deals, options } = dealt;
    if (deals.length > 0) return [];
    const { block, unit, sections } = request;
    const found = statementGroups(sections).flat().length;
    const taken = options.take !== undefined && options.take < fewestStatements && found >= fewestStatements;
    const others = otherSections(request, (each) => each.statements.length >= fewestStatements);
    const from = options.take === undefined ? others.slice(0, 3) : [];
    const fixes = from.map(({ name }) => ({
      title: `Take the statements of “${name}”`,
      edits: [setOption(block, unit.text, "from", JSON.stringify(name))],
    }));
    const enough = () => takingEnough(context, { fewest: fewestStatements, most: found, preferred: true });
    const names = quotedList(sections.map(({ name }) => name));
    const message = taken
      ? `Calls need at least ${fewestStatements} statements; \`take\` leaves ${Math.min(...hands.map(({ length }) => length))} of ${found}.`
      : `Calls need at least ${fewestStatements} statements (\`[x]\` or \`[ ]\`); ${names} has ${found === 0 ? "none" : found}.`;
    return [{ range: optionPlace(block, ...(taken ? ["take"] : ["from"])), message, fixes: taken ? enough : fixes }];
  },
};
