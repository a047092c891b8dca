import type { Fix, Rule } from "../../base/finding";
import { codes } from "../codes";
import type { CheckContext } from "../context";
import type { IdleSilence } from "../idle";
import { nearest } from "../nearest";

export const unusedSilence: Rule<CheckContext & { readonly idle: readonly IdleSilence[] }> = {
  code: "unused-silence",
  severity: "information",
  title: "A silence that silences nothing",
  why: "`<!-- allow CODE: reason -->` stood for a finding that is no longer there, or its code is not one that Cutwork knows. Left in the text, it would hide the next finding of its kind.",
  example: {
    wrong: "## Food\n\n- pão = bread <!-- allow duplicate-answer: they differ in class -->",
    right: "## Food\n\n- pão = bread",
  },
  check: ({ idle, unit }) =>
    idle.map(({ code, range, told }) => {
      const known = codes().includes(code);
      const comment = unit.text.startsWith("<!--", range.start);
      const near = known ? undefined : nearest(code, codes(), true)[0];
      const at = unit.text.indexOf(code, range.start);
      const fixes: Fix[] = [];
      if (near && at >= 0 && at < range.end) {
        fixes.push({
          title: `Change to “${near}”`,
          edits: [{ range: { start: at, end: at + code.length }, text: near }],
          preferred: true,
        });
      }
      if (comment) {
        const start = range.start - (/[ \t]*$/.exec(unit.text.slice(0, range.start))?.[0].length ?? 0);
        // Never done unasked: the reason in it is the writer's.
        fixes.push({ title: "Take the comment out", edits: [{ range: { start, end: range.end }, text: "" }] });
      }
      if (told) {
        const message = `“${code}” is told at another place, which is also about this one. The comment belongs there.`;
        return { range, message, fixes, related: [{ range: told, message: `“${code}” is told here.` }] };
      }
      return { range, message: known ? `Nothing here gives “${code}”.` : `There is no finding “${code}”.`, fixes };
    }),
};
