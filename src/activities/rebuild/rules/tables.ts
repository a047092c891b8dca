import activitySchema from "../../../../schemas/activity.schema.json";
import type { Fix, Report, Rule } from "../../../base/finding";
import { setOption } from "../../edits";
import type { RebuildContext } from "./context";
import { noSentences } from "./cuts";

/** Nothing to rebuild, told with what a forms table is good for where the sections have one. */
export const noSentencesHere: Rule<RebuildContext> = {
  ...noSentences,
  why: `${noSentences.why} A forms table has no sentences: its forms are single words. It feeds tiles, loop, board and sort, and its columns give statements false twins.`,
  check: (context) => {
    const { sections } = context.dealt.request;
    const forms = sections.some(({ tables }) => tables.some((table) => table.forms.flat().some((form) => form)));
    const reports = noSentences.check(context);
    if (!forms) return reports;
    return reports.map(
      (report): Report => ({
        ...report,
        message: `${report.message} The forms of a table are single words: tiles, loop, board or sort can be made of them.`,
        fixes: [...(report.fixes ?? []), ...otherKinds(context)],
      }),
    );
  },
};

/** Kinds that forms tables feed, where no option of this kind alone would be left behind. */
function otherKinds({ dealt }: RebuildContext): Fix[] {
  const { block, unit } = dealt.request;
  const common = Object.keys(activitySchema.properties);
  if (block.options.entries.some(({ key }) => !common.includes(key))) return [];
  return ["sort", "loop"].map((make) => ({
    title: `Make a ${make} of the forms`,
    edits: [setOption(block, unit.text, "make", make)],
  }));
}
